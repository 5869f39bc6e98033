"""Mending and joining stocks: strengthen, weaken, dilute, merge."""

from collections.abc import Sequence

from django.db import transaction

from shadewright.core.quantities import (
    require_mass,
    require_strength,
    require_volume,
)
from shadewright.core.solutions.dilution import dilution
from shadewright.core.solutions.ledger import BottleAct
from shadewright.core.uncertainty import Value, scaled
from shadewright.errors import ConflictError, MissingError
from shadewright.records import reads
from shadewright.records.models import BottleLine, StockBottle
from shadewright.records.models.shelf import Evidence
from shadewright.records.shapes import line_spread, state_of
from shadewright.records.writes import keep_line
from shadewright.workflows.bottles import add_line, on_shelf
from shadewright.workflows.filling import (
    Filling,
    Particulars,
    bottle_of,
    fill_bottle,
)
from shadewright.workflows.jars import take_powder
from shadewright.workflows.readings import (
    deed_key,
    read_mass,
    read_volume,
    tool_said,
)
from shadewright.workflows.settled import refuse_settled
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.stock_spreads import MadeWith, thinned_spread
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.usual_tools import usual_tools


def add_water(
    *,
    code: str,
    volume_ml: float,
    stamp: Stamp,
    note: str = "",
    tool_id: int | None = None,
) -> ShelfBottle:
    """Weaken a stock, or give back what has evaporated."""
    require_volume(volume_ml, name="Water", argument="volume_ml")
    tool = tool_said(tool_id, usual=usual_tools().fill_tool)
    return add_line(
        code,
        BottleAct.WATER_ADDED,
        stamp,
        volume_ml=volume_ml,
        note=note,
        read=read_volume(tool, volume_ml, role="water", deed=deed_key(stamp)),
        tool=tool,
    )


@transaction.atomic
def add_powder(
    *,
    code: str,
    powder_g: float,
    jar_id: int | None,
    stamp: Stamp,
    note: str = "",
    tool_id: int | None = None,
) -> ShelfBottle:
    """Strengthen a stock with powder; its own volume is left out of the sum."""
    require_mass(powder_g, name="Powder", argument="powder_g")
    bottle = on_shelf(code)
    if is_written(stamp.deed):
        return shelf_bottle(code)
    factor = 100.0
    jar = None if jar_id is None else reads.locked_jar(jar_id)
    if jar is not None:
        factor = jar.strength_percent
        take_powder(row=jar, dye_id=bottle.dye_id, powder_g=powder_g, stamp=stamp)
    scale = tool_said(tool_id, usual=usual_tools().powder_scale)
    read = read_mass(scale, powder_g, role="added powder", deed=deed_key(stamp))
    line = BottleLine(
        bottle=bottle,
        act=BottleAct.POWDER_ADDED.value,
        powder_g=powder_g,
        dye_g=powder_g * factor / 100,
        jar=jar,
        note=note.strip(),
        tool_id=None if scale is None else scale.id,
        spread=line_spread(amount=scaled(read, by=factor / 100).terms),
    )
    keep_line(line, stamp)
    return shelf_bottle(code)


@transaction.atomic
def add_stock(
    *,
    code: str,
    from_code: str,
    volume_ml: float,
    stamp: Stamp,
    tool_id: int | None = None,
) -> ShelfBottle:
    """Pour some of one bottle into another of the same dye."""
    require_volume(volume_ml, name="What is poured over", argument="volume_ml")
    reads.lock_bottles([code, from_code])
    if not is_written(stamp.deed):
        source, into = _pair(from_code, code)
        tool = tool_said(tool_id, usual=usual_stock_tool())
        read = read_volume(tool, volume_ml, role="stock", deed=deed_key(stamp))
        _pour_over(source, into, read, stamp, tool)
    return shelf_bottle(code)


@transaction.atomic
def merge(*, code: str, from_codes: Sequence[str], stamp: Stamp) -> ShelfBottle:
    """Pour all that is left of some bottles into another; theirs are then empty."""
    if not from_codes:
        raise MissingError(
            name="The bottle to pour over",
            advice="Choose one or more bottles of the same dye.",
            argument="from_codes",
        )
    reads.lock_bottles([code, *from_codes])
    if is_written(stamp.deed):
        return shelf_bottle(code)
    for from_code in sorted(set(from_codes)):
        source, into = _pair(from_code, code)
        _pour_over(source, into, state_of(source).volume, stamp)
        gone = BottleLine(
            bottle=source, act=BottleAct.POURED.value, note=f"merged into {code}"
        )
        keep_line(gone, stamp)
    return shelf_bottle(code)


