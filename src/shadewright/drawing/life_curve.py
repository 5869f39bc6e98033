"""How many bottles of a dye are still clear, by age: a curve that falls in steps.

The solid line is the share that is still clear, the pale band its spread. Between two
looks nobody knows when it fell, so it falls at the first.
"""

from collections.abc import Iterator, Sequence

from shadewright.core.solutions.keeping import DyeLife, LifeStep
from shadewright.drawing import svg

_WIDTH, _HEIGHT = 320.0, 150.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 50.0, 304.0, 14.0, 122.0
_FOOT = 140.0
_TENTHS = ((1.0, "all", -2), (0.9, "9 in 10", 8), (0.5, "half", 4), (0.0, "none", 4))

Corner = tuple[float, float]


def life_curve(life: DyeLife, *, name: str = "") -> str:
    """Draw the share that is still clear; the same stands beside it in words."""
    whole = _whole_days(life)
    shares = [step.share_clear for step in life.curve]
    lows = _corners(life.curve, [step.bounds[0] for step in life.curve], whole)
    highs = _corners(life.curve, [step.bounds[1] for step in life.curve], whole)
    return svg.drawing(
        "life-curve",
        svg.Box(_WIDTH, _HEIGHT),
        "".join(_levels())
        + f'<polygon points="{_points([*highs, *reversed(lows)])}" class="band"/>'
        + f'<polyline points="{_points(_corners(life.curve, shares, whole))}" '
        'class="curve"/>' + _look_by(life.look_by_days, whole) + _days(whole),
        name=name,
    )


def _whole_days(life: DyeLife) -> float:
    """Return the age at the right edge: as long as anybody watched."""
    return max([life.longest_clear_days, *(step.by_days for step in life.curve)])


def _corners(
    curve: Sequence[LifeStep], shares: Sequence[float], whole: float
) -> list[Corner]:
    found = [(_LEFT, _TOP)]
    for step, share in zip(curve, shares, strict=True):
        found += [(_x(step.after_days, whole), found[-1][1])]
        found += [(_x(step.after_days, whole), _y(share))]
    return [*found, (_RIGHT, found[-1][1])]


def _x(days: float, whole: float) -> float:
    return _LEFT + (_RIGHT - _LEFT) * days / whole


def _y(share: float) -> float:
    return _BOTTOM - (_BOTTOM - _TOP) * share


def _points(corners: Sequence[Corner]) -> str:
    return " ".join(f"{svg.length(x)},{svg.length(y)}" for x, y in corners)


def _levels() -> Iterator[str]:
    for share, said, below in _TENTHS:
        yield svg.line(_LEFT, _y(share), _RIGHT, _y(share), "level")
        yield svg.words(2, _y(share) + below, said, "label")


def _look_by(days: int, whole: float) -> str:
    x = _x(min(days, whole), whole)
    return svg.line(x, _TOP, x, _BOTTOM, "look-by")


def _days(whole: float) -> str:
    return (
        f'<text x="{svg.length(_RIGHT)}" y="{svg.length(_FOOT)}" class="label end">'
        f"{svg.text(f'day {whole:.0f}')}</text>"
        + svg.words(_LEFT, _FOOT, "made", "label")
    )
