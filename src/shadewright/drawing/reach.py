"""What a palette can give, seen from above: a* to the right, b* upwards.

An outline for each lightness, told apart by its dashes; every swatch a dot in its own
colour; a wanted colour a cross in a ring with its name. Names make way for each other;
one that finds no room is a number, and the words beside the picture say whose.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.drawing import svg

_LEAST_SPAN, _MARGIN = 60.0, 14.0
_RING = 20.0
_SIGN, _LINE = 7.2, 15.0
_MOST_SIGNS = 18
REACH_SIDES = {"wide": 440.0, "narrow": 300.0}

Point = tuple[float, float]
Rect = tuple[float, float, float, float]
"""Left, top, right, bottom."""


@dataclass(frozen=True, kw_only=True)
class Outline:
    """The outline at one lightness; ``kind`` is its dash: light, mid or dark."""

    kind: str
    loops: tuple[tuple[Point, ...], ...]


@dataclass(frozen=True, kw_only=True)
class Spot:
    """A swatch at its a*, b*."""

    at: Point
    fill: str


@dataclass(frozen=True, kw_only=True)
class Aim:
    """A wanted colour at its a*, b*."""

    at: Point
    name: str


@dataclass(frozen=True, kw_only=True)
class ReachShown:
    """All that is drawn; ``name`` and ``more`` say it in words."""

    name: str
    more: str
    outlines: tuple[Outline, ...]
    spots: tuple[Spot, ...]
    aims: tuple[Aim, ...]


@dataclass(frozen=True)
class _Plane:
    """From a*, b* to the picture."""

    left: float
    top: float
    scale: float
    side: float

    def put(self, at: Point) -> Point:
        return (at[0] - self.left) * self.scale, (self.top - at[1]) * self.scale


def reach_map(shown: ReachShown, *, side: float) -> str:
    """Draw the reach on a square of that many units a side."""
    plane = _plane(shown, side)
    taken = list(_axis_rects(plane))
    body = (
        _axes(plane)
        + "".join(_outline(each, plane) for each in shown.outlines)
        + "".join(_spot(each, plane) for each in shown.spots)
        + "".join(_axis_words(plane))
        + _aims(shown.aims, plane, taken)
    )
    box = svg.Box(side, side)
    return svg.drawing("reach", box, body, name=shown.name, more=shown.more)


def line_sample(kind: str) -> str:
    """Draw one line of the legend: light, mid or dark."""
    body = f'<path d="M0 7H26" class="hull {kind}"/>'
    return svg.drawing("reach sample", svg.Box(26, 14), body)


def _plane(shown: ReachShown, side: float) -> _Plane:
    points = [
        (0.0, 0.0),
        *(each.at for each in shown.spots),
        *(each.at for each in shown.aims),
        *(point for each in shown.outlines for loop in each.loops for point in loop),
    ]
    a, b = zip(*points, strict=True)
    span = max(max(a) - min(a), max(b) - min(b), _LEAST_SPAN) + 2.0 * _MARGIN
    return _Plane(
        left=(max(a) + min(a) - span) / 2.0,
        top=(max(b) + min(b) + span) / 2.0,
        scale=side / span,
        side=side,
    )


def _axes(plane: _Plane) -> str:
    x, y = plane.put((0.0, 0.0))
    rings = (_ring(plane, _RING * place) for place in _ring_places(plane))
    return (
        "".join(rings)
        + svg.line(4, y, plane.side - 4, y, "cross")
        + svg.line(x, 4, x, plane.side - 4, "cross")
    )


def _ring_places(plane: _Plane) -> range:
    """Return which rings of twenty units show some of themselves."""
    x, y = plane.put((0.0, 0.0))
    far = max(x, plane.side - x, y, plane.side - y) / plane.scale
    return range(1, int(far // _RING) + 1)


def _ring(plane: _Plane, chroma: float) -> str:
    x, y = plane.put((0.0, 0.0))
    said = svg.words(x + chroma * plane.scale, y + 13, f"{chroma:g}", "ring-name")
    fits = x + chroma * plane.scale < plane.side - 50
    return (
        f'<circle cx="{svg.length(x)}" cy="{svg.length(y)}" '
        f'r="{svg.length(chroma * plane.scale)}" class="ring"/>'
    ) + (said if fits else "")


def _axis_places(plane: _Plane) -> tuple[tuple[str, str, float, float], ...]:
    x, y = plane.put((0.0, 0.0))
    return (
        ("redder", " end", plane.side - 4, y - 6),
        ("greener", "", 4, y - 6),
        ("yellower", "", x + 6, 14),
        ("bluer", "", x + 6, plane.side - 6),
    )


def _axis_words(plane: _Plane) -> list[str]:
    return [
        svg.words(x, y, said, f"way{end}") for said, end, x, y in _axis_places(plane)
    ]


def _axis_rects(plane: _Plane) -> list[Rect]:
    return [
        _rect(x - (_width(said) if end else 0.0), y, _width(said))
        for said, end, x, y in _axis_places(plane)
    ]


def _outline(shown: Outline, plane: _Plane) -> str:
    path = "".join(
        "M"
        + "L".join(f"{svg.length(x)} {svg.length(y)}" for x, y in map(plane.put, loop))
        + "Z"
        for loop in shown.loops
    )
    return f'<path d="{path}" class="hull {svg.text(shown.kind)}"/>' if path else ""


def _spot(shown: Spot, plane: _Plane) -> str:
    x, y = plane.put(shown.at)
    return (
        f'<circle cx="{svg.length(x)}" cy="{svg.length(y)}" r="5" class="spot" '
        f'fill="{svg.text(shown.fill)}"/>'
    )


def _aims(aims: Sequence[Aim], plane: _Plane, taken: list[Rect]) -> str:
    crosses = [plane.put(each.at) for each in aims]
    taken += [(x - 13, y - 13, x + 13, y + 13) for x, y in crosses]
    drawn = []
    for number, (each, at) in enumerate(zip(aims, crosses, strict=True), start=1):
        said, x, y = _named(_short(each.name), number, at, plane, taken)
        taken.append(_rect(x, y, _width(said)))
        drawn.append(_cross(at) + svg.words(x, y, said, "aim-name"))
    return "".join(drawn)


def _named(
    name: str, number: int, at: Point, plane: _Plane, taken: Sequence[Rect]
) -> tuple[str, float, float]:
    """Return the words of a cross and where they find room; its number if they do not.

    Numbers may stand on other things: there must be something.
    """
    for said in (name, str(number)):
        for x, y in _tries(at, _width(said)):
            rect = _rect(x, y, _width(said))
            if _is_inside(rect, plane) and not any(_meet(rect, one) for one in taken):
                return said, x, y
    return str(number), at[0] + 15, at[1] - 9


def _tries(at: Point, width: float) -> list[Point]:
    x, y = at
    right, left, middle = x + 15, x - 15 - width, x - width / 2
    return [
        (right, y + 4),
        (left, y + 4),
        (middle, y - 18),
        (middle, y + 27),
        (right, y - 10),
        (left, y - 10),
        (right, y + 18),
        (left, y + 18),
    ]


def _cross(at: Point) -> str:
    x, y = svg.length(at[0]), svg.length(at[1])
    left, top = svg.length(at[0] - 12), svg.length(at[1] - 12)
    return (
        f'<circle cx="{x}" cy="{y}" r="7" class="aim"/>'
        f'<path d="M{left} {y}h24M{x} {top}v24" class="aim"/>'
    )


def _short(name: str) -> str:
    return name if len(name) <= _MOST_SIGNS else f"{name[: _MOST_SIGNS - 1]}…"


def _width(said: str) -> float:
    return _SIGN * len(said)


def _rect(x: float, y: float, width: float) -> Rect:
    return x, y - _LINE + 3, x + width, y + 3


def _is_inside(rect: Rect, plane: _Plane) -> bool:
    left, top, right, bottom = rect
    return left >= 0 and top >= 0 and right <= plane.side and bottom <= plane.side


def _meet(one: Rect, other: Rect) -> bool:
    return (
        one[0] < other[2]
        and other[0] < one[2]
        and one[1] < other[3]
        and other[1] < one[3]
    )
