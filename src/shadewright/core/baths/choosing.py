"""Which bottles a dose is measured from: the good one that expires first.

The rules, in this order:

1. Only good bottles: those that the job may use (``solutions.keeping.purpose``),
   with more in them than the last drops that cannot be drawn.
2. A strength that suits: the dose is at least 5 ml, so that it can be measured,
   and takes no more than a quarter of the bath.
3. Of those, the one that expires first and holds the whole dose.
4. If none does, those that suit one after the other, the first to expire first.
5. If all that suit are too little: a bottle of another strength that holds the
   whole dose, the one whose dose comes nearest to suiting.
6. Failing that, every good bottle one after the other, those that suit first.
7. What is then still short is said, in grams of dye.

First to expire, first drawn, so that no bottle grows old unseen (common practice):
that is the oldest, unless its dye keeps longer or a day stands on it. A bottle of
unknown age counts as the first. Strength differs from bottle to bottle, so each
share is reckoned with its own.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.baths.doses import LEAST_DOSE_ML
from shadewright.core.tables.stock_age import PAST_DAYS

LARGEST_SHARE_OF_BATH = 0.25
_TRACE_G = 1e-9
_TRACE_ML = 1e-6


@dataclass(frozen=True, kw_only=True)
class Candidate:
    """A bottle that could be drawn on; ``age_days`` None where nobody knows.

    ``days_left`` counts to the day to discard it by, less than 0 once it has gone by;
    None: by common practice, from its age.
    """

    code: str
    strength_percent: float
    usable_ml: float
    age_days: int | None
    is_good: bool
    days_left: int | None = None

    def gives(self, *, dye_g: float) -> bool:
        """Return whether it is good and holds a whole dose.

        Parameters
        ----------
        dye_g : float
            Dye wanted. [g]

        Returns
        -------
        bool
            Whether it does. [-]
        """
        return self.is_good and _holds(self) >= dye_g - _TRACE_G

    @property
    def expires_in(self) -> int | None:
        """Days until it is past its time; None where nobody knows."""
        if self.days_left is not None or self.age_days is None:
            return self.days_left
        return PAST_DAYS - self.age_days


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
        Dye wanted; above zero. [g]
    liquor_ml : float
        Volume of the whole bath; above zero. [mL]
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
    good = [each for each in bottles if each.is_good and each.usable_ml > _TRACE_ML]
    ranked = sorted(good, key=lambda each: _rank(each, dye_g, liquor_ml))
    suiting = [each for each in ranked if _misfit(each, dye_g, liquor_ml) == 1]
    for group in (suiting, ranked):
        whole = next((each for each in group if _holds(each) >= dye_g - _TRACE_G), None)
        if whole is not None:
            return ChosenBottles(shares=(_share(whole, dye_g),), missing_g=0.0)
        split = _one_after_another(dye_g, group)
        if not split.missing_g:
            return split
    return _one_after_another(dye_g, ranked)


def _rank(
    bottle: Candidate, dye_g: float, liquor_ml: float
) -> tuple[float, bool, int, str]:
    """Put what suits before what does not, and then the first to expire."""
    expires_in = bottle.expires_in
    misfit = _misfit(bottle, dye_g, liquor_ml)
    return (misfit, expires_in is not None, expires_in or 0, bottle.code)


def _misfit(bottle: Candidate, dye_g: float, liquor_ml: float) -> float:
    """Return how many times a dose is too small or too large; 1 where it suits."""
    volume_ml = 100 * dye_g / bottle.strength_percent
    most_ml = LARGEST_SHARE_OF_BATH * liquor_ml
    return max(1.0, LEAST_DOSE_ML / volume_ml, volume_ml / most_ml)


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
