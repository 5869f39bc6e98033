"""A long list a page at a time, by the address: ``?page=2``."""

from django.http import HttpRequest

from shadewright.web.lots.pages import Pages

_LONGEST = 6


def page_asked(request: HttpRequest) -> int:
    """Return which page is asked for; the first where that cannot be read."""
    text = request.GET.get("page", "1")
    return int(text) if text.isdecimal() and len(text) <= _LONGEST else 1


def pages_of(request: HttpRequest, *, page: int, pages: int) -> Pages:
    """Return the ways to the neighbours, all else of the address kept."""
    return Pages(
        page=page,
        pages=pages,
        newer=_address(request, page - 1) if page > 1 else "",
        older=_address(request, page + 1) if page < pages else "",
    )


def _address(request: HttpRequest, page: int) -> str:
    asked = request.GET.copy()
    asked["page"] = str(page)
    return f"?{asked.urlencode()}"
