"""What is known of a bottle's keeping: its days, its test, what it asks for next."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from django.utils import timezone

from shadewright.core.solutions.age import AgeClass, StockAge
from shadewright.core.solutions.keeping import DyeLife, Fate, Standing, fate
from shadewright.core.solutions.ledger import BottleAct, BottleState
from shadewright.core.tables.stock_age import FRESH_DAYS
from shadewright.records.models import BottleLine, StockBottle
from shadewright.records.shapes import standing_lines

_POURED_IN = {BottleAct.FILLED, BottleAct.STOCK_ADDED}
_LOOKS = {BottleAct.CLEAR, BottleAct.SETTLED}


@dataclass(frozen=True, kw_only=True)
class Keeping:
    """How a bottle keeps: until when, what is known, and its one next step.

    ``look_by`` and ``expires_on`` are None where its day is not known; the second is
    the dyer's own day where one is set. ``is_own_life`` says that they rest on the
    studio's looks.
    """

    look_by: date | None
    expires_on: date | None
    days_left: int | None
    life_left: float | None
    is_own_life: bool
    is_rewarmed: bool
    tested_on: date | None
    looked_on: date | None
    standing: Standing
    fate: Fate


def keeping_of(
    row: StockBottle,
    state: BottleState,
    age: StockAge,
    *,
    life: DyeLife,
    today: date,
    is_empty: bool,
) -> Keeping:
    """Return how a bottle keeps, from its row, its ledger and its dye's life."""
    lines = standing_lines(row.lines.all())
    tested_on = _last(lines, {BottleAct.TESTED}) if state.is_tested else None
    looked_on = _last(lines, _LOOKS)
    look_by, expires_on = _days(row, life)
    is_warmed = state.is_settled is True and is_rewarmed(row)
    standing = Standing(
        is_settled=state.is_settled is True,
        is_fresh=_is_fresh(lines, age, life, today),
        is_past=age.age_class is AgeClass.PAST,
        is_guess=state.is_guess,
        tested_days=None if tested_on is None else (today - tested_on).days,
    )
    is_due = age.age_class is AgeClass.OLD and _is_stale(looked_on, today)
    return Keeping(
        look_by=look_by,
        expires_on=expires_on,
        days_left=None if expires_on is None else (expires_on - today).days,
        life_left=_share(row.made_on, expires_on, today),
        is_own_life=life.is_from_checks and row.discard_by is None,
        is_rewarmed=is_warmed,
        tested_on=tested_on,
        looked_on=looked_on,
        standing=standing,
        fate=fate(standing, is_empty=is_empty, is_rewarmed=is_warmed, is_due=is_due),
    )


def is_rewarmed(row: StockBottle) -> bool:
    """Whether a bottle was re-warmed after it was last seen settled."""
    acts = [line.act for line in standing_lines(row.lines.all())]
    told = [act for act in acts if act in {BottleAct.SETTLED, BottleAct.REWARMED}]
    return told[-1:] == [BottleAct.REWARMED]


def _days(row: StockBottle, life: DyeLife) -> tuple[date | None, date | None]:
    if row.made_on is None:
        return None, row.discard_by
    look_by = row.made_on + timedelta(days=life.look_by_days)
    expires_on = row.discard_by or row.made_on + timedelta(days=life.discard_by_days)
    return min(look_by, expires_on), expires_on


def _is_fresh(
    lines: Sequence[BottleLine], age: StockAge, life: DyeLife, today: date
) -> bool:
    """Whether a stock is fresh, and so was every bottle that was poured into it."""
    if age.age_class is not AgeClass.FRESH:
        return False
    most = min(FRESH_DAYS, life.look_by_days)
    parts = [x.other for x in lines if x.act in _POURED_IN and x.other is not None]
    days = [None if x.made_on is None else (today - x.made_on).days for x in parts]
    return all(each is not None and each <= most for each in days)


def _share(made_on: date | None, expires_on: date | None, today: date) -> float | None:
    """Return how much of a bottle's whole life is still to come."""
    if made_on is None or expires_on is None:
        return None
    whole = max((expires_on - made_on).days, 1)
    return min(max((expires_on - today).days / whole, 0.0), 1.0)


def _last(lines: Sequence[BottleLine], acts: set[BottleAct]) -> date | None:
    found = [line.at for line in lines if line.act in acts]
    return timezone.localdate(found[-1]) if found else None


def _is_stale(looked_on: date | None, today: date) -> bool:
    """Whether a look at an old bottle is wanted: none, or none these four weeks."""
    return looked_on is None or (today - looked_on).days > FRESH_DAYS
