"""Send a kept photo: always a JPEG that was drawn here, and nothing that can act."""

from django.http import HttpResponse


def jpeg(content: bytes, *, name: str) -> HttpResponse:
    """Return a JPEG that opens in the page and is saved under a plain name."""
    answer = HttpResponse(content, content_type="image/jpeg")
    answer.headers["Content-Disposition"] = f'inline; filename="{name}.jpg"'
    answer.headers["Content-Security-Policy"] = "default-src 'none'; sandbox"
    return answer
