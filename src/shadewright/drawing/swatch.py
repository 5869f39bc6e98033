"""A small square of colour in its own grey booth, beside a dye's name.

A colour that nobody has given is drawn as a dashed gap, never as grey: grey
would be a colour.
"""

import re

from shadewright.drawing import svg

_HEX = re.compile(r"#[0-9a-fA-F]{6}")
_BOX = svg.Box(10, 10)


def swatch(colour: str | None, *, evidence: str = "") -> str:
    """Draw a colour as ``#rrggbb``; ``evidence`` says where it comes from."""
    if colour is None or not _HEX.fullmatch(colour):
        gap = '<path d="M1 1H9V9H1ZM1 9L9 1" class="gap"/>'
        return svg.drawing("swatch unknown", _BOX, gap, name="No colour known")
    body = f'<rect width="10" height="10" fill="{colour}"/>'
    return svg.drawing("swatch", _BOX, body, name=evidence)


def colour_field(colour: str, *, name: str) -> str:
    """Draw a colour that fills the room it gets; what is no colour is a gap."""
    if not _HEX.fullmatch(colour):
        return swatch(None)
    body = f'<rect width="10" height="10" fill="{colour}"/>'
    box = svg.Box(10, 10, is_stretched=True)
    return svg.drawing("colour-field", box, body, name=name)


def colour_square(
    colour: str, *, name: str = "", css: str = "", is_true: bool = True
) -> str:
    """Draw a colour as a square; a corner is cut off where a screen cannot show it."""
    cut = "" if is_true else '<path d="M7 0H10V3Z" class="cut"/>'
    if not _HEX.fullmatch(colour):
        return swatch(None)
    body = f'<rect width="10" height="10" fill="{colour}"/>{cut}'
    return svg.drawing(f"colour-square {css}".rstrip(), _BOX, body, name=name)
