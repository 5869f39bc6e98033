"""Small doses: the stocks that a set of swatches is drawn from.

Ten grams of yarn at 0.05 % want five milligrams of dye. No scale of a studio weighs
that, and of a 1 % stock it is half a millilitre: too little to measure. So a set of
swatches is drawn from weaker stocks, and from as few of them as will do.

1. A dose suits a stock if it is 5 ml or more and the jar has room for it: no more than
   a quarter of the bath.
2. The bottles that stand there come first: the fewest that suit every dose.
3. Where they do not, the fewest new stocks are added, of the usual strengths.
4. Of equals the stronger, which brings less water along; then the first to expire.
5. A new stock is thinned from a stronger bottle. Where none stands there its powder is
   weighed; where that is too little to weigh, a stronger one is made first.
6. A dose that suits no stock at all is drawn from the nearest, and says so.

All of it is common practice; that a bottle at hand beats a new stock is our choice.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import combinations

from shadewright.core.baths.choosing import LARGEST_SHARE_OF_BATH, Candidate
from shadewright.core.baths.doses import LEAST_SCALE_STEPS
from shadewright.core.baths.measures import stock_volume_ml
from shadewright.core.baths.new_stocks import (
    USUAL_BENCH,
    Bench,
    DrawnFrom,
    NewStock,
    stocks_to_have,
)
from shadewright.core.quantities import is_more, require_mass, require_volume

MOST_STOCKS = 3
"""More strengths of one dye than this nobody wants to line up (our choice). [-]"""
_UNKNOWN_DAYS = 0


@dataclass(frozen=True, kw_only=True)
class SmallDoses:
    """What each swatch takes, in order, and the stocks to be had first, in order."""

    drawn: tuple[DrawnFrom, ...]
    first: tuple[NewStock, ...]


@dataclass(frozen=True, kw_only=True)
class _Source:
    """A bottle, or a stock that could be had."""

    strength_percent: float
    code: str = ""
    holds_ml: float = float("inf")
    expires_in: int | None = None


@dataclass(frozen=True, kw_only=True)
class _Lot:
    """What must be drawn, and between which volumes it suits."""

    dyes_g: tuple[float, ...]
    least_ml: float
    most_ml: float


def small_doses(
    *,
    dyes_g: Sequence[float],
    liquor_ml: float,
    bottles: Sequence[Candidate],
    bench: Bench = USUAL_BENCH,
) -> SmallDoses:
    """Return the stocks of one dye that a set of swatches is drawn from.

    Parameters
    ----------
    dyes_g : sequence of float
        Dye that each swatch wants; above zero. [g]
    liquor_ml : float
        Bath of one swatch; above zero. [mL]
    bottles : sequence of Candidate
        Bottles of this dye. [%, mL]
    bench : Bench
        What can be measured and weighed. [mL, g, %]

    Returns
    -------
    SmallDoses
        What each swatch takes [mL], and what to thin or make first. [mL, g]

    Raises
    ------
    OutOfRangeError
        If a dose or the bath is out of range.

    Notes
    -----
    The volume V of a dose m from a stock of strength c is 100 m / c (equation 5), so
    it suits every strength from 100 m / V_most to 100 m / V_least. Source: common
    practice.

    Examples
    --------
    >>> g4r = Candidate(
    ...     code="G4R", strength_percent=1.0, usable_ml=400, age_days=4, is_good=True
    ... )
    >>> found = small_doses(dyes_g=[0.1, 0.01], liquor_ml=500.0, bottles=[g4r])
    >>> [(dose.code, dose.volume_ml) for dose in found.drawn]
    [('', 100.0), ('', 10.0)]
    >>> thinned = found.first[0]
    >>> thinned.from_code, thinned.taken_ml, thinned.volume_ml
    ('G4R', 25.0, 250.0)
    """
    require_volume(liquor_ml, name="Bath of a swatch", argument="liquor_ml")
    for dye_g in dyes_g:
        require_mass(dye_g, name="Dye", argument="dyes_g")
    lot = _Lot(
        dyes_g=tuple(dyes_g),
        least_ml=bench.least_ml,
        most_ml=LARGEST_SHARE_OF_BATH * liquor_ml,
    )
    sources = _sources(bottles, bench)
    if not sources:
        return SmallDoses(drawn=(), first=())
    chosen = min(_sets(sources), key=partial(_badness, lot=lot))
    drawn = _drawn(chosen, lot)
    return SmallDoses(
        drawn=drawn, first=stocks_to_have(drawn, bottles=bottles, bench=bench)
    )


def least_weighed_ml(*, step_g: float) -> float:
    """Return the least dose of stock that a scale weighs well enough.

    Parameters
    ----------
    step_g : float
        What the scale shows; above zero. [g]

    Returns
    -------
    float
        Fifty steps, a weak stock weighing a gram the millilitre. [mL]

    Raises
    ------
    OutOfRangeError
        If the step is out of range.

    Notes
    -----
    Fifty steps keep the rounding of the scale within 1 %. Source: common practice.

    Examples
    --------
    >>> least_weighed_ml(step_g=0.01)
    0.5
    """
    require_mass(step_g, name="Step of the scale", argument="step_g")
    return LEAST_SCALE_STEPS * step_g


def _sources(bottles: Sequence[Candidate], bench: Bench) -> list[_Source]:
    standing = [
        _Source(
            strength_percent=each.strength_percent,
            code=each.code,
            holds_ml=each.usable_ml,
            expires_in=each.expires_in,
        )
        for each in bottles
        if each.is_good and each.usable_ml >= bench.least_ml
    ]
    return standing + [_Source(strength_percent=s) for s in bench.strengths_percent]


def _sets(sources: Sequence[_Source]) -> Iterator[tuple[_Source, ...]]:
    for count in range(1, min(MOST_STOCKS, len(sources)) + 1):
        yield from combinations(sources, count)


def _badness(sources: tuple[_Source, ...], *, lot: _Lot) -> tuple[float, ...]:
    """Return what sorts sets of stocks, the best first."""
    drawn = _drawn(sources, lot)
    days = (x.expires_in or _UNKNOWN_DAYS for x in sources if x.code)
    return (
        sum(not each.is_suiting for each in drawn),
        sum(not each.code for each in sources),
        len(sources),
        sum(each.volume_ml for each in drawn),
        sum(days),
    )


def _drawn(sources: Sequence[_Source], lot: _Lot) -> tuple[DrawnFrom, ...]:
    """Return each dose from the strongest stock that it suits and that holds it."""
    by_strength = sorted(sources, key=lambda each: -each.strength_percent)
    left_ml = {each: each.holds_ml for each in by_strength}
    found = []
    for dye_g in lot.dyes_g:
        volumes = {
            each: stock_volume_ml(
                dye_mass_g=dye_g, strength_percent=each.strength_percent
            )
            for each in by_strength
        }
        fit = [x for x in by_strength if _suits(volumes[x], left_ml[x], lot)]
        taken = (
            fit[0] if fit else min(by_strength, key=lambda x: _misfit(volumes[x], lot))
        )
        left_ml[taken] -= volumes[taken]
        found.append(
            DrawnFrom(
                code=taken.code,
                strength_percent=taken.strength_percent,
                volume_ml=volumes[taken],
                is_suiting=bool(fit),
            )
        )
    return tuple(found)


def _suits(volume_ml: float, left_ml: float, lot: _Lot) -> bool:
    return not (
        is_more(lot.least_ml, than=volume_ml)
        or is_more(volume_ml, than=lot.most_ml)
        or is_more(volume_ml, than=left_ml)
    )


def _misfit(volume_ml: float, lot: _Lot) -> float:
    return max(1.0, lot.least_ml / volume_ml, volume_ml / lot.most_ml)
