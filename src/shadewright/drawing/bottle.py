"""A stock bottle: how full, how old, how long it keeps, what has settled.

The fill is what is left; its lightness is the age; the hatched top is what
today's baths will draw; grains at the foot say that dye has settled. The narrow
gauge at its side runs down with its time, and is empty once that is over. The
short code stands on the cap. The same facts always stand beside it in words.
"""

from dataclasses import dataclass
from typing import Literal

from shadewright.core.solutions.age import AgeClass
from shadewright.drawing import svg

_OUTLINE = (
    "M24 18V28C24 35 5 35 5 46V100a6 6 0 006 6H61a6 6 0 006-6V46C67 35 48 35 48 28V18Z"
)
_FOOT = 106.0
_FULL_HEIGHT = 66.0
_LEES_TOP = 94.0
_GAUGE = (69.0, 46.0, 3.0, 54.0)  # x, y, width, height


@dataclass(frozen=True, kw_only=True)
class Bottle:
    """What a drawn bottle shows; ``full`` and ``reserved`` are shares of its size.

    ``life`` is the share of its time that is left, None where nobody knows.
    """

    code: str
    full: float
    age: AgeClass
    reserved: float = 0.0
    is_settled: bool = False
    life: float | None = None


def bottle(shown: Bottle, *, number: int, name: str = "") -> str:
    """Draw a bottle; ``number`` keeps its inner names apart from others on the page."""
    ident = f"bottle-{number}"
    body = (
        f"<defs>{_clip(ident)}{_hatch(ident)}{_grains(ident)}</defs>"
        f'<path d="{_OUTLINE}" class="ground"/>'
        f'<g clip-path="url(#{ident}-glass)">{_contents(shown, ident)}</g>'
        f'<path d="{_OUTLINE}" class="glass"/>{_gauge(shown.life)}'
        '<rect x="13" y="1" width="46" height="19" class="cap" rx="2"/>'
        f'<text x="36" y="15.5" class="cap-code">{svg.text(shown.code)}</text>'
    )
    return svg.drawing("vessel", svg.Box(72, 108), body, name=name)


def liquid_sample(
    kind: AgeClass | Literal["reserved", "settled", "life"], *, number: int
) -> str:
    """Draw one small box of a legend: an age, a draw, what has settled, time left."""
    if kind == "reserved":
        body = _hatch(f"key-{number}") + _patterned(f"key-{number}-hatch")
    elif kind == "settled":
        body = _grains(f"key-{number}") + _patterned(f"key-{number}-grains")
    elif kind == "life":
        body = svg.rect(7, 0.5, 4, 13, "time") + svg.rect(7, 5, 4, 8.5, "time-left")
    else:
        body = svg.rect(0.5, 0.5, 17, 13, _css(AgeClass(kind)))
    return svg.drawing("vessel", svg.Box(18, 14), body)


def _contents(shown: Bottle, ident: str) -> str:
    full = svg.fraction(shown.full)
    reserved = min(svg.fraction(shown.reserved), full)
    top = _FOOT - full * _FULL_HEIGHT
    liquid = svg.rect(0, top, 72, _FOOT - top, _css(shown.age)) if full else ""
    draw = _filled(top, reserved * _FULL_HEIGHT, f"{ident}-hatch") if reserved else ""
    level = svg.line(0, top, 72, top, "level") if full else ""
    return liquid + draw + (_lees(ident) if shown.is_settled else "") + level


def _gauge(life: float | None) -> str:
    if life is None:
        return ""
    x, y, width, height = _GAUGE
    left = height * svg.fraction(life)
    rest = svg.rect(x, y + height - left, width, left, "time-left") if left else ""
    return svg.rect(x, y, width, height, "time") + rest


def _css(age: AgeClass) -> str:
    return age.name.lower()


def _lees(ident: str) -> str:
    grains = _filled(_LEES_TOP, _FOOT - _LEES_TOP, f"{ident}-grains")
    return grains + svg.line(0, _LEES_TOP, 72, _LEES_TOP, "level")


def _filled(y: float, height: float, pattern: str) -> str:
    return (
        f'<rect x="0" y="{svg.length(y)}" width="72" '
        f'height="{svg.length(height)}" fill="url(#{pattern})"/>'
    )


def _patterned(pattern: str) -> str:
    return f'<rect width="18" height="14" fill="url(#{pattern})"/>'


def _clip(ident: str) -> str:
    return f'<clipPath id="{ident}-glass"><path d="{_OUTLINE}"/></clipPath>'


def _hatch(ident: str) -> str:
    return (
        f'<pattern id="{ident}-hatch" width="6" height="6" '
        'patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
        '<rect width="6" height="6" class="hatch-ground"/>'
        '<path d="M0 0V6" class="hatch"/></pattern>'
    )


def _grains(ident: str) -> str:
    return (
        f'<pattern id="{ident}-grains" width="6" height="6" '
        'patternUnits="userSpaceOnUse"><rect width="6" height="6" '
        'class="hatch-ground"/><circle cx="1.5" cy="1.5" r="1.5" class="grain"/>'
        '<circle cx="4.5" cy="4.5" r="1.5" class="grain"/></pattern>'
    )
