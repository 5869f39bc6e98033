"""What a lot teaches of the strength of a bottle.

Nothing is learned behind the dyer's back. Each lesson is shown with its spread; a key
takes it, and undo takes it back.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import exp, sqrt

from django.db import transaction

from shadewright.core.colour import Lab
from shadewright.core.quality.causes.matrices import (
    Matrix,
    Three,
    combined,
    squared_distance,
    three,
)
from shadewright.core.quality.causes.noise import noise_of
from shadewright.core.quality.causes.usual import usual_of
from shadewright.core.quantities import amount_text
from shadewright.core.solutions.ledger import BottleAct
from shadewright.core.uncertainty import Term, Value
from shadewright.errors import ConflictError
from shadewright.records import reads
from shadewright.records.models import BottleLine
from shadewright.records.shapes import line_spread, state_of
from shadewright.records.writes import keep_line
from shadewright.workflows.bottles import on_shelf
from shadewright.workflows.judging.causes import Why, why
from shadewright.workflows.judging.histories import DyeThen, History
from shadewright.workflows.judging.moved import slopes_of
from shadewright.workflows.stamps import Stamp, is_written

ALONG = 6.0
"""A shift whose rest has a greater χ² is not along the dye: 1 in 20 by noise. [1]"""

SURE = 2.0
"""A strength that is off by fewer spreads is not told. [1]"""

MOST_OFF = 0.35
"""A strength that is off by a greater share has another cause, surely. [1]"""

_LACKS = "how well the palette knows what more of this dye does"


@dataclass(frozen=True, kw_only=True)
class StrengthLesson:
    """A bottle that seems weaker or stronger than its ledger says, by a lot’s colour.

    ``why_not`` says why it cannot be taken over.
    """

    dye: str
    bottle: str
    was_percent: float
    strength: Value
    why_not: str = ""

    @property
    def is_weaker(self) -> bool:
        """Whether it dyes paler than it should."""
        return self.strength.value < self.was_percent


@dataclass(frozen=True, kw_only=True)
class _Along:
    """How much of a dye explains a shift, as a logarithm, and what is left over."""

    dye: str
    amount: float
    u: float
    rest: float


def strength_lesson(told: Why) -> StrengthLesson | None:
    """Return the one bottle whose strength would explain a lot that is off, if any.

    None where the palette cannot say, where no dye or more than one explains it.
    """
    if not told.is_off:
        return None
    found = [each for each in _along(told.history) if _explains(each)]
    if len(found) != 1:
        return None
    dye = next(x for x in told.lot.dyes if x.name == found[0].dye)
    return _lesson(dye, found[0], told.lot.number)


@transaction.atomic
def take_strength(*, number: str, stamp: Stamp) -> StrengthLesson:
    """Write what a lot says of a bottle's strength into the bottle's ledger."""
    lesson = strength_lesson(why(number))
    if lesson is None:
        raise ConflictError(
            why=f"Lot {number} no longer tells of one bottle’s strength.",
            advice="Look at its causes again.",
        )
    reads.lock_bottles([lesson.bottle])
    bottle = on_shelf(lesson.bottle)
    if is_written(stamp.deed):
        return lesson
    if lesson.why_not:
        raise ConflictError(why=lesson.why_not)
    line = BottleLine(
        bottle=bottle,
        act=BottleAct.TESTED.value,
        strength_percent=lesson.strength.value,
        spread=line_spread(strength=lesson.strength.terms, lacks=[_LACKS]),
        note=f"by the colour of lot {number}",
    )
    keep_line(line, stamp)
    return lesson


def _along(history: History) -> Iterator[_Along]:
    slopes = slopes_of(history)
    colours = [x.past.colour for x in history.lots[:-1] if x.past.colour is not None]
    now = history.lots[-1].past.colour
    if slopes is None or now is None or not colours:
        return
    usual = usual_of(colours)
    covariance = combined((1.0 + usual.scatter, _noise(colours, usual.weights)))
    mean = usual.mean(colours)
    shift = three([x - y - z for x, y, z in zip(now, mean, slopes.step, strict=True)])
    for dye, slope in slopes.by_dye.items():
        yield _fitted(dye, shift, slope, covariance)


def _noise(colours: Sequence[Lab], weights: Sequence[float]) -> Matrix:
    kept = [x for x, weight in zip(colours, weights, strict=True) if weight]
    return noise_of(kept).covariance


def _fitted(dye: str, shift: Three, slope: Three, covariance: Matrix) -> _Along:
    """Return the least squares of a shift along one slope."""
    worth = squared_distance(slope, covariance)
    both = three([x + y for x, y in zip(shift, slope, strict=True)])
    # vᵀA⁻¹w out of three squares, since A is symmetric
    across = squared_distance(both, covariance) - squared_distance(shift, covariance)
    amount = (across - worth) / 2.0 / worth
    rest = three([x - amount * y for x, y in zip(shift, slope, strict=True)])
    return _Along(
        dye=dye,
        amount=amount,
        u=1.0 / sqrt(worth),
        rest=squared_distance(rest, covariance),
    )


def _explains(each: _Along) -> bool:
    is_told = SURE * each.u < abs(each.amount) < MOST_OFF
    return is_told and each.rest < ALONG


def _lesson(dye: DyeThen, along: _Along, number: str) -> StrengthLesson | None:
    if dye.bottle is None or dye.bottle_id is None or not dye.strength_percent:
        return None
    strength = dye.strength_percent * exp(along.amount)
    term = Term(name="the lot’s colour", source=f"lot {number}", u=strength * along.u)
    return StrengthLesson(
        dye=dye.name,
        bottle=dye.bottle,
        was_percent=dye.strength_percent,
        strength=Value(value=strength, terms=(term,)),
        why_not=_why_not(dye),
    )


def _why_not(dye: DyeThen) -> str:
    """Return why a strength cannot be taken over: the bottle is another by now."""
    row = reads.bottle_row(dye.bottle or "")
    state = state_of(row)
    if state.is_poured:
        return f"Bottle {dye.bottle} is no longer on the shelf."
    if abs(state.strength_percent - (dye.strength_percent or 0.0)) > 1e-9:
        now = amount_text(state.strength_percent, "%")
        return f"Bottle {dye.bottle} counts as {now} by now, so nothing is written."
    return ""
