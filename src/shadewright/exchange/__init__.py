"""Texts, files and photos to core types and back; opens nothing by itself.

- ``label_code``: what the square code on a label or a card says
- ``label_photo``: the bottle or the bath that a photo shows; not imported here, since
  pictures take longer to load than a whole sum in the terminal
- ``colour_text``: a colour as somebody types it
- ``swatch_file``, ``palette_file``: dyed swatches in, what was learned of them out
- ``spectrum_file``, ``cgats``: reflectance spectra as people and meters keep them
"""

from shadewright.exchange.label_code import (
    Scanned,
    bath_text,
    code_from_text,
    label_text,
    scanned_from_text,
)

__all__ = [
    "Scanned",
    "bath_text",
    "code_from_text",
    "label_text",
    "scanned_from_text",
]
