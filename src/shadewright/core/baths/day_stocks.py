"""The stock to make for a day: strong enough to pour, weak enough to measure.

One strength for all doses of a dye that no bottle covers: each is 5 ml at least and no
more than a quarter of its bath; of those that suit, the one nearest to the usual 1 %.
The volume is the next handy one above what the doses take, what is spare, and the last
drops that cannot be drawn; more would only grow old.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, log

from shadewright.core.baths.choosing import LARGEST_SHARE_OF_BATH
from shadewright.core.baths.doses import LEAST_DOSE_ML, STRENGTH_SERIES_PERCENT
from shadewright.core.baths.in_turn import DoseInTurn
from shadewright.core.baths.new_stocks import USUAL_PERCENT, USUAL_VOLUMES_ML
from shadewright.core.quantities import is_more
from shadewright.errors import MissingError

LAST_DROPS_ML = 10.0
"""What cannot be drawn from a bottle (common practice: 5 to 10 ml). [mL]"""
_TOO_LITTLE = 1e-9


@dataclass(frozen=True, kw_only=True)
class StockToMake:
    """A stock, its strength in % and what it is made up to in ml."""

    strength_percent: float
    volume_ml: float


def stock_to_make(
    *,
    doses: Sequence[DoseInTurn],
    spare_g: float = 0.0,
    strengths_percent: Sequence[float] = STRENGTH_SERIES_PERCENT,
) -> StockToMake:
    """Return the one stock that all these doses can be drawn from.

    Parameters
    ----------
    doses : sequence of DoseInTurn
        What no bottle covers of one dye; at least one. [g, mL]
    spare_g : float
        Dye to have besides. [g]
    strengths_percent : sequence of float
        What the dye may be dissolved to. [%]

    Returns
    -------
    StockToMake
        Strength and volume. [%, mL]

    Raises
    ------
    MissingError
        If no dose or no strength is given.

    Notes
    -----
    Where no strength suits every dose, the one whose worst dose is least far off.

    Examples
    --------
    >>> pots = [DoseInTurn(dye_g=1.8, liquor_ml=9000.0)] * 2
    >>> stock_to_make(doses=pots, spare_g=0.36)
    StockToMake(strength_percent=1.0, volume_ml=500.0)
    """
    if not doses or not strengths_percent:
        raise MissingError(name="A dose of the dye", argument="doses")
    strength = min(strengths_percent, key=lambda each: _unfit(each, doses))
    dye_g = spare_g + sum(dose.dye_g for dose in doses)
    least_ml = 100.0 * dye_g / strength + LAST_DROPS_ML
    return StockToMake(strength_percent=strength, volume_ml=_handy_ml(least_ml))


def _unfit(strength: float, doses: Sequence[DoseInTurn]) -> tuple[float, float]:
    """Return how far the worst dose is from suiting, then how unusual the strength."""
    worst = max(_misfit(strength, dose) for dose in doses)
    return worst, abs(log(strength / USUAL_PERCENT))


def _misfit(strength: float, dose: DoseInTurn) -> float:
    volume_ml = 100.0 * max(dose.dye_g, _TOO_LITTLE) / strength
    most_ml = LARGEST_SHARE_OF_BATH * dose.liquor_ml
    return max(1.0, LEAST_DOSE_ML / volume_ml, volume_ml / most_ml)


def _handy_ml(least_ml: float) -> float:
    fit = (each for each in USUAL_VOLUMES_ML if not is_more(least_ml, than=each))
    largest = USUAL_VOLUMES_ML[-1]
    return next(fit, largest * ceil(least_ml / largest))