@transaction.atomic
def dilute(
    *,
    code: str,
    want_percent: float,
    volume_ml: float,
    stamp: Stamp,
    about: Particulars,
    tool_id: int | None = None,
    ware_id: int | None = None,
) -> ShelfBottle:
    """Fill a new, weaker bottle from a stronger one and water."""
    earlier = bottle_of(stamp)
    if earlier is not None:
        return shelf_bottle(earlier)
    require_strength(want_percent, argument="want_percent")
    source = on_shelf(code)
    refuse_settled(source)
    state = state_of(source)
    drawn = dilution(
        have_percent=state.strength_percent,
        want_percent=want_percent,
        volume_ml=volume_ml,
    )
    measure = tool_said(tool_id, usual=usual_stock_tool())
    ware = tool_said(ware_id, usual=usual_tools().fill_tool)
    row = fill_bottle(
        Filling(
            dye=source.dye,
            jar=source.jar,
            volume_ml=volume_ml,
            strength_percent=want_percent,
            evidence=Evidence.MIXED,
            is_guess=state.is_guess,
            wanted_percent=want_percent,
            other=source,
            note=f"{drawn.stock_ml:.4g} ml of {code} made up with water",
            spread=thinned_spread(
                stock=state,
                stock_ml=drawn.stock_ml,
                volume_ml=volume_ml,
                measure=measure,
                ware=ware,
                deed=deed_key(stamp),
            ),
            made_with=MadeWith(ware=ware),
        ),
        about,
        stamp,
    )
    given = BottleLine(
        bottle=source,
        act=BottleAct.GIVEN.value,
        volume_ml=drawn.stock_ml,
        dye_g=drawn.stock_ml * state.strength_percent / 100,
        other=row,
        tool_id=None if measure is None else measure.id,
    )
    keep_line(given, stamp)
    return shelf_bottle(row.code)


def usual_stock_tool() -> ToolNow | None:
    """Return what stock is usually measured with: as doses are, else as fills."""
    usual = usual_tools()
    return usual.dose_scale if usual.doses_by_weight else usual.dose_tool


def _pour_over(
    source: StockBottle,
    into: StockBottle,
    read: Value,
    stamp: Stamp,
    tool: ToolNow | None = None,
) -> None:
    refuse_settled(source)
    state, volume_ml = state_of(source), read.value
    tool_id = None if tool is None else tool.id
    if state.volume_ml <= 0:
        raise ConflictError(
            why=f"Bottle {source.code} is empty.",
            advice="Pour it away instead.",
            argument="from_codes",
        )
    out = BottleLine(
        bottle=source,
        act=BottleAct.GIVEN.value,
        volume_ml=volume_ml,
        dye_g=volume_ml * state.strength_percent / 100,
        other=into,
        tool_id=tool_id,
    )
    keep_line(out, stamp)
    joined = BottleLine(
        bottle=into,
        act=BottleAct.STOCK_ADDED.value,
        volume_ml=volume_ml,
        strength_percent=state.strength_percent,
        is_guess=state.is_guess,
        other=source,
        tool_id=tool_id,
        spread=line_spread(strength=state.terms, amount=read.terms, lacks=state.lacks),
    )
    keep_line(joined, stamp)


def _pair(from_code: str, code: str) -> tuple[StockBottle, StockBottle]:
    """Return a bottle and the one that it is poured into, both locked before."""
    if code == from_code:
        raise ConflictError(
            why="A bottle cannot be poured into itself.", argument="from_codes"
        )
    source, into = on_shelf(from_code), on_shelf(code)
    if into.dye_id != source.dye_id:
        raise ConflictError(
            why=f"Bottle {from_code} holds {source.dye.name}, not {into.dye.name}.",
            advice="Only bottles of one dye are joined: a mix has no strength.",
            argument="from_codes",
        )
    return source, into
