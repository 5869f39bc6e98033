"""Colours in a row that touch each other, to be judged side by side in the booth."""

import re
from collections.abc import Sequence
from itertools import starmap

from shadewright.drawing import svg

_HEX = re.compile(r"#[0-9a-fA-F]{6}")
_WIDE, _HIGH = 60.0, 40.0


def colour_chips(colours: Sequence[str], *, name: str, css: str = "") -> str:
    """Draw colours as ``#rrggbb`` from left to right; what is no colour is a gap."""
    body = "".join(starmap(_chip, enumerate(colours)))
    box = svg.Box(_WIDE * max(len(colours), 1), _HIGH, is_stretched=True)
    return svg.drawing(f"chips {css}".rstrip(), box, body, name=name)


def _chip(place: int, colour: str) -> str:
    if not _HEX.fullmatch(colour):
        x = svg.length(_WIDE * place)
        return f'<path d="M{x} 0h{_WIDE:g}v{_HIGH:g}h-{_WIDE:g}z" class="gap"/>'
    return (
        f'<rect x="{svg.length(_WIDE * place)}" width="{_WIDE:g}" '
        f'height="{_HIGH:g}" fill="{colour}"/>'
    )
