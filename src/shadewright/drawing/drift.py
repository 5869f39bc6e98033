"""Lots in their order: how far each lies off, what was new, and what noise alone gives.

Up is further off. A point that looks up is lighter than the middle, one that looks down
darker, a round one neither. A numbered flag stands where something was new; the shaded
band is what noise alone gives; the dashed line is the tolerance. The same stands in a
table below.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shadewright.core.quantities import number_text
from shadewright.drawing import svg

_LEFT, _TOP, _FLAG_Y, _FLAG_R = 34.0, 44.0, 20.0, 10.0
_FOOT, _EDGE = 34.0, 26.0
_LABEL_APART = 62.0
_SEEN, _DOT, _NOW = 0.3, 4.0, 6.0


@dataclass(frozen=True, kw_only=True)
class DriftRoom:
    """How wide and high a chart is drawn."""

    width: float
    height: float

    @property
    def bottom(self) -> float:
        """Where no difference stands."""
        return self.height - _FOOT


DRIFT_ROOMS = {
    "wide": DriftRoom(width=780.0, height=270.0),
    "narrow": DriftRoom(width=340.0, height=230.0),
}


@dataclass(frozen=True, kw_only=True)
class DriftPoint:
    """A lot: its day in words, how far off, its spread, its step in lightness."""

    label: str
    difference: float
    off: float
    lighter: float
    flag: int | None


@dataclass(frozen=True, kw_only=True)
class DriftShown:
    """What a chart of drift shows; ``name`` and ``more`` say it in words."""

    name: str
    more: str
    points: tuple[DriftPoint, ...]
    noise: float
    tolerance: float | None


@dataclass(frozen=True, kw_only=True)
class _Scale:
    room: DriftRoom
    count: int
    most: float

    def x(self, place: int) -> float:
        steps = max(self.count - 1, 1)
        return _LEFT + 20.0 + (self.room.width - _LEFT - 20.0 - _EDGE) * place / steps

    def y(self, difference: float) -> float:
        share = min(max(difference, 0.0) / self.most, 1.0)
        return self.room.bottom - share * (self.room.bottom - _TOP)


def drift_chart(shown: DriftShown, *, room: DriftRoom) -> str:
    """Draw the lots of a recipe from left to right, the newest at the right."""
    reach = [each.difference + each.off for each in shown.points]
    most = max([*reach, shown.noise, shown.tolerance or 0.0, 1.0]) * 1.08
    scale = _Scale(room=room, count=len(shown.points), most=most)
    body = (
        f"{_noise(shown.noise, scale)}{''.join(_grid(scale))}"
        f"{_limit(shown.tolerance, scale)}{''.join(_flags(shown.points, scale))}"
        f"{_trace(shown.points, scale)}{''.join(_points(shown.points, scale))}"
        f"{''.join(_days(shown.points, scale))}"
    )
    box = svg.Box(room.width, room.height)
    return svg.drawing("drift", box, body, name=shown.name, more=shown.more)


def _noise(noise: float, scale: _Scale) -> str:
    y = scale.y(noise)
    width = scale.room.width - _LEFT
    return svg.rect(_LEFT, y, width, scale.room.bottom - y, "noise")


def _grid(scale: _Scale) -> Iterator[str]:
    step = next(s for s in (0.5, 1.0, 2.0, 5.0, 10.0, 50.0) if scale.most / s <= 6)
    for place in range(int(scale.most / step) + 1):
        y = scale.y(place * step)
        yield svg.line(_LEFT, y, scale.room.width, y, "grid")
        yield svg.words(_LEFT - 8, y + 4, number_text(place * step, digits=2), "end")


def _limit(tolerance: float | None, scale: _Scale) -> str:
    if tolerance is None:
        return ""
    y = scale.y(tolerance)
    said = f"tolerance {number_text(tolerance, digits=2)}"
    line = svg.line(_LEFT, y, scale.room.width, y, "limit")
    return line + svg.words(_LEFT + 4, y - 6, said, "start")


def _flags(points: Sequence[DriftPoint], scale: _Scale) -> Iterator[str]:
    last = -100.0
    high = False
    for place, each in enumerate(points):
        if each.flag is None:
            continue
        x = scale.x(place)
        # Two that would touch stand one above the other.
        high = x - last < 2.0 * _FLAG_R and not high
        y = _FLAG_Y + (14.0 if high else -6.0)
        last = x
        yield svg.line(x, y + _FLAG_R, x, scale.room.bottom, "flag")
        yield (
            f'<circle cx="{svg.length(x)}" cy="{svg.length(y)}" '
            f'r="{svg.length(_FLAG_R)}" class="flag-head"/>'
        )
        yield svg.words(x, y + 4, f"{each.flag}", "flag-no")


def _trace(points: Sequence[DriftPoint], scale: _Scale) -> str:
    marks = " ".join(
        f"{svg.length(scale.x(place))},{svg.length(scale.y(each.difference))}"
        for place, each in enumerate(points)
    )
    return f'<polyline points="{marks}" class="trace"/>'


def _points(points: Sequence[DriftPoint], scale: _Scale) -> Iterator[str]:
    for place, each in enumerate(points):
        x, y = scale.x(place), scale.y(each.difference)
        low, high = (
            scale.y(each.difference - each.off),
            scale.y(each.difference + each.off),
        )
        is_now = place == len(points) - 1
        yield svg.line(x, low, x, high, "whisker")
        yield _point(x, y, each.lighter, "now" if is_now else "dot")


def _point(x: float, y: float, lighter: float, css: str) -> str:
    size = _NOW if css == "now" else _DOT
    if abs(lighter) < _SEEN:
        return (
            f'<circle cx="{svg.length(x)}" cy="{svg.length(y)}" '
            f'r="{svg.length(size)}" class="{css}"/>'
        )
    tip = -1.4 * size if lighter > 0 else 1.4 * size
    wide = 1.2 * size
    return (
        f'<path d="M{svg.length(x)} {svg.length(y + tip)}'
        f"L{svg.length(x + wide)} {svg.length(y - tip / 1.6)}"
        f'H{svg.length(x - wide)}z" class="{css}"/>'
    )


def _days(points: Sequence[DriftPoint], scale: _Scale) -> Iterator[str]:
    # As many as have room, the newest always.
    right = float("inf")
    for place in reversed(range(len(points))):
        x = scale.x(place)
        if right - x < _LABEL_APART:
            continue
        right = x
        is_now = place == len(points) - 1
        css = "end strong" if is_now else "middle"
        at = scale.room.width if is_now else x
        yield svg.words(at, scale.room.height - 10.0, points[place].label, css)
