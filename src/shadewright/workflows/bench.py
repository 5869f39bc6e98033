"""At the pot: each tap is a line in the bath's ledger, and a dose one in the bottle's.

What was poured was poured: a tap is never refused because the records thought
otherwise. Where a bottle gave more than its ledger held, the ledger was wrong,
and a line says so. The same tap sent twice is written once; two different taps
on one step both stand, and the page shows that the step was ticked twice.
"""

from dataclasses import dataclass
from math import isfinite

from django.db import transaction

from shadewright.core.solutions.ledger import BottleAct
from shadewright.errors import (
    MissingError,
    NotFoundError,
    OutOfRangeError,
    StudioError,
)
from shadewright.records import reads, recipe_reads
from shadewright.records.models import Bath, BathLine, BottleLine, StockBottle
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import state_of
from shadewright.records.writes import keep_bath_line, keep_bottle_line
from shadewright.workflows.bath_pages import BathNow, bath_now
from shadewright.workflows.rounds import round_of
from shadewright.workflows.stamps import Stamp

_MOST = 1_000_000.0


@dataclass(frozen=True, kw_only=True)
class Tap:
    """What was tapped at the pot; the step's key is that of the round."""

    bath: str
    act: BathAct
    step: str = ""
    value: float | None = None
    unit: str = ""
    bottle: str = ""
    note: str = ""
    device: str = ""


@transaction.atomic
def tap(what: Tap, *, stamp: Stamp) -> BathNow:
    """Write a tap down, once, and return the bath as it then stands."""
    bath = recipe_reads.locked_bath(what.bath)
    if not recipe_reads.bath_lines_of(stamp.deed).exists():
        _check(what)
        drawn = _drawn(bath, what, stamp) if what.act == BathAct.DOSED else None
        line = BathLine(
            bath=bath,
            act=what.act,
            step=what.step,
            value=what.value,
            unit=what.unit,
            bottle=None if drawn is None else drawn.bottle,
            drawn=drawn,
            note=what.note.strip()[:300],
            device=what.device.strip()[:40],
        )
        keep_bath_line(line, stamp)
    return bath_now(what.bath)


def confirm_bottle(*, bath: str, step: str, code: str) -> None:
    """Say no to a bottle that is not on the card, empty, or marked settled."""
    wanted = _wanted_code(recipe_reads.bath_row(bath), step)
    bottle = reads.bottle_row(code)
    state = state_of(bottle)
    if code != wanted:
        raise OutOfRangeError(
            name="The bottle for this dose",
            given=f"{code} ({bottle.dye.name})",
            allowed=f"{wanted}, as on the card",
            argument="code",
        )
    if state.is_poured or state.volume_ml <= bottle.dead_volume_ml:
        raise OutOfRangeError(
            name=f"Bottle {code}",
            given="an empty one by its ledger",
            allowed="one with stock in it",
            advice="Take another bottle, or read its level first.",
            argument="code",
        )
    if state.is_settled:
        raise OutOfRangeError(
            name=f"Bottle {code}",
            given="one that has settled",
            allowed="clear",
            advice="Re-warm, stir, cool and check it, or take another bottle.",
            argument="code",
        )


def _wanted_code(bath: Bath, step: str) -> str:
    steps = {each.key: each.code for each in round_of(bath)}
    code = steps.get(step, "")
    if not code:
        raise NotFoundError(kind="dose from a bottle", key=step, argument="step")
    return code


def _check(what: Tap) -> None:
    if what.act == BathAct.DOSED and what.value is None:
        raise MissingError(
            name="The amount", advice="Write what went in.", argument="value"
        )
    if what.value is not None and not (
        isfinite(what.value) and abs(what.value) < _MOST
    ):
        raise OutOfRangeError(
            name="The amount",
            given=f"{what.value:g}",
            allowed="a number that a pot can hold",
            argument="value",
        )
    if what.act == BathAct.DOSED and not (what.value or 0) > 0:
        raise OutOfRangeError(
            name="The amount",
            given=f"{what.value:g} {what.unit}",
            allowed="above 0",
            advice="Where nothing went in, mark the dose as left out.",
            argument="value",
        )


def _drawn(bath: Bath, what: Tap, stamp: Stamp) -> BottleLine | None:
    """Draw a dose from its bottle; None for dry dye or a bottle that is gone."""
    if not what.bottle or what.unit != "ml" or what.value is None:
        return None
    bottle = reads.locked_bottle(what.bottle)
    try:
        _raise_level(bottle, what.value, stamp)
        return keep_bottle_line(
            BottleLine(
                bottle=bottle,
                act=BottleAct.DRAWN.value,
                volume_ml=what.value,
                note=f"bath {bath.number}",
            ),
            stamp,
        )
    except StudioError:
        return None


def _raise_level(bottle: StockBottle, volume_ml: float, stamp: Stamp) -> None:
    left_ml = state_of(bottle).volume_ml
    if volume_ml > left_ml:
        more = BottleLine(
            bottle=bottle,
            act=BottleAct.COUNTED.value,
            volume_ml=volume_ml,
            note=f"gave {volume_ml - left_ml:.3g} ml more than the ledger held",
        )
        keep_bottle_line(more, stamp)
