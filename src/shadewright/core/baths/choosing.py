"""Which bottles a dose is measured from: the oldest good one that has enough.

The rules, in this order:

1. Only good bottles: clear or not looked at, not past their time, with more in
   them than the last drops that cannot be drawn.
2. A strength that suits: the dose is at least 5 ml, so that it can be measured,
   and takes no more than a quarter of the bath.
3. Of those, the oldest that holds the whole dose.
4. If none holds all of it, the oldest suiting bottles one after the other.
5. If that is still short, what is missing is said, in grams of dye.

Old stock goes first so that no bottle grows old unseen (common practice).
Strength differs from bottle to bottle, so each share is reckoned with its own.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.baths.doses import LEAST_DOSE_ML

LARGEST_SHARE_OF_BATH = 0.25
_TRACE_G = 1e-9


@dataclass(frozen=True, kw_only=True)
class Candidate:
    """A bottle that could be drawn on; ``age_days`` None where nobody knows."""

    code: str
    strength_percent: float
    usable_ml: float
    age_days: int | None
    is_good: bool


@dataclass(frozen=True, kw_only=True)
class BottleShare:
    """What is drawn from one bottle for one dose."""

    code: str
    volume_ml: float
    dye_g: float
    strength_percent: float


@dataclass(frozen=True, kw_only=True)
class ChosenBottles:
    """The shares of a dose, in the order of drawing, and the dye still missing."""

    shares: tuple[BottleShare, ...]
    missing_g: float


def chosen_bottles(
    *, dye_g: float, liquor_ml: float, bottles: Sequence[Candidate]
) -> ChosenBottles:
    """Return the bottles that a dose is measured from.

    Parameters
    ----------
    dye_g : float
        Dye wanted. [g]
    liquor_ml : float
        Volume of the whole bath. [mL]
    bottles : sequence of Candidate
        The bottles of this dye, in any order. [%, mL]

    Returns
    -------
    ChosenBottles
        Shares [mL, g] and the dye that no bottle covers [g].

    Notes
    -----
    Common practice; the 5 ml are those of :func:`dose_advice`.

    Examples
    --------
    >>> old = Candidate(
    ...     code="G4R", strength_percent=1.0, usable_ml=400, age_days=40, is_good=True
    ... )
    >>> new = Candidate(
    ...     code="K9W", strength_percent=1.0, usable_ml=400, age_days=4, is_good=True
    ... )
    >>> chosen = chosen_bottles(dye_g=0.5, liquor_ml=3000, bottles=[new, old])
    >>> [(share.code, share.volume_ml) for share in chosen.shares]
    [('G4R', 50.0)]
    """
    good = [each for each in bottles if each.is_good and each.usable_ml > 0]
    oldest_first = sorted(good, key=_age_rank)
    suiting = [each for each in oldest_first if _suits(each, dye_g, liquor_ml)]
    for group in (suiting, oldest_first):
        whole = next((each for each in group if _holds(each) >= dye_g - _TRACE_G), None)
        if whole is not None:
            return ChosenBottles(shares=(_share(whole, dye_g),), missing_g=0.0)
    return _one_after_another(dye_g, suiting or oldest_first)


def _age_rank(bottle: Candidate) -> tuple[bool, int, str]:
    is_known = bottle.age_days is not None
    return (is_known, -(bottle.age_days or 0), bottle.code)


def _suits(bottle: Candidate, dye_g: float, liquor_ml: float) -> bool:
    volume_ml = 100 * dye_g / bottle.strength_percent
    return LEAST_DOSE_ML <= volume_ml <= LARGEST_SHARE_OF_BATH * liquor_ml


def _holds(bottle: Candidate) -> float:
    return bottle.usable_ml * bottle.strength_percent / 100


def _share(bottle: Candidate, dye_g: float) -> BottleShare:
    return BottleShare(
        code=bottle.code,
        volume_ml=100 * dye_g / bottle.strength_percent,
        dye_g=dye_g,
        strength_percent=bottle.strength_percent,
    )


def _one_after_another(dye_g: float, bottles: Sequence[Candidate]) -> ChosenBottles:
    shares: list[BottleShare] = []
    wanted_g = dye_g
    for bottle in bottles:
        taken_g = min(wanted_g, _holds(bottle))
        if taken_g > _TRACE_G:
            shares.append(_share(bottle, taken_g))
            wanted_g -= taken_g
    return ChosenBottles(
        shares=tuple(shares), missing_g=wanted_g if wanted_g > _TRACE_G else 0.0
    )
