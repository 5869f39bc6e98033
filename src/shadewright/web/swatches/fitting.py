"""Where one goes once the evidence has changed."""

from django.urls import NoReverseMatch, reverse


def palette_address(base_id: int) -> str:
    """Return where the palette of a base stands."""
    try:
        return reverse("palette", args=[base_id])
    except NoReverseMatch:
        return reverse("swatches")
