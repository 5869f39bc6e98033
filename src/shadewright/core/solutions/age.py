"""How old a bottle is, and what that means for what is in it.

Sources disagree on how long a stock of acid dye keeps: three to six months in
the dark is common practice, one or two weeks for a few dyes. No published
test was found. So age here is a reason to look at a bottle, never a verdict:
the studio's own checks of the dye (see ``keeping.life``) move the bounds, and a
discard-by date, where one is set, decides.
"""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from shadewright.core.tables.stock_age import (
    FRESH_DAYS,
    MIX_FRESH_DAYS,
    OLD_DAYS,
    PAST_DAYS,
)


class AgeClass(StrEnum):
    """A bottle's age in four steps, drawn as lightness on the shelf."""

    FRESH = "fresh"
    WEEKS = "some weeks"
    OLD = "old"
    PAST = "past its time"


@dataclass(frozen=True, kw_only=True)
class StockAge:
    """A bottle's age in days and its class; unknown while no date is known."""

    days: int | None
    age_class: AgeClass


def stock_age(
    *,
    made_on: date | None,
    today: date,
    discard_by: date | None = None,
    is_mix_fresh: bool = False,
    look_by_days: int = OLD_DAYS,
    discard_by_days: int = PAST_DAYS,
) -> StockAge:
    """Return how old a stock is and what that suggests.

    Parameters
    ----------
    made_on : date or None
        Day it was made; None counts as old. [-]
    today : date
        The day of asking. [-]
    discard_by : date or None
        Day set by the dyer; the day itself is still good. [-]
    is_mix_fresh : bool
        The dye is known to settle on cooling and is made for the day.
    look_by_days : int
        Age from which a bottle of this dye is looked at first. [d]
    discard_by_days : int
        Age from which it is past its time. [d]

    Returns
    -------
    StockAge
        Days, and the class.

    Notes
    -----
    Bounds are common practice, with no authority behind them, until the dye's own
    life is known.
    """
    days = None if made_on is None else (today - made_on).days
    if discard_by is not None and today > discard_by:
        return StockAge(days=days, age_class=AgeClass.PAST)
    if days is None:
        return StockAge(days=None, age_class=AgeClass.OLD)
    if is_mix_fresh:
        is_past = days > MIX_FRESH_DAYS
        return StockAge(
            days=days, age_class=AgeClass.PAST if is_past else AgeClass.FRESH
        )
    bounds = (min(FRESH_DAYS, look_by_days), look_by_days, discard_by_days)
    return StockAge(days=days, age_class=_by_days(days, bounds))


def _by_days(days: int, bounds: tuple[int, int, int]) -> AgeClass:
    fresh, look_by, discard_by = bounds
    if days <= fresh:
        return AgeClass.FRESH
    if days <= look_by:
        return AgeClass.WEEKS
    return AgeClass.OLD if days <= discard_by else AgeClass.PAST
