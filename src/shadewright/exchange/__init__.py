"""Texts, files and photos to core types and back; opens nothing by itself.

- ``label_code``: what the square code on a bottle's label says
- ``label_photo``: the code of the bottle that a photo shows
"""

from shadewright.exchange.label_code import code_from_text, label_text
from shadewright.exchange.label_photo import code_in_photo

__all__ = ["code_from_text", "code_in_photo", "label_text"]
