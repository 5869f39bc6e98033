"""Baths of the days before that still stand in their pots when a day opens.

They were left to cool overnight. Each keeps its pot until it is rinsed, and the rinse
wants hands, a sink and places on the rack like any other.
"""

from collections.abc import Sequence
from datetime import date, timedelta

from shadewright.core.planning import Going, Stage, WantedBath
from shadewright.records import day_reads
from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.bath_facts import (
    depth_of,
    family_of,
    place_of,
    skeins_of,
)
from shadewright.workflows.days.day_clock import DayClock
from shadewright.workflows.days.day_now import status_of_row
from shadewright.workflows.days.going import ticks_of
from shadewright.workflows.days.stage_times import StageTimes
from shadewright.workflows.stamps import today

_DAYS_BACK = 7
_OPEN = {BathStatus.GOING, BathStatus.COOLING}


def left_standing(
    day: date, clock: DayClock, times: StageTimes, *, sources: Sequence[str]
) -> tuple[WantedBath, ...]:
    """Return what was dyed on the days before and waits for its rinse in its pot."""
    return tuple(
        _standing(row, clock, times, sources)
        for row in day_reads.baths_before(day, days=_DAYS_BACK)
        if sources and _is_in_a_pot(row) and _will_stand(row, day)
    )


def _is_in_a_pot(row: Bath) -> bool:
    return row.pot is not None and not row.pot.is_retired and not row.is_swatch


def _will_stand(row: Bath, day: date) -> bool:
    status = status_of_row(row)
    lines = standing_lines(row.lines.all())
    is_rinsed = any(line.act == BathAct.RINSED for line in lines)
    if is_rinsed or status in {BathStatus.FINISHED, BathStatus.GIVEN_UP}:
        return False
    if day <= today():
        return status in _OPEN
    plan = day_reads.schedule_row(row.dyed_on)
    if row.dyed_on != day - timedelta(days=1):
        return False
    return status in _OPEN if plan is None else row.number in _left_by(plan.plan)


def _left_by(plan: dict[str, list[dict[str, list[dict[str, str]]]]]) -> set[str]:
    """Return the baths that a plan leaves in their pots."""
    return {
        str(each["name"])
        for each in plan["baths"]
        if all(stage["stage"] != Stage.RINSE for stage in each["stages"])
    }


def _standing(
    row: Bath, clock: DayClock, times: StageTimes, sources: Sequence[str]
) -> WantedBath:
    pot, source = place_of(row, {})
    off = min(-1, ticks_of(row, clock).get(BathAct.HEAT_OFF, -1))
    hands = times.of_bath(liquor_l=0.0, doses=0, skeins=skeins_of(row))
    return WantedBath(
        name=row.number,
        family=family_of(row),
        depth_percent=depth_of(row),
        fibre_g=row.fibre_g,
        skeins=skeins_of(row),
        liquor_ratio=row.liquor_ratio,
        minutes=dict.fromkeys(Stage, 0) | {Stage.RINSE: hands[Stage.RINSE]},
        cools_on_source=False,
        going=Going(
            pot=pot,
            source=source if source in sources else sources[0],
            fill_start=off - 1,
            heat_start=off - 1,
            checked_at=off,
        ),
    )
