"""How far a bath has come, for the planner: read from the ticks at its pot."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from shadewright.core.planning import Going, Stage, Touch, WantedBath
from shadewright.exchange.day_baths import MOST_MIN
from shadewright.records.models import Bath, BathLine
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.days.day_clock import DayClock

Ticks = Mapping[BathAct, int]
"""When each thing first happened at a pot, in minutes of the day."""
_FARTHEST = round(MOST_MIN) - 1
_IN_TURN = (
    BathAct.STARTED,
    BathAct.HEAT_ON,
    BathAct.AT_TOP,
    BathAct.HEAT_OFF,
    BathAct.RINSED,
    BathAct.FINISHED,
)


def ticks_of(row: Bath, clock: DayClock) -> Ticks:
    """Return when each thing first happened at a bath's pot.

    A day goes a day back and a day on: what happened long before, as in a pot that was
    left from Friday to Monday, counts as if it were then.
    """
    found: dict[BathAct, int] = {}
    for line in _in_order(standing_lines(row.lines.all())):
        at = max(-_FARTHEST, min(clock.minutes_at(line.at), _FARTHEST))
        found.setdefault(BathAct(line.act), at)
    return found


def in_order(ticks: Ticks, *, now: int) -> Ticks:
    """Return ticks with none after now, and none before what it follows.

    A phone's clock may be a minute ahead, and what was forgotten is ticked late: a
    filling that was ticked after the heat was over by then. No stage lasts longer than
    a day.
    """
    earliest = now - _FARTHEST
    settled, latest = {act: max(at, earliest) for act, at in ticks.items()}, now
    for act in reversed(_IN_TURN):
        if act in settled:
            settled[act] = latest = min(settled[act], latest)
    return settled


def going_of(
    ticks: Ticks, *, pot: str, source: str, rinse_min: int, is_steamed: bool = False
) -> Going | None:
    """Return how far a bath has come; None where nothing was done yet.

    Who finished a bath without a word of its rinse has rinsed it just before.
    """
    begun = [at for act, at in ticks.items() if act is not BathAct.NOTE]
    if not begun:
        return None
    rinsed = ticks.get(BathAct.RINSED)
    if rinsed is None and BathAct.FINISHED in ticks:
        begun_rinse = ticks[BathAct.FINISHED] - rinse_min
        before = [ticks[act] for act in _IN_TURN[:-2] if act in ticks]
        rinsed = max([begun_rinse, *before])
    return Going(
        pot="" if is_steamed else pot,
        source=source,
        fill_start=ticks.get(BathAct.STARTED, min(begun)),
        heat_start=_heat_on(ticks),
        checked_at=ticks.get(BathAct.HEAT_OFF),
        rinse_start=rinsed,
    )


def with_what_it_took(bath: WantedBath, ticks: Ticks, *, now: int) -> WantedBath:
    """Return a bath that is going with the minutes that its stages really took.

    What should be over but was not ticked lasts until now: a pot that is late has
    longer stages, so that what follows it is planned from this moment on.
    """
    going = bath.going
    if going is None:
        return bath
    took: dict[Stage, int] = {}
    heat_on, top = _heat_on(ticks), ticks.get(BathAct.AT_TOP)
    if heat_on is None:
        took[Stage.FILL] = max(bath.minutes[Stage.FILL], now - going.fill_start)
    else:
        took[Stage.FILL] = max(0, heat_on - going.fill_start)
        took[Stage.RAMP] = _ramp(bath, heat_on, top, going, now)
    if top is not None and going.checked_at is None:
        took[Stage.HOLD] = max(bath.minutes[Stage.HOLD], now - top)
    within = tuple(each for each in bath.touches if _fits(each, took))
    return replace(bath, minutes=bath.minutes | took, touches=within)


def _heat_on(ticks: Ticks) -> int | None:
    """Return when the heat came on: at the latest when the bath was at the top."""
    return ticks.get(BathAct.HEAT_ON, ticks.get(BathAct.AT_TOP))


def _fits(touch: Touch, took: Mapping[Stage, int]) -> bool:
    """Whether a look or an acid still lies in its stage: the top may come early."""
    end = took.get(touch.stage)
    return end is None or touch.at + touch.minutes <= end


def _ramp(
    bath: WantedBath, heat_on: int, top: int | None, going: Going, now: int
) -> int:
    if top is not None:
        return max(0, top - heat_on)
    planned = bath.minutes_by_place.get((going.pot, going.source))
    usual = bath.minutes.get(Stage.RAMP, 0) if planned is None else planned[1]
    is_over = going.checked_at is not None or going.rinse_start is not None
    return usual if is_over else max(usual, now - heat_on)


def _in_order(lines: Iterable[BathLine]) -> list[BathLine]:
    return sorted(lines, key=lambda line: (line.at, line.pk))
