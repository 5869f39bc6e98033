"""From a bottle in the hand to its records: by its short code, or by a photo."""

from shadewright.exchange import code_from_text, code_in_photo
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle


def bottle_by_code(text: str) -> ShelfBottle:
    """Return the bottle whose code was typed or scanned."""
    return shelf_bottle(code_from_text(text))


def bottle_by_photo(photo: bytes) -> ShelfBottle:
    """Return the bottle whose label a photo shows."""
    return shelf_bottle(code_in_photo(photo))
