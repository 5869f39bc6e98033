"""Texts, files and photos to core types and back; opens nothing by itself.

- ``label_code``: what the square code on a label or a card says
- ``label_photo``: the bottle or the bath that a photo shows
"""

from shadewright.exchange.label_code import (
    Scanned,
    bath_text,
    code_from_text,
    label_text,
    scanned_from_text,
)
from shadewright.exchange.label_photo import code_in_photo, scanned_in_photo

__all__ = [
    "Scanned",
    "bath_text",
    "code_from_text",
    "code_in_photo",
    "label_text",
    "scanned_from_text",
    "scanned_in_photo",
]
