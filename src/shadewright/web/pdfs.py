"""Answer with a PDF that opens in the browser and is saved under a plain name."""

import re

from django.http import HttpResponse


def pdf(content: bytes, *, name: str) -> HttpResponse:
    """Return the PDF; its file name keeps letters, digits and hyphens."""
    plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-") or "sheet"
    answer = HttpResponse(content, content_type="application/pdf")
    answer.headers["Content-Disposition"] = f'inline; filename="{plain}.pdf"'
    return answer
