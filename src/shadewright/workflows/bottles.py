"""What happens to a bottle on the shelf: entered, drawn, looked at, tested."""

from datetime import date
from enum import StrEnum

from django.db import transaction

from shadewright.core.quantities import (
    MOST_VOLUME_ML,
    require_between,
    require_strength,
    require_volume,
)
from shadewright.core.solutions.ledger import BottleAct
from shadewright.core.solutions.sureness import labelled_strength
from shadewright.core.uncertainty import Value, exact
from shadewright.errors import ConflictError
from shadewright.records import reads
from shadewright.records.models import BottleLine, StockBottle
from shadewright.records.models.shelf import Evidence
from shadewright.records.shapes import line_spread, state_of
from shadewright.records.writes import keep_line
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.filling import (
    Filling,
    Particulars,
    bottle_of,
    discard_day,
    fill_bottle,
    last_drops_ml,
)
from shadewright.workflows.readings import deed_key, read_volume, tool_said
from shadewright.workflows.settled import refuse_settled, refuse_unwarmed
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.stock_spreads import StockSpread
from shadewright.workflows.tools import ToolNow


class Look(StrEnum):
    """What a look at a bottle can find or do."""

    CLEAR = "clear"
    SETTLED = "settled"
    STIRRED = "stirred"
    REWARMED = "rewarmed"


_REFUSED = {BottleAct.DRAWN: refuse_settled, BottleAct.CLEAR: refuse_unwarmed}
_LOOKS = {
    Look.CLEAR: BottleAct.CLEAR,
    Look.SETTLED: BottleAct.SETTLED,
    Look.STIRRED: BottleAct.STIRRED,
    Look.REWARMED: BottleAct.REWARMED,
}


@transaction.atomic
def enter_bottle(
    *,
    dye_id: int,
    strength_percent: float,
    volume_ml: float,
    stamp: Stamp,
    about: Particulars,
) -> ShelfBottle:
    """Put a bottle that stands on the shelf already into the records, as it is."""
    earlier = bottle_of(stamp)
    if earlier is not None:
        return shelf_bottle(earlier)
    filling = Filling(
        dye=reads.dye_row(dye_id),
        volume_ml=require_volume(volume_ml, name="Volume", argument="volume_ml"),
        strength_percent=require_strength(strength_percent),
        evidence=Evidence.LABELLED,
        is_guess=True,
        note="entered as it stood on the shelf",
        spread=_labelled(strength_percent, volume_ml, stamp),
    )
    return shelf_bottle(fill_bottle(filling, about, stamp).code)


def _labelled(strength_percent: float, volume_ml: float, stamp: Stamp) -> StockSpread:
    guess = labelled_strength(strength_percent=strength_percent, key=deed_key(stamp))
    return StockSpread(strength=guess, volume=exact(volume_ml), lacks=())


def draw(*, code: str, volume_ml: float, stamp: Stamp, note: str = "") -> ShelfBottle:
    """Take stock out of a bottle."""
    require_volume(volume_ml, name="What is drawn", argument="volume_ml")
    return add_line(code, BottleAct.DRAWN, stamp, volume_ml=volume_ml, note=note)


def look_at(*, code: str, look: Look, stamp: Stamp, note: str = "") -> ShelfBottle:
    """Write down a look at a bottle, a stir or a re-warming."""
    return add_line(code, _LOOKS[look], stamp, note=note)


def record_strength(
    *, code: str, strength_percent: float, stamp: Stamp, note: str = ""
) -> ShelfBottle:
    """Write down a strength that was tested beside fresh stock."""
    require_strength(strength_percent)
    return add_line(
        code, BottleAct.TESTED, stamp, strength_percent=strength_percent, note=note
    )


def read_level(
    *,
    code: str,
    volume_ml: float,
    is_evaporated: bool,
    stamp: Stamp,
    note: str = "",
    tool_id: int | None = None,
) -> ShelfBottle:
    """Write down the level that was read.

    Evaporated: water is gone and the stock is stronger. Otherwise the ledger
    was simply wrong about the volume and the strength stays.
    """
    require_between(
        volume_ml,
        least=0.0,
        most=MOST_VOLUME_ML,
        unit="ml",
        name="The level",
        argument="volume_ml",
    )
    act = BottleAct.EVAPORATED if is_evaporated else BottleAct.COUNTED
    tool = tool_said(tool_id, usual=None)
    read = read_volume(tool, volume_ml, role="level", deed=deed_key(stamp))
    return add_line(
        code, act, stamp, volume_ml=volume_ml, note=note, read=read, tool=tool
    )


@transaction.atomic
def change_particulars(
    *,
    code: str,
    place: str,
    water: str,
    discard_by: date | None,
    dead_volume_ml: float,
    notes: str,
    stamp: Stamp,
) -> ShelfBottle:
    """Write anew what stands beside a bottle's strength; keep what stood before."""
    bottle = on_shelf(code)
    bottle.place = place.strip()
    bottle.water = water.strip()
    bottle.discard_by = discard_day(discard_by, made_on=bottle.made_on)
    bottle.dead_volume_ml = last_drops_ml(dead_volume_ml)
    bottle.notes = notes.strip()
    keep_item(bottle, stamp)
    return shelf_bottle(code)


def pour_away(*, code: str, stamp: Stamp, note: str = "") -> ShelfBottle:
    """Empty a bottle for good; its code is never used again."""
    return add_line(code, BottleAct.POURED, stamp, note=note)


@transaction.atomic
def add_line(
    code: str,
    act: BottleAct,
    stamp: Stamp,
    *,
    volume_ml: float = 0.0,
    strength_percent: float = 0.0,
    note: str = "",
    read: Value | None = None,
    tool: ToolNow | None = None,
) -> ShelfBottle:
    """Add one line to one bottle's ledger, once; ``read`` is what was measured."""
    bottle = on_shelf(code)
    if not is_written(stamp.deed):
        _REFUSED.get(act, lambda _: None)(bottle)
        line = BottleLine(
            bottle=bottle,
            act=act.value,
            volume_ml=volume_ml,
            strength_percent=strength_percent,
            note=note.strip(),
            tool_id=None if tool is None else tool.id,
            spread=[] if read is None else line_spread(amount=read.terms),
        )
        keep_line(line, stamp)
    return shelf_bottle(code)


def on_shelf(code: str) -> StockBottle:
    """Return a bottle that is still there, its ledger locked for this transaction."""
    bottle = reads.locked_bottle(code)
    if not state_of(bottle).is_filled:
        raise ConflictError(why=f"Bottle {code} was taken back the day it was entered.")
    return bottle
