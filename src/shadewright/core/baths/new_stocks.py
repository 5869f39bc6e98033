"""New stocks for small doses: thinned from a stronger bottle, or made from powder.

A weak stock needs so little powder that a scale hardly shows it: 0.1 g in 100 ml of
0.1 %. Thinning is the surer way, and the quicker: 10 ml of 1 % made up to 100 ml.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil

from shadewright.core.baths.choosing import Candidate
from shadewright.core.baths.doses import LEAST_DOSE_ML, STRENGTH_SERIES_PERCENT
from shadewright.core.quantities import is_more
from shadewright.core.solutions import dilution, powder_mass_g

USUAL_VOLUMES_ML = (100.0, 250.0, 500.0, 1000.0)
"""What a small stock is made up to (common practice). [mL]"""
TO_SPARE = 1.1
"""How much more of a new stock is made than the doses take (common practice). [1]"""
USUAL_PERCENT = 1.0
"""What a weak stock is thinned from where nothing stands there. [%]"""
_HALF_LITRE_ML = 500.0


@dataclass(frozen=True, kw_only=True)
class DrawnFrom:
    """What one swatch takes of one dye; ``code`` is empty for a new stock."""

    code: str
    strength_percent: float
    volume_ml: float
    is_suiting: bool


@dataclass(frozen=True, kw_only=True)
class NewStock:
    """A stock to be had first: so much of a stronger one, or of powder, to volume.

    ``from_code`` is the bottle that is thinned; where it is empty and ``from_percent``
    is not None, another new stock is. ``powder_g`` is 0 unless powder is weighed.
    """

    strength_percent: float
    volume_ml: float
    from_code: str = ""
    from_percent: float | None = None
    taken_ml: float = 0.0
    powder_g: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Bench:
    """What small doses are measured with.

    ``least_ml`` is the least dose that can be measured, ``least_powder_g`` the least
    powder that can be weighed; ``strengths_percent`` what new stocks may have.
    """

    least_ml: float = LEAST_DOSE_ML
    least_powder_g: float = 0.0
    strengths_percent: Sequence[float] = STRENGTH_SERIES_PERCENT


USUAL_BENCH = Bench()


def stocks_to_have(
    drawn: Sequence[DrawnFrom],
    *,
    bottles: Sequence[Candidate],
    bench: Bench = USUAL_BENCH,
) -> tuple[NewStock, ...]:
    """Return the new stocks that doses are drawn from, in the order of making.

    Parameters
    ----------
    drawn : sequence of DrawnFrom
        The doses, and what each is drawn from. [mL]
    bottles : sequence of Candidate
        Bottles of this dye. [%, mL]
    bench : Bench
        What can be measured and weighed. [mL, g, %]

    Returns
    -------
    tuple of NewStock
        The strongest first: each is made before it is thinned. [%, mL, g]

    Notes
    -----
    V1 = V2 c2 / c1 (equation 12), with V2 the next handy volume above what the doses
    take and a tenth to spare, and large enough that V1 can be measured.

    Examples
    --------
    >>> weak = DrawnFrom(code="", strength_percent=0.1, volume_ml=60.0, is_suiting=True)
    >>> stocks_to_have([weak], bottles=[])[0].powder_g
    0.1
    """
    needs_ml: defaultdict[float, float] = defaultdict(float)
    taken_ml: defaultdict[str, float] = defaultdict(float)
    for each in drawn:
        if each.code:
            taken_ml[each.code] += each.volume_ml
        else:
            needs_ml[each.strength_percent] += each.volume_ml
    found = []
    while needs_ml:
        weakest = min(needs_ml)
        least_ml = TO_SPARE * needs_ml.pop(weakest)
        standing = [_less(each, taken_ml) for each in bottles if each.is_good]
        stock = _had(weakest, least_ml, standing, tuple(needs_ml), bench)
        if stock.from_code:
            taken_ml[stock.from_code] += stock.taken_ml
        elif stock.from_percent is not None:
            needs_ml[stock.from_percent] += stock.taken_ml
        found.append(stock)
    return tuple(reversed(found))


def _less(bottle: Candidate, taken_ml: Mapping[str, float]) -> Candidate:
    return replace(bottle, usable_ml=bottle.usable_ml - taken_ml.get(bottle.code, 0.0))


def _had(
    strength: float,
    least_ml: float,
    standing: Sequence[Candidate],
    others: Sequence[float],
    bench: Bench,
) -> NewStock:
    """Return how a new stock is had: thinned from a bottle, or a new one, or made."""
    thinned = (
        _thinned(strength, least_ml, each.strength_percent, each.code, bench)
        for each in sorted(standing, key=lambda x: (x.expires_in or 0, x.code))
        if is_more(each.strength_percent, than=strength)
    )
    left_ml = {each.code: each.usable_ml for each in standing}
    fit = (x for x in thinned if not is_more(x.taken_ml, than=left_ml[x.from_code]))
    from_bottle = next(fit, None)
    if from_bottle is not None:
        return from_bottle
    volume_ml = _handy_ml(least_ml)
    powder_g = powder_mass_g(volume_ml=volume_ml, strength_percent=strength)
    stronger = _stronger(strength, others, bench)
    if stronger is None or not is_more(bench.least_powder_g, than=powder_g):
        return NewStock(
            strength_percent=strength, volume_ml=volume_ml, powder_g=powder_g
        )
    return _thinned(strength, least_ml, stronger, "", bench)


def _stronger(strength: float, others: Sequence[float], bench: Bench) -> float | None:
    """Return the new stock that a weaker one is thinned from: one that is made anyway.

    Else the usual strength, or the strongest there is.
    """
    fit = [each for each in others if is_more(each, than=strength)]
    if fit:
        return min(fit)
    more = [each for each in bench.strengths_percent if is_more(each, than=strength)]
    return USUAL_PERCENT if USUAL_PERCENT in more else max(more, default=None)


def _thinned(
    strength: float, least_ml: float, percent: float, code: str, bench: Bench
) -> NewStock:
    """Return a stock thinned from a stronger one, enough of it to be measured."""
    volume_ml = _handy_ml(max(least_ml, bench.least_ml * percent / strength))
    how = dilution(have_percent=percent, want_percent=strength, volume_ml=volume_ml)
    return NewStock(
        strength_percent=strength,
        volume_ml=volume_ml,
        from_code=code,
        from_percent=percent,
        taken_ml=how.stock_ml,
    )


def _handy_ml(least_ml: float) -> float:
    """Return the next of the usual volumes, or the next half litre above them."""
    beyond = _HALF_LITRE_ML * ceil(least_ml / _HALF_LITRE_ML)
    fit = (each for each in USUAL_VOLUMES_ML if not is_more(least_ml, than=each))
    return next(fit, beyond)
