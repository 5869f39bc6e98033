"""What may have moved the colour: each factor by itself, or what nobody wrote down.

A hypothesis says that one factor moved the colour and nothing else did more than
usual. What it gives: how probable that was before, times the density of the shift that
was seen. A new name may move the colour any way. A number outside its range moves it
by its slope, as learned, or more: then paler or deeper, as its kind does.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import fsum, hypot
from typing import Final

from shadewright.core.quality.causes.features import (
    Feature,
    Features,
    Scale,
    numbers_of,
)
from shadewright.core.quality.causes.history import NAMES, Factor, PastLot
from shadewright.core.quality.causes.learning import PALER, Effect, Learned
from shadewright.core.quality.causes.matrices import (
    UNIT,
    Matrix,
    Three,
    combined,
    normal_density,
    outer,
    three,
)
from shadewright.core.quality.causes.usual import Usual

ANY_WAY_SD: Final = 1.5
"""A cause moves each number of Lab by about this. [1]"""

LONGEST: Final = 5.0
"""A longer shift counts as so long, in its direction: beyond, only that tells. [1]"""

PALER_BY, PALER_SD, ASIDE_SD = 2.2, 1.2, 0.5
"""A number that dyes paler: by how much, how much that varies, how far aside. [1]"""

ASTRAY: Final = 0.25
"""Share of numbers that move the colour another way than they should. [-]"""

AS_BEFORE_NEW, AS_BEFORE_SEEN, AS_BEFORE_NUMBER = 0.25, 0.7, 0.5
"""Chance that a cause moves the colour as before: a new name, one that was seen, a
number. [-]"""

EFFECT_SPREAD: Final = 0.3
"""Spread of an effect from one time to the next, as a share of it. [-]"""

VISIBLE: Final = 1.0
"""An earlier change of a name that shifted the colour by this moved it. [1]"""

QUIET_CHANGES: Final = 8.0
"""So many earlier changes that moved nothing halve the suspicion on a name. [-]"""

SEEN_BEFORE: Final = 0.3
"""A name that was dyed under before is so much less likely to do something new. [-]"""

NUMBER_WORTH: Final = 1.3
"""A number far outside its range, against a name that is new. [-]"""

FAR, LEAST_SPREAD = 3.0, 0.15
"""So many spreads outside its range a number is half suspect; least spread. [1]"""

UNWRITTEN, EMPTY_CELL = 0.15, 0.15
"""What nobody wrote down, and each empty cell, against a name that is new. [-]"""


@dataclass(frozen=True, kw_only=True)
class Case:
    """The last lot against the usual: its shift, that by noise alone, what is known."""

    last: PastLot
    lots: tuple[PastLot, ...]
    usual: Usual
    scales: dict[Factor, Scale]
    learned: Learned
    shift: Three
    covariance: Matrix

    def density(self, mean: Three, spread: Matrix) -> float:
        """Return the density of the shift about a mean, with noise on top."""
        pairs = zip(_no_longer(self.shift), _no_longer(mean), strict=True)
        rest = three([x - y for x, y in pairs])
        return normal_density(rest, combined((1.0, self.covariance), (1.0, spread)))


@dataclass(frozen=True, kw_only=True)
class Hypothesis:
    """A factor that may have moved the colour; ``weight`` is prior times density."""

    factor: Factor
    was: str | float
    now: str | float
    weight: float
    expected: Three | None


def hypotheses(case: Case) -> Iterator[Hypothesis]:
    """Return every factor that differs, with its weight.

    Parameters
    ----------
    case : Case
        The last lot and what is known. [-]

    Yields
    ------
    Hypothesis
        In the order of the columns.
    """
    for factor in Factor:
        found = _name(case, factor) if factor in NAMES else _number(case, factor)
        if found is not None:
            yield found


def unwritten_weight(case: Case) -> float:
    """Return the weight of what nobody wrote down; each empty cell adds to it.

    Parameters
    ----------
    case : Case
        The last lot and what is known. [-]

    Returns
    -------
    float
        Prior times density. [1]
    """
    empty = sum(getattr(case.last, factor) is None for factor in Factor)
    return (UNWRITTEN + EMPTY_CELL * empty) * _any_way(case)


def _name(case: Case, factor: Factor) -> Hypothesis | None:
    now = case.last.name(factor)
    kept = [
        name
        for lot in case.usual.kept(case.lots)
        if (name := lot.name(factor)) is not None
    ]
    if now is None or not kept or now == kept[-1]:
        return None
    effect = case.learned.effect(_other_name(case, factor, now))
    is_seen = any(lot.name(factor) == now for lot in case.lots)
    anew = (SEEN_BEFORE if is_seen else 1.0) * _any_way(case)
    as_before = AS_BEFORE_SEEN if is_seen else AS_BEFORE_NEW
    both = (1.0 - as_before) * anew + as_before * _as_before(case, effect)
    return Hypothesis(
        factor=factor,
        was=kept[-1],
        now=now,
        weight=both * _suspicion(case, factor),
        expected=effect.shift if is_seen else None,
    )


def _suspicion(case: Case, factor: Factor) -> float:
    """Return how suspect a change of a name is by the earlier ones.

    w = (1 + moved) / (1 + still / 8)                              (11)
    """
    every = [name for lot in case.lots if (name := lot.name(factor)) is not None]
    changes = [
        case.learned.effect({(factor, two): 1.0, (factor, one): -1.0}).shift
        for one, two in pairwise(every)
        if one != two
    ]
    moved = sum(hypot(*shift) >= VISIBLE for shift in changes)
    return (1.0 + moved) / (1.0 + (len(changes) - moved) / QUIET_CHANGES)


def _number(case: Case, factor: Factor) -> Hypothesis | None:
    now = case.last.number_of(factor)
    kept = [
        x
        for lot in case.usual.kept(case.lots)
        if (x := lot.number_of(factor)) is not None
    ]
    beyond = case.scales[factor].beyond(now) if factor in case.scales else 0.0
    if now is None or not kept or not beyond:
        return None
    effect = case.learned.effect({(factor, ""): beyond})
    more = _paler(case, beyond * PALER[factor]) if factor in PALER else _any_way(case)
    both = (1.0 - AS_BEFORE_NUMBER) * more + AS_BEFORE_NUMBER * _as_before(case, effect)
    far = (abs(beyond) / hypot(case.scales[factor].spread, LEAST_SPREAD) / FAR) ** 4
    return Hypothesis(
        factor=factor,
        was=kept[-1],
        now=now,
        weight=NUMBER_WORTH * both * far / (1.0 + far),
        expected=case.learned.effect(_other_number(case, factor)).shift,
    )


def _no_longer(shift: Three) -> Three:
    length = hypot(*shift)
    if length <= LONGEST:
        return shift
    return three([part * LONGEST / length for part in shift])


def _any_way(case: Case) -> float:
    return case.density((0.0, 0.0, 0.0), combined((ANY_WAY_SD**2, UNIT)))


def _paler(case: Case, way: float) -> float:
    """Return the density of a shift to paler, or to deeper, or now and then astray."""
    paler = case.learned.paler
    by = PALER_BY if way > 0.0 else -PALER_BY
    along = combined((PALER_SD**2 - ASIDE_SD**2, outer(paler)), (ASIDE_SD**2, UNIT))
    straight = case.density(three([by * part for part in paler]), along)
    return (1.0 - ASTRAY) * straight + ASTRAY * _any_way(case)


def _as_before(case: Case, effect: Effect) -> float:
    size = fsum(part * part for part in effect.shift)
    spread = effect.variance + EFFECT_SPREAD**2 * size
    return case.density(effect.shift, combined((spread, UNIT)))


def _other_name(case: Case, factor: Factor, now: str) -> Features:
    """Return the name of the last lot less those of the usual lots."""
    found: dict[Feature, float] = {(factor, now): 1.0}
    for lot, weight in zip(case.lots, case.usual.weights, strict=True):
        name = lot.name(factor)
        if name is not None:
            found[factor, name] = found.get((factor, name), 0.0) - weight
    return found


def _other_number(case: Case, factor: Factor) -> Features:
    """Return the number of the last lot less the usual one."""
    steps = numbers_of(case.last, case.scales)[factor, ""]
    return {
        (factor, ""): steps
        - _usual_steps(case.lots, case.usual, case.scales[factor], factor)
    }


def _usual_steps(
    lots: Sequence[PastLot], usual: Usual, scale: Scale, factor: Factor
) -> float:
    """Return where a number usually stands."""
    pairs = zip(lots, usual.weights, strict=True)
    return fsum(weight * scale.steps(lot.number_of(factor)) for lot, weight in pairs)
