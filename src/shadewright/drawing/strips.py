"""One dye from pale to deep: a ribbon of foretold colours, and the swatches on it.

Every strip has the same axis of depth, in equal steps for equal ratios. The ribbon is
thinner where the palette is less sure. What was dyed and read is a framed square,
dashed where it is left out. Squares that would cover each other stand side by side and
touch. A dotted line below says where colours are more vivid than a screen shows; of a
square a corner is cut.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import log

from shadewright.core.quantities.writing import NO_BREAK
from shadewright.drawing import svg

LEAST_PERCENT, MOST_PERCENT = 0.03, 4.0
TICKS_PERCENT = (0.03, 0.1, 0.3, 1.0, 4.0)
_HEIGHT, _MIDDLE = 44.0, 21.0
_THICK, _THIN = 16.0, 3.0
_VIVID_Y = 41.0
_LEAST_SLICE = 9.0


@dataclass(frozen=True, kw_only=True)
class Room:
    """How wide a strip is drawn, and its squares."""

    width: float
    square: float

    @property
    def margin(self) -> float:
        """Room for half a square at either end."""
        return self.square / 2.0


STRIP_ROOMS = {
    "wide": Room(width=720.0, square=30.0),
    "narrow": Room(width=300.0, square=24.0),
}


@dataclass(frozen=True, kw_only=True)
class Told:
    """A foretold colour: where on the strip, on a screen, and how far it may be off."""

    depth_percent: float
    fill: str
    is_true: bool
    within_90: float


@dataclass(frozen=True, kw_only=True)
class Square:
    """A swatch that was dyed and read; ``is_out`` where the palette leaves it out."""

    depth_percent: float
    fill: str
    is_true: bool
    is_out: bool


@dataclass(frozen=True, kw_only=True)
class DyeStrip:
    """What a strip shows; ``name`` and ``more`` say it in words."""

    name: str
    more: str
    told: tuple[Told, ...]
    squares: tuple[Square, ...]


def dye_strip(shown: DyeStrip, *, room: Room, number: str) -> str:
    """Draw a strip; ``number`` keeps its gradient apart from others on the page."""
    ident = f"ribbon-{number}"
    body = (
        f"{_gradient(shown.told, room, ident)}{_ribbon(shown.told, room, ident)}"
        f"{_vivid(shown.told, room)}{_squares(shown.squares, room)}"
    )
    box = svg.Box(room.width, _HEIGHT)
    return svg.drawing("dye-strip", box, body, name=shown.name, more=shown.more)


def strip_axis(*, room: Room) -> str:
    """Draw the axis of depth that stands below all strips."""
    last = len(TICKS_PERCENT) - 1
    ends = {0: " start", last: " end"}
    body = "".join(
        svg.line(_x(depth, room), 0, _x(depth, room), 6, "tick")
        + svg.words(
            _x(depth, room),
            20,
            f"{depth:g}{NO_BREAK}%",
            f"depth{ends.get(place, '')}",
        )
        for place, depth in enumerate(TICKS_PERCENT)
    )
    return svg.drawing("dye-strip", svg.Box(room.width, 24), body)


def _x(depth_percent: float, room: Room) -> float:
    share = log(depth_percent / LEAST_PERCENT) / log(MOST_PERCENT / LEAST_PERCENT)
    within = min(max(share, 0.0), 1.0)
    return room.margin + within * (room.width - 2.0 * room.margin)


def _gradient(told: Sequence[Told], room: Room, ident: str) -> str:
    left, right = _x(LEAST_PERCENT, room), _x(MOST_PERCENT, room)
    stops = "".join(
        f'<stop offset="{(_x(each.depth_percent, room) - left) / (right - left):.4f}" '
        f'stop-color="{svg.text(each.fill)}"/>'
        for each in told
    )
    return (
        f'<linearGradient id="{ident}" gradientUnits="userSpaceOnUse" '
        f'x1="{svg.length(left)}" x2="{svg.length(right)}">{stops}</linearGradient>'
    )


def _ribbon(told: Sequence[Told], room: Room, ident: str) -> str:
    """Draw the ribbon as one shape, so that it has neither bands nor gaps."""
    edges = [
        (_x(each.depth_percent, room), _thickness(each.within_90) / 2.0)
        for each in told
    ]
    above = [f"{svg.length(x)} {svg.length(_MIDDLE - half)}" for x, half in edges]
    below = [f"{svg.length(x)} {svg.length(_MIDDLE + half)}" for x, half in edges]
    path = "L".join([*above, *reversed(below)])
    return f'<path d="M{path}Z" fill="url(#{ident})"/>'


def _thickness(within_90: float) -> float:
    """Return the ribbon's thickness: all of it up to a difference of 1."""
    return max(_THIN, _THICK / max(1.0, within_90))


def _vivid(told: Sequence[Told], room: Room) -> str:
    """Draw a dotted line below what a screen cannot show."""
    runs: list[tuple[float, float]] = []
    for place, each in enumerate(told):
        if each.is_true:
            continue
        start = told[max(place - 1, 0)].depth_percent if place else each.depth_percent
        if runs and runs[-1][1] >= start:
            runs[-1] = (runs[-1][0], each.depth_percent)
        else:
            runs.append((start, each.depth_percent))
    return "".join(
        svg.line(_x(start, room), _VIVID_Y, _x(end, room), _VIVID_Y, "vivid")
        for start, end in runs
    )


def _squares(squares: Sequence[Square], room: Room) -> str:
    return "".join(_group(each, room) for each in _groups(squares, room))


def _groups(squares: Sequence[Square], room: Room) -> list[list[Square]]:
    """Return squares, those together that would cover each other."""
    groups: list[list[Square]] = []
    for each in sorted(squares, key=lambda one: one.depth_percent):
        groups.append([each])
        while len(groups) > 1 and _meet(groups[-2], groups[-1], room):
            last = groups.pop()
            groups[-1] += last
    return groups


def _meet(one: Sequence[Square], other: Sequence[Square], room: Room) -> bool:
    return _span(one, room)[1] > _span(other, room)[0]


def _span(group: Sequence[Square], room: Room) -> tuple[float, float]:
    """Return where a group begins and ends: round its middle, inside the strip."""
    middle = sum(_x(each.depth_percent, room) for each in group) / len(group)
    width = max(room.square, _LEAST_SLICE * len(group))
    left = min(max(middle - width / 2.0, 0.0), room.width - width)
    return left, left + width


def _group(group: Sequence[Square], room: Room) -> str:
    left, right = _span(group, room)
    width = (right - left) / len(group)
    return "".join(
        _square(each, left + place * width, width, room)
        for place, each in enumerate(group)
    )


def _square(shown: Square, x: float, width: float, room: Room) -> str:
    y = _MIDDLE - room.square / 2.0
    css = "measured out" if shown.is_out else "measured"
    cut = min(8.0, width)
    corner = (
        ""
        if shown.is_true
        else f'<path d="M{svg.length(x + width - cut)} {svg.length(y)}'
        f'h{svg.length(cut)}v{svg.length(cut)}z" class="cut"/>'
    )
    return (
        f'<rect x="{svg.length(x)}" y="{svg.length(y)}" width="{svg.length(width)}" '
        f'height="{svg.length(room.square)}" fill="{svg.text(shown.fill)}" '
        f'class="{css}"/>{corner}'
    )
