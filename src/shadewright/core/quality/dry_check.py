"""The dry check: a lot beside its standard, in words first, and what to do with it.

Several spots of several skeins are read, dry. Their mean lies so far from the standard,
give or take what the spots leave in doubt. What the studio will do at which distance is
its own choice; where the doubt reaches over to another choice nothing is claimed.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import partial
from math import hypot, inf, sqrt
from typing import Final

from shadewright.core.colour import (
    Lab,
    averaged,
    ciede2000,
    cmc,
    colour_scatter,
    difference_words,
)
from shadewright.errors import MissingError


class Formula(StrEnum):
    """The formula of a difference, by the name that stands beside it."""

    CIEDE2000 = "CIEDE2000"
    CMC = "CMC(2:1)"


class Decision(StrEnum):
    """What becomes of a lot."""

    MATCH = "match"
    ALTERNATE = "alternate skeins"
    NEW_LOT = "new lot"
    CORRECT = "correct"
    ONE_OFF = "one-off"
    CANNOT_TELL = "cannot tell"


class Evenness(StrEnum):
    """How a lot's own unevenness lies in the band that is wanted."""

    AS_WANTED = "as wanted"
    TOO_LEVEL = "too level"
    TOO_UNEVEN = "too uneven"


@dataclass(frozen=True, kw_only=True)
class Tolerances:
    """Up to which distance a lot matches, may be alternated, or is sold as new.

    The usual values are common practice; a studio sets its own. [1]
    """

    match: float = 1.0
    alternate: float = 2.0
    new_lot: float = 3.0


@dataclass(frozen=True, kw_only=True)
class Band:
    """The unevenness that is wanted: mean distance of spots from their mean."""

    least: float = 0.0
    most: float = 1.0

    def judged(self, unevenness: float) -> Evenness:
        """Return how an unevenness lies in the band."""
        if unevenness < self.least:
            return Evenness.TOO_LEVEL
        return Evenness.AS_WANTED if unevenness <= self.most else Evenness.TOO_UNEVEN


@dataclass(frozen=True, kw_only=True)
class DryCheck:
    """A lot beside its standard.

    ``spread`` is the standard uncertainty of the difference, ``unevenness`` the mean
    distance of the spots from their mean; None of a single spot. ``could_be`` holds
    every decision within the spread, the nearest first.
    """

    words: str
    formula: Formula
    difference: float
    spread: float
    mean: Lab
    unevenness: float | None
    evenness: Evenness | None
    decision: Decision
    could_be: tuple[Decision, ...]


_DISTANCES: Final[dict[Formula, Callable[[Lab, Lab], float]]] = {
    Formula.CIEDE2000: ciede2000,
    Formula.CMC: partial(cmc, lightness=2.0, chroma=1.0),
}


def dry_check(
    spots: Sequence[Lab],
    *,
    standard: Lab,
    tolerances: Tolerances,
    band: Band,
    formula: Formula = Formula.CIEDE2000,
    u_read: float | None = None,
    u_standard: float = 0.0,
) -> DryCheck:
    """Return how a lot compares with its standard, and what becomes of it.

    3 u² = max(s² / n, u_r²) + u_s²,  u(ΔE)² = Σ_k ΔE(m, m + u e_k)²  (3)

    Parameters
    ----------
    spots : sequence of Lab
        Spots of the lot's skeins, read dry. [1]
    standard : Lab
        The standard of its recipe and base. [1]
    tolerances : Tolerances
        What the studio does at which distance. [1]
    band : Band
        The unevenness that is wanted. [1]
    formula : Formula
        How the distance is reckoned. [-]
    u_read : float, optional
        Standard uncertainty of the mean by how it was read, u_r, as a CIELAB distance;
        needed of a single spot. [1]
    u_standard : float
        The same of the standard's colour, u_s. [1]

    Returns
    -------
    DryCheck
        Words, distance with its spread, evenness, decision. [1]

    Raises
    ------
    MissingError
        If there is no spot, or a single one and nobody knows what it is worth.

    Notes
    -----
    m is the mean of n spots, s the standard deviation of one as a CIELAB distance, of
    which √(1/3) falls on each number; e_k are steps along L, a and b. What the meter
    or the photo leaves in doubt is in s already where it is the smaller.

    Examples
    --------
    >>> found = dry_check(
    ...     [Lab(51.4, 20, 10), Lab(51.6, 20, 10)],
    ...     standard=Lab(50, 20, 10),
    ...     tolerances=Tolerances(),
    ...     band=Band(),
    ... )
    >>> found.words, found.decision.value
    ('a little lighter', 'alternate skeins')
    """
    read = averaged(spots)
    shown = [] if read.sd is None else [read.sd / sqrt(read.count)]
    known = [*shown, *([] if u_read is None else [u_read])]
    if not known:
        raise MissingError(name="A second spot", argument="spots")
    distance = _DISTANCES[formula]
    unevenness = colour_scatter(spots).mean if shown else None
    difference = distance(standard, read.mean)
    spread = _spread(read.mean, hypot(max(known), u_standard) / sqrt(3.0), distance)
    possible = could_be(
        difference=difference,
        spread=spread,
        is_paler=read.mean.L > standard.L,
        tolerances=tolerances,
    )
    return DryCheck(
        words=difference_words(standard, read.mean),
        formula=formula,
        difference=difference,
        spread=spread,
        mean=read.mean,
        unevenness=unevenness,
        evenness=None if unevenness is None else band.judged(unevenness),
        decision=possible[0] if len(possible) == 1 else Decision.CANNOT_TELL,
        could_be=possible,
    )


def could_be(
    *, difference: float, spread: float, is_paler: bool, tolerances: Tolerances
) -> tuple[Decision, ...]:
    """Return what may become of a lot at a distance from its standard.

    Parameters
    ----------
    difference : float
        Distance from the standard. [1]
    spread : float
        Standard uncertainty of the distance. [1]
    is_paler : bool
        Whether the lot is lighter than its standard: dye can be added, not taken. [-]
    tolerances : Tolerances
        What the studio does at which distance. [1]

    Returns
    -------
    tuple of Decision
        One, where no tolerance lies within the spread; else nobody can tell which of
        these, from the nearest to the farthest. [-]

    Examples
    --------
    >>> far = could_be(
    ...     difference=0.9, spread=0.3, is_paler=True, tolerances=Tolerances()
    ... )
    >>> [each.value for each in far]
    ['match', 'alternate skeins']
    """
    beyond = Decision.CORRECT if is_paler else Decision.ONE_OFF
    steps = (
        (Decision.MATCH, 0.0, tolerances.match),
        (Decision.ALTERNATE, tolerances.match, tolerances.alternate),
        (Decision.NEW_LOT, tolerances.alternate, tolerances.new_lot),
        (beyond, tolerances.new_lot, inf),
    )
    least, most = max(0.0, difference - spread), difference + spread
    return tuple(
        decision
        for decision, above, upto in steps
        if least <= upto and (most > above or not above)
    )


def _spread(mean: Lab, u: float, distance: Callable[[Lab, Lab], float]) -> float:
    """Return u(ΔE) of equation 3."""
    moved = (
        Lab(*(x + u * (axis == k) for k, x in enumerate(mean))) for axis in range(3)
    )
    return hypot(*(distance(mean, each) for each in moved))
