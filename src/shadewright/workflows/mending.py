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
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import reads
from shadewright.records.models import BottleLine, StockBottle
from shadewright.records.models.shelf import Evidence
from shadewright.records.shapes import state_of
from shadewright.records.writes import keep_bottle_line
from shadewright.workflows.bottles import add_line, on_shelf
from shadewright.workflows.filling import (
    Filling,
    Particulars,
    bottle_of,
    fill_bottle,
)
from shadewright.workflows.jars import take_powder
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp, is_written


def add_water(
    *, code: str, volume_ml: float, stamp: Stamp, note: str = ""
) -> ShelfBottle:
    """Weaken a stock, or give back what has evaporated."""
    require_volume(volume_ml, name="Water", argument="volume_ml")
    return add_line(code, BottleAct.WATER_ADDED, stamp, volume_ml=volume_ml, note=note)


@transaction.atomic
def add_powder(
    *, code: str, powder_g: float, jar_id: int | None, stamp: Stamp, note: str = ""
) -> ShelfBottle:
    """Strengthen a stock with powder; its own volume is left out of the sum."""
    require_mass(powder_g, name="Powder", argument="powder_g")
    bottle = on_shelf(code)
    if is_written(stamp.deed):
        return shelf_bottle(code)
    if state_of(bottle).volume_ml <= 0:
        raise ConflictError(
            why=f"Bottle {code} is empty, so powder has no stock to join."
        )
    factor = 100.0
    jar = None if jar_id is None else reads.locked_jar(jar_id)
    if jar is not None:
        factor = jar.strength_percent
        take_powder(row=jar, dye_id=bottle.dye_id, powder_g=powder_g, stamp=stamp)
    line = BottleLine(
        bottle=bottle,
        act=BottleAct.POWDER_ADDED.value,
        powder_g=powder_g,
        dye_g=powder_g * factor / 100,
        jar=jar,
        note=note.strip(),
    )
    keep_bottle_line(line, stamp)
    _check_strength(bottle)
    return shelf_bottle(code)


@transaction.atomic
def add_stock(
    *, code: str, from_code: str, volume_ml: float, stamp: Stamp
) -> ShelfBottle:
    """Pour some of one bottle into another of the same dye."""
    require_volume(volume_ml, name="What is poured over", argument="volume_ml")
    into, source = _locked_pair(code, from_code)
    if not is_written(stamp.deed):
        _pour_over(source, into, volume_ml, stamp)
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
    if is_written(stamp.deed):
        return shelf_bottle(code)
    for from_code in sorted(set(from_codes)):
        into, source = _locked_pair(code, from_code)
        _pour_over(source, into, state_of(source).volume_ml, stamp)
        gone = BottleLine(
            bottle=source, act=BottleAct.POURED.value, note=f"merged into {code}"
        )
        keep_bottle_line(gone, stamp)
    return shelf_bottle(code)


@transaction.atomic
def dilute(
    *,
    code: str,
    want_percent: float,
    volume_ml: float,
    stamp: Stamp,
    about: Particulars,
) -> ShelfBottle:
    """Fill a new, weaker bottle from a stronger one and water."""
    earlier = bottle_of(stamp)
    if earlier is not None:
        return shelf_bottle(earlier)
    require_strength(want_percent, argument="want_percent")
    source = on_shelf(code)
    state = state_of(source)
    drawn = dilution(
        have_percent=state.strength_percent,
        want_percent=want_percent,
        volume_ml=volume_ml,
    )
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
        ),
        about,
        stamp,
    )
    given = BottleLine(
        bottle=source,
        act=BottleAct.GIVEN.value,
        volume_ml=drawn.stock_ml,
        other=row,
    )
    keep_bottle_line(given, stamp)
    return shelf_bottle(row.code)


def _pour_over(
    source: StockBottle, into: StockBottle, volume_ml: float, stamp: Stamp
) -> None:
    state = state_of(source)
    if state.volume_ml <= 0:
        raise ConflictError(
            why=f"Bottle {source.code} is empty.",
            advice="Pour it away instead.",
            argument="from_codes",
        )
    out = BottleLine(
        bottle=source, act=BottleAct.GIVEN.value, volume_ml=volume_ml, other=into
    )
    keep_bottle_line(out, stamp)
    joined = BottleLine(
        bottle=into,
        act=BottleAct.STOCK_ADDED.value,
        volume_ml=volume_ml,
        strength_percent=state.strength_percent,
        is_guess=state.is_guess,
        other=source,
    )
    keep_bottle_line(joined, stamp)


def _locked_pair(code: str, from_code: str) -> tuple[StockBottle, StockBottle]:
    if code == from_code:
        raise ConflictError(
            why="A bottle cannot be poured into itself.", argument="from_codes"
        )
    rows = {each: on_shelf(each) for each in sorted((code, from_code))}
    into, source = rows[code], rows[from_code]
    if into.dye_id != source.dye_id:
        raise ConflictError(
            why=f"Bottle {from_code} holds {source.dye.name}, not {into.dye.name}.",
            advice="Only bottles of one dye are joined: a mix has no strength.",
            argument="from_codes",
        )
    return into, source


def _check_strength(bottle: StockBottle) -> None:
    strength = state_of(reads.bottle_row(bottle.code)).strength_percent
    if strength > 50:
        raise OutOfRangeError(
            name="The strength after adding",
            given=f"{strength:.3g} %",
            allowed="at most 50 %",
            advice="Look at the grams again.",
            argument="powder_g",
        )
