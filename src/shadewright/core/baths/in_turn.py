"""Several baths that draw on the same bottles, one after the other.

Whether the shelf has enough for a day is asked before the first pot, not in the last:
each bath in its turn chooses its bottles from what those before it have left.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from shadewright.core.baths.choosing import Candidate, ChosenBottles, chosen_bottles


@dataclass(frozen=True, kw_only=True)
class DoseInTurn:
    """A dose of one dye, and the bath that it goes into, in g and ml."""

    dye_g: float
    liquor_ml: float


def chosen_in_turn(
    *, doses: Sequence[DoseInTurn], bottles: Sequence[Candidate]
) -> tuple[ChosenBottles, ...]:
    """Return the bottles that each dose is measured from, in the order of dyeing.

    Parameters
    ----------
    doses : sequence of DoseInTurn
        The doses of one dye, the first to be dyed first. [g, mL]
    bottles : sequence of Candidate
        The bottles of that dye as they stand before the first. [%, mL]

    Returns
    -------
    tuple of ChosenBottles
        One a dose; what is missing of the first is missing of all that follow, unless
        they want less. [-]

    Notes
    -----
    Each by :func:`chosen_bottles`; what it takes is gone for the next.

    Examples
    --------
    >>> bottle = Candidate(
    ...     code="K9WQ", strength_percent=1.0, usable_ml=150.0, age_days=4, is_good=True
    ... )
    >>> pots = [DoseInTurn(dye_g=0.6, liquor_ml=3000.0)] * 3
    >>> chosen = chosen_in_turn(doses=pots, bottles=[bottle])
    >>> [round(each.missing_g, 2) for each in chosen]
    [0.0, 0.0, 0.3]
    """
    left = {bottle.code: bottle for bottle in bottles}
    chosen = []
    for dose in doses:
        each = chosen_bottles(
            dye_g=dose.dye_g, liquor_ml=dose.liquor_ml, bottles=list(left.values())
        )
        for share in each.shares:
            bottle = left[share.code]
            rest_ml = max(0.0, bottle.usable_ml - share.volume_ml)
            left[share.code] = replace(bottle, usable_ml=rest_ml)
        chosen.append(each)
    return tuple(chosen)


def enough_for(chosen: Sequence[ChosenBottles]) -> int:
    """Return how many baths have all that they want before the first that lacks some.

    Parameters
    ----------
    chosen : sequence of ChosenBottles
        One a bath, in the order of dyeing. [-]

    Returns
    -------
    int
        Baths. [1]

    Examples
    --------
    >>> whole = ChosenBottles(shares=(), missing_g=0.0)
    >>> enough_for([whole, whole, ChosenBottles(shares=(), missing_g=0.3)])
    2
    """
    short = (at for at, each in enumerate(chosen) if each.missing_g)
    return next(short, len(chosen))
