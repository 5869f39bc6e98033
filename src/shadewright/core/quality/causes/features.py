"""What a lot was dyed with, as numbers: one for each name, steps for each number."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import fmean
from typing import Final

from shadewright.core.quality.causes.history import NAMES, NUMBERS, Factor, PastLot

Feature = tuple[Factor | None, str]
"""A factor with its name; a number without one; nothing for the mean itself."""

Features = Mapping[Feature, float]

LEAST_STEP: Final = {
    Factor.BOTTLE_AGE: 30.0,
    Factor.LOAD: 1.0,
    Factor.RAMP: 0.2,
    Factor.HOLD: 5.0,
    Factor.ACID_AFTER: 10.0,
}
"""A step is a third of the usual number, or this. [d, g/l, °C/min, min]"""


@dataclass(frozen=True, kw_only=True)
class Scale:
    """How a number is counted: in steps from its middle; its range while in control."""

    middle: float
    step: float
    least: float
    most: float
    spread: float

    def steps(self, value: float | None) -> float:
        """Return a number in steps; an unknown one is usual."""
        return 0.0 if value is None else (value - self.middle) / self.step

    def beyond(self, value: float | None) -> float:
        """Return by how many steps a number is out of its range."""
        inside = None if value is None else min(max(value, self.least), self.most)
        return self.steps(value) - self.steps(inside)


def scales_of(lots: Sequence[PastLot], kept: Sequence[bool]) -> dict[Factor, Scale]:
    """Return how each number is counted; one that was never written down is not.

    Parameters
    ----------
    lots : sequence of PastLot
        The earlier lots. [-]
    kept : sequence of bool
        Which of them were in control. [-]

    Returns
    -------
    dict of Factor to Scale
        Middle, step and range. [-]
    """
    found = {}
    for factor in NUMBERS:
        every = [lot.number_of(factor) for lot in lots]
        known = [x for x in every if x is not None]
        inside = [x for x, is_in in zip(every, kept, strict=True) if is_in]
        usual = [x for x in inside if x is not None] or known
        if known:
            found[factor] = _scale(factor, known, usual)
    return found


def features_of(lot: PastLot, scales: Mapping[Factor, Scale]) -> Features:
    """Return what a lot was dyed with, as features.

    Parameters
    ----------
    lot : PastLot
        A lot; of a name that is not known nothing is learned. [-]
    scales : mapping of Factor to Scale
        How numbers are counted. [-]

    Returns
    -------
    mapping of Feature to float
        One for a name, steps for a number. [1]
    """
    names: dict[Feature, float] = {
        (f, name): 1.0 for f in NAMES if (name := lot.name(f)) is not None
    }
    return {(None, ""): 1.0, **names, **numbers_of(lot, scales)}


def numbers_of(lot: PastLot, scales: Mapping[Factor, Scale]) -> dict[Feature, float]:
    """Return the numbers of a lot, in steps.

    Parameters
    ----------
    lot : PastLot
        A lot. [-]
    scales : mapping of Factor to Scale
        How numbers are counted. [-]

    Returns
    -------
    dict of Feature to float
        Steps from the middle. [1]
    """
    return {(f, ""): scale.steps(lot.number_of(f)) for f, scale in scales.items()}


def _scale(factor: Factor, known: Sequence[float], usual: Sequence[float]) -> Scale:
    middle = fmean(known)
    step = max(LEAST_STEP[factor], middle / 3.0)
    about = fmean(usual)
    return Scale(
        middle=middle,
        step=step,
        least=min(usual),
        most=max(usual),
        spread=sqrt(fmean([(x - about) ** 2 for x in usual])) / step,
    )
