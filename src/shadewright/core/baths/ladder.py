"""The strength ladder: how strong an old stock still is, by dyeing it beside fresh.

Five little skeins of 5 g. Four get fresh stock: 80, 90, 100 and 110 % of a dose. The
fifth gets the whole dose by the old bottle's label. Dyed together, rinsed and dry, the
fifth looks like one of the four, or like something between two: that is what the old
stock is still worth. Ten per cent is about what an eye tells apart at a middling
depth, so the reading is good to half a rung either way (both common practice).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from shadewright.core.baths.depth import dye_mass_g
from shadewright.core.baths.doses import LEAST_DOSE_ML
from shadewright.core.baths.measures import stock_volume_ml
from shadewright.core.quantities import amount_text, is_more, require_strength
from shadewright.core.uncertainty import (
    Shape,
    Value,
    bounded,
    exact,
    product,
    quotient,
    scaled,
)
from shadewright.errors import OutOfRangeError

RUNGS_PERCENT = (80.0, 90.0, 100.0, 110.0)  # common practice
SKEIN_G = 5.0  # common practice
DEPTH_PERCENT = 1.0  # our choice: a middling depth, where an eye tells most
_FOLD = 10
_TO_SPARE = 1.05


@dataclass(frozen=True, kw_only=True)
class Rung:
    """A skein of the ladder: its share of the dose, and the ml that carry it."""

    share_percent: float
    volume_ml: float


@dataclass(frozen=True, kw_only=True)
class Ladder:
    """A strength test as it is measured out.

    With a ``fold`` of 10 both stocks are thinned tenfold first, and all ml are of
    the thinned ones; ``fresh_ml`` and ``old_ml`` are what is taken from the bottles,
    in full millilitres with a little to spare.
    """

    rungs: tuple[Rung, ...]
    tested_ml: float
    fold: int
    fresh_ml: float
    old_ml: float
    warnings: tuple[str, ...]


def ladder(
    *,
    fresh_percent: float,
    old_percent: float,
    yarn_g: float = SKEIN_G,
    depth_percent: float = DEPTH_PERCENT,
    shares_percent: Sequence[float] = RUNGS_PERCENT,
) -> Ladder:
    """Return what is measured out for a strength test.

    Parameters
    ----------
    fresh_percent : float
        Strength of the fresh stock; above 0 to 50. [%]
    old_percent : float
        Strength on the old bottle's label; above 0 to 50. [%]
    yarn_g : float
        Weight of each little skein. [g]
    depth_percent : float
        Depth of the whole dose. [%]
    shares_percent : sequence of float
        The rungs, as shares of the dose. [%]

    Returns
    -------
    Ladder
        Doses of the rungs and of the old stock, and what to mind. [mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    Thinned tenfold where a dose would be below 5 ml: two rungs then differ by more
    than a syringe is out. Source: common practice.

    Examples
    --------
    >>> test = ladder(fresh_percent=1.0, old_percent=1.0)
    >>> [rung.volume_ml for rung in test.rungs], test.fold
    ([40.0, 45.0, 50.0, 55.0], 10)
    """
    fresh = require_strength(fresh_percent, argument="fresh_percent")
    old = require_strength(old_percent, argument="old_percent")
    dye_g = dye_mass_g(fibre_mass_g=yarn_g, depth_percent=depth_percent)
    whole_ml = stock_volume_ml(dye_mass_g=dye_g, strength_percent=fresh)
    tested_ml = stock_volume_ml(dye_mass_g=dye_g, strength_percent=old)
    doses_ml = [whole_ml * share / 100 for share in shares_percent]
    least_ml = min(*doses_ml, tested_ml)
    fold = _FOLD if is_more(LEAST_DOSE_ML, than=least_ml) else 1
    return Ladder(
        rungs=tuple(
            Rung(share_percent=share, volume_ml=fold * dose_ml)
            for share, dose_ml in zip(shares_percent, doses_ml, strict=True)
        ),
        tested_ml=fold * tested_ml,
        fold=fold,
        fresh_ml=float(ceil(sum(doses_ml) * _TO_SPARE)),
        old_ml=float(ceil(tested_ml * _TO_SPARE)),
        warnings=_warnings(fold * least_ml, fold=fold),
    )


def ladder_strength_percent(
    *,
    reading: Value,
    fresh_percent: Value,
    fresh_ml: Value,
    old_ml: Value,
    fresh_yarn_g: Value | None = None,
    old_yarn_g: Value | None = None,
) -> Value:
    """Return the strength of an old stock from the rung that it looks like.

    c = r c_f (V_f / V) (W / W_f)

    Parameters
    ----------
    reading : Value
        Share of the dose that it looks like, r. [-]
    fresh_percent : Value
        Strength of the fresh stock, c_f. [%]
    fresh_ml : Value
        Fresh stock of a whole dose, V_f. [mL]
    old_ml : Value
        Old stock that was poured, V. [mL]
    fresh_yarn_g : Value or None
        Yarn of the rung, W_f; None: both the same and exact. [g]
    old_yarn_g : Value or None
        Yarn of the old stock's skein, W. [g]

    Returns
    -------
    Value
        Strength of the old stock, c. [%]

    Notes
    -----
    Equal depth on the yarn means equal dye on the weight of fibre. Holds below the
    depth at which yarn takes no more; no published example used.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> strength = ladder_strength_percent(
    ...     reading=ladder_reading(low_percent=80, high_percent=90),
    ...     fresh_percent=exact(1.0),
    ...     fresh_ml=exact(5.0),
    ...     old_ml=exact(5.0),
    ... )
    >>> round(strength.value, 3), round(strength.u, 4)
    (0.85, 0.0289)
    """
    dye = product(reading, fresh_percent, fresh_ml, old_yarn_g or exact(1.0))
    return quotient(dye, product(old_ml, fresh_yarn_g or exact(1.0)))


def ladder_reading(
    *,
    low_percent: float,
    high_percent: float,
    shares_percent: Sequence[float] = RUNGS_PERCENT,
) -> Value:
    """Return what a skein looks like: one rung, or something between two.

    Parameters
    ----------
    low_percent : float
        The rung that it looks like, or the paler of the two beside it. [%]
    high_percent : float
        The same rung, or the deeper of the two. [%]
    shares_percent : sequence of float
        The rungs, the palest first. [%]

    Returns
    -------
    Value
        Share of the dose, as a rectangle of half a rung either way. [-]

    Raises
    ------
    OutOfRangeError
        If they are neither one rung nor two that stand side by side.

    Notes
    -----
    Paler or deeper than the whole ladder is no reading but a bound: dye another
    ladder. Half a rung is common practice.

    Examples
    --------
    >>> ladder_reading(low_percent=90, high_percent=90).value
    0.9
    """
    rungs = list(shares_percent)
    places = [
        rungs.index(share) if share in rungs else -9
        for share in (low_percent, high_percent)
    ]
    if -9 in places or places[1] - places[0] not in {0, 1}:
        raise OutOfRangeError(
            name="What it looks like",
            given=" to ".join(amount_text(x, "%") for x in (low_percent, high_percent)),
            allowed="one rung of the ladder, or two side by side",
            argument="reading",
        )
    read = bounded(
        (low_percent + high_percent) / 2,
        half_width=(rungs[-1] - rungs[0]) / (len(rungs) - 1) / 2,
        shape=Shape.RECTANGULAR,
        name="reading the ladder",
        source="reading the ladder",
    )
    return scaled(read, by=0.01)


def _warnings(least_ml: float, *, fold: int) -> tuple[str, ...]:
    if is_more(LEAST_DOSE_ML, than=least_ml):
        least = amount_text(least_ml, "ml")
        return (f"Thinned tenfold the smallest dose is only {least}: thin both more.",)
    if fold == 1:
        return ()
    return ("Too small to measure as they are: thin both stocks tenfold first.",)
