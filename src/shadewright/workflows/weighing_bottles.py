"""Weighing a bottle: what is missing since it was last weighed is water."""

from dataclasses import dataclass
from datetime import date

from django.db import transaction
from django.utils import timezone

from shadewright.core.quantities import require_mass
from shadewright.core.solutions.keeping import Evaporated, evaporated, weight_lost_g
from shadewright.core.solutions.ledger import BottleAct
from shadewright.records import reads
from shadewright.records.models import BottleLine, StockBottle
from shadewright.records.shapes import line_spread, standing_lines, state_of
from shadewright.records.writes import keep_line
from shadewright.workflows.bottles import on_shelf
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.tools import tool_now

KITCHEN_STEP_G = 1.0
"""Step of a scale that nobody named: the usual kitchen scale's."""

_STAY = {
    BottleAct.WEIGHED,
    BottleAct.STIRRED,
    BottleAct.REWARMED,
    BottleAct.CLEAR,
    BottleAct.SETTLED,
    BottleAct.TESTED,
}


@dataclass(frozen=True, kw_only=True)
class Weighed:
    """A bottle's gross weight, and the day it was read."""

    gross_g: float
    on: date


def last_weighing(code: str) -> Weighed | None:
    """Return the weight that a loss is counted from; None once stock has moved."""
    line = _baseline(reads.bottle_row(code))
    if line is None or line.gross_g is None:
        return None
    return Weighed(gross_g=line.gross_g, on=timezone.localdate(line.at))


def loss_since(*, code: str, gross_g: float, scale_id: int | None) -> Evaporated | None:
    """Return what has gone since the last weighing; None where there was none."""
    return _loss(reads.bottle_row(code), gross_g, scale_id, key=code)


@transaction.atomic
def weigh_bottle(
    *, code: str, gross_g: float, scale_id: int | None, stamp: Stamp, note: str = ""
) -> ShelfBottle:
    """Write a bottle's weight down, and the water that it has lost since the last."""
    require_mass(gross_g, name="The bottle’s weight", argument="gross_g")
    bottle = on_shelf(code)
    if is_written(stamp.deed):
        return shelf_bottle(code)
    loss = _loss(bottle, gross_g, scale_id, key=f"{code} {stamp.deed}")
    line = BottleLine(
        bottle=bottle,
        act=BottleAct.WEIGHED.value,
        gross_g=gross_g,
        tool_id=scale_id,
        note=note.strip(),
    )
    if loss is not None and loss.is_seen:
        line.act = BottleAct.EVAPORATED.value
        line.volume_ml = loss.volume_ml.value
        line.spread = line_spread(amount=loss.volume_ml.terms)
    keep_line(line, stamp)
    return shelf_bottle(code)


def _loss(
    row: StockBottle, gross_g: float, scale_id: int | None, *, key: str
) -> Evaporated | None:
    before = _baseline(row)
    if before is None or before.gross_g is None:
        return None
    step_g = _step_g(scale_id)
    state = state_of(row)
    return evaporated(
        lost_g=weight_lost_g(
            before_g=before.gross_g,
            now_g=gross_g,
            step_g=step_g,
            source=f"weighing bottle {key}",
        ),
        volume_ml=state.volume,
        strength_percent=state.strength,
        step_g=step_g,
    )


def _step_g(scale_id: int | None) -> float:
    balance = None if scale_id is None else tool_now(scale_id).balance
    return KITCHEN_STEP_G if balance is None else balance.step_g


def _baseline(row: StockBottle) -> BottleLine | None:
    """Return the first weighing since stock, water or dye last moved.

    Not the last one: small losses would never add up to what a scale can show.
    """
    found: BottleLine | None = None
    for line in standing_lines(row.lines.all()):
        if line.act not in _STAY:
            found = line if line.gross_g is not None else None
        elif found is None and line.gross_g is not None:
            found = line
    return found
