"""How far a colour will lie from its target: a point, its spread, and the tolerance.

The axis begins at no difference. The grey zone is what still passes and ends at a
dashed gate; the band is where eight pots in ten come out, the ring what is usual.
"""

from dataclasses import dataclass
from math import ceil, isfinite

from shadewright.drawing import svg

_BOX = svg.Box(300, 36)
_FIRST, _LAST, _Y = 4.0, 296.0, 13.0
_LEAST_END = 4.0
_ROOM = 48.0


@dataclass(frozen=True, kw_only=True)
class Difference:
    """What the bar shows, all in CIEDE2000."""

    usual: float
    low: float
    high: float
    tolerance: float


def difference_bar(shown: Difference) -> str:
    """Draw a difference with its spread; the words stand beside it."""
    end = _end(max(shown.high, shown.usual, 1.25 * shown.tolerance))

    def at(value: float) -> float:
        return _FIRST + (_LAST - _FIRST) * svg.fraction(value / end)

    gate, usual = at(shown.tolerance), svg.length(at(shown.usual))
    body = (
        svg.rect(_FIRST, _Y - 7, gate - _FIRST, 14, "zone")
        + svg.line(_FIRST, _Y, _LAST, _Y, "axis")
        + svg.line(gate, 2, gate, 24, "gate")
        + svg.line(at(shown.low), _Y, at(shown.high), _Y, "band")
        + f'<circle cx="{usual}" cy="{_Y:g}" r="6" class="point"/>'
        + _gate_words(gate, f"{shown.tolerance:g} passes")
        + svg.words(_LAST, 34, f"{end:g}", "scale end")
    )
    return svg.drawing("diff-bar", _BOX, body)


def _gate_words(gate: float, said: str) -> str:
    """Write below the gate; the nought gives way where both would touch."""
    if gate < _ROOM:
        return svg.words(_FIRST, 34, said, "scale")
    nought = svg.words(_FIRST, 34, "0", "scale")
    return nought + svg.words(gate, 34, said, "scale mid")


def _end(most: float) -> float:
    """Return where the axis ends: a whole even number, 4 at least."""
    if not isfinite(most):
        return _LEAST_END
    return max(_LEAST_END, 2.0 * ceil(most / 2.0))
