"""From what is in the hand to its records: a bottle, or a bath by its card."""

from shadewright.exchange import Scanned, code_from_text, scanned_from_text
from shadewright.exchange.label_photo import code_in_photo, scanned_in_photo
from shadewright.records import recipe_reads
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle


def bottle_by_code(text: str) -> ShelfBottle:
    """Return the bottle whose code was typed or scanned."""
    return shelf_bottle(code_from_text(text))


def bottle_by_photo(photo: bytes) -> ShelfBottle:
    """Return the bottle whose label a photo shows."""
    return shelf_bottle(code_in_photo(photo))


def found_by_code(text: str) -> Scanned:
    """Return the bottle or the bath whose code was typed or scanned, if it is known."""
    return _known(scanned_from_text(text))


def found_by_photo(photo: bytes) -> Scanned:
    """Return the bottle or the bath that a photo shows, if it is known."""
    return _known(scanned_in_photo(photo))


def _known(found: Scanned) -> Scanned:
    if found.kind == "bottle":
        shelf_bottle(found.key)
    else:
        recipe_reads.bath_row(found.key)
    return found
