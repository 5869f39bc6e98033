"""A temperature programme as a curve: minutes across, degrees up."""

from collections.abc import Iterator, Sequence

from shadewright.core.baths.curves import Curve, CurvePoint, curve_points
from shadewright.core.quantities import amount_text
from shadewright.drawing import svg

_WIDTH, _HEIGHT = 320.0, 150.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 50.0, 312.0, 14.0, 122.0
_LABEL_APART = 14.0
_FOOT = 140.0
_COOL_C = 20.0


def heat_curve(curve: Curve) -> str:
    """Draw a programme; the same stands beside it in words."""
    points = curve_points(curve)
    marks = _marks(points)
    return svg.drawing(
        "heat-curve",
        svg.Box(_WIDTH, _HEIGHT),
        svg.line(_LEFT, _BOTTOM, _RIGHT, _BOTTOM, "axis")
        + "".join(_degrees(points))
        + "".join(_minutes(points))
        + f'<polyline points="{marks}" class="curve"/>',
    )


def _marks(points: Sequence[CurvePoint]) -> str:
    return " ".join(
        f"{svg.length(_x(point, points))},{svg.length(_y(point, points))}"
        for point in points
    )


def _x(point: CurvePoint, points: Sequence[CurvePoint]) -> float:
    whole = points[-1].minute
    return _LEFT + (_RIGHT - _LEFT) * (point.minute / whole if whole else 0.0)


def _y(point: CurvePoint, points: Sequence[CurvePoint]) -> float:
    low = min(_COOL_C, points[0].temperature_c)
    span = points[-1].temperature_c - low
    share = (point.temperature_c - low) / span if span else 1.0
    return _BOTTOM - (_BOTTOM - _TOP) * share


def _degrees(points: Sequence[CurvePoint]) -> Iterator[str]:
    taken: list[float] = []
    levels = {point.temperature_c: point for point in points}
    for degrees in sorted(levels, reverse=True):
        y = _y(levels[degrees], points)
        yield svg.line(_LEFT, y, _RIGHT, y, "level")
        if all(abs(y - other) >= _LABEL_APART for other in taken):
            yield svg.words(2, y + 4, amount_text(degrees, "°C"), "label")
            taken.append(y)


def _minutes(points: Sequence[CurvePoint]) -> Iterator[str]:
    top = next(p for p in points if p.temperature_c == points[-1].temperature_c)
    end_x = _x(points[-1], points)
    top_x = _x(top, points)
    if top.minute and end_x - top_x > 3 * _LABEL_APART:
        yield _minute(top_x, top.minute)
    yield _minute(end_x, points[-1].minute)


def _minute(x: float, minute: float) -> str:
    said = svg.text(amount_text(round(minute), "min"))
    return (
        f'<text x="{svg.length(x)}" y="{svg.length(_FOOT)}" class="label end">'
        f"{said}</text>"
    )
