"""What may have moved the colour: each factor by itself, or what nobody wrote down.

A hypothesis says that one factor moved the colour and nothing else did more than
usual. What it gives: how probable that was before, times the density of the shift that
was seen. A new name may move the colour any way. A number outside its range moves it
by its slope, as learned, or more: then paler or deeper, as its kind does. And where a
cell is empty, what stood there before may have changed.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import fsum, hypot
from typing import Final

from shadewright.core.quality.causes.case import Case
from shadewright.core.quality.causes.features import Feature, Features, numbers_of
from shadewright.core.quality.causes.history import NAMES, Factor
from shadewright.core.quality.causes.learning import PALER
from shadewright.core.quality.causes.matrices import Three

LIKELY: Final = {
    Factor.BOTTLE_AGE: 2.5,
    Factor.LOAD: 2.5,
    Factor.HOLD: 2.5,
    Factor.ACID_AFTER: 0.8,
    Factor.RAMP: 0.7,
    Factor.PERSON: 0.7,
}
"""How suspect each is, against a jar, yarn, water, bottle or pot that is new: stock,
yarn and hold seldom lie far out and then act by themselves; acid and ramp act on the
evenness first, a person only by what is done otherwise. [-]"""

ASTRAY, OFTEN_ASTRAY = 0.1, 0.5
"""Share of numbers that move the colour another way than they should; of acid, and of
what nobody wrote down. [-]"""

AS_BEFORE_NEW, AS_BEFORE_SEEN, AS_BEFORE_NUMBER = 0.25, 0.7, 0.5
"""Chance that a cause moves the colour as before: a new name, one that was seen, a
number. [-]"""

VISIBLE: Final = 1.0
"""An earlier change of a name that shifted the colour by this moved it. [1]"""

QUIET_CHANGES: Final = 8.0
"""So many earlier changes that moved nothing halve the suspicion on a name. [-]"""

SEEN_BEFORE: Final = 0.3
"""A name that was dyed under before is so much less likely to do something new. [-]"""

FAR, LEAST_SPREAD = 3.0, 0.15
"""So many spreads outside its range a number is half suspect; least spread. [1]"""

UNWRITTEN, EMPTY_CELL = 0.15, 0.12
"""What has no column, and an empty cell, against the same if it is seen to be new. [-]
"""


@dataclass(frozen=True, kw_only=True)
class Hypothesis:
    """A factor that may have moved the colour; ``weight`` is prior times density.

    ``now`` is None where its cell is empty, ``expected`` where no lot tells.
    """

    factor: Factor
    was: str | float
    now: str | float | None
    weight: float
    expected: Three | None


def hypotheses(case: Case) -> Iterator[Hypothesis]:
    """Return every factor that differs, or may differ, with its weight.

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
        if case.kept(factor):
            found = _hypothesis(case, factor)
            if found is not None:
                yield found


def unwritten_weight(case: Case) -> float:
    """Return the weight of what no column tells, now or before.

    Parameters
    ----------
    case : Case
        The last lot and what is known. [-]

    Returns
    -------
    float
        Prior times density. [1]
    """
    silent = sum(
        getattr(case.last, factor) is None and not case.kept(factor)
        for factor in Factor
    )
    return (UNWRITTEN + EMPTY_CELL * silent) * case.any_way()


def _hypothesis(case: Case, factor: Factor) -> Hypothesis | None:
    if getattr(case.last, factor) is None:
        return _empty(case, factor)
    return _name(case, factor) if factor in NAMES else _number(case, factor)


def _empty(case: Case, factor: Factor) -> Hypothesis:
    may_be_paler = factor in PALER
    moved = case.paler(1.0, astray=OFTEN_ASTRAY) if may_be_paler else case.any_way()
    return Hypothesis(
        factor=factor,
        was=case.kept(factor)[-1],
        now=None,
        weight=LIKELY.get(factor, 1.0) * EMPTY_CELL * moved,
        expected=None,
    )


def _name(case: Case, factor: Factor) -> Hypothesis | None:
    now, was = getattr(case.last, factor), case.kept(factor)[-1]
    if now == was:
        return None
    effect = case.learned.effect(_other_name(case, factor, now))
    is_seen = any(lot.name(factor) == now for lot in case.lots)
    anew = (SEEN_BEFORE if is_seen else 1.0) * case.any_way()
    as_before = AS_BEFORE_SEEN if is_seen else AS_BEFORE_NEW
    both = (1.0 - as_before) * anew + as_before * case.as_before(effect)
    return Hypothesis(
        factor=factor,
        was=was,
        now=now,
        weight=LIKELY.get(factor, 1.0) * _suspicion(case, factor) * both,
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
    now, scale = getattr(case.last, factor), case.scales[factor]
    beyond = scale.beyond(now)
    if not beyond:
        return None
    effect = case.learned.effect({(factor, ""): beyond})
    both = (1.0 - AS_BEFORE_NUMBER) * _by_its_kind(case, factor, beyond)
    both += AS_BEFORE_NUMBER * case.as_before(effect)
    far = (abs(beyond) / hypot(scale.spread, LEAST_SPREAD) / FAR) ** 4
    return Hypothesis(
        factor=factor,
        was=case.kept(factor)[-1],
        now=now,
        weight=LIKELY[factor] * far / (1.0 + far) * both,
        expected=case.learned.effect(_other_number(case, factor)).shift,
    )


def _by_its_kind(case: Case, factor: Factor, beyond: float) -> float:
    """Return the density of what so much more or less of a number may do anew."""
    if factor not in PALER:
        return case.any_way()
    astray = OFTEN_ASTRAY if factor is Factor.ACID_AFTER else ASTRAY
    return case.paler(beyond * PALER[factor], astray=astray)


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
    pairs = zip(case.lots, case.usual.weights, strict=True)
    usual = fsum(
        weight * case.scales[factor].steps(lot.number_of(factor))
        for lot, weight in pairs
    )
    return {(factor, ""): steps - usual}
