"""Where to go when a lot cannot be corrected yet."""

from django.urls import reverse

from shadewright.errors import StudioError
from shadewright.web.pages import Link

_WAYS = {
    "colour": ("Standards", "standards", False),
    "lot": ("Read its colour", "read-bath", True),
    "palette": ("Swatches and palette", "palette-home", False),
    "base": ("Swatches and palette", "palette-home", False),
    "doses": ("See its bath", "bath", True),
}


def way_on(number: str, trouble: StudioError) -> Link:
    """Return the page where what stands in the way can be mended."""
    lot = ("See the lot", "lot", True)
    words, page, is_of_lot = _WAYS.get(trouble.argument, lot)
    return Link(words=words, address=reverse(page, args=[number] * is_of_lot))
