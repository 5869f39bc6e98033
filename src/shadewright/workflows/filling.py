"""Putting a new bottle on the shelf: what every way of filling one shares."""

from dataclasses import dataclass
from datetime import date
from random import Random

from shadewright.core.quantities import MOST_VOLUME_ML, require_between
from shadewright.core.solutions.codes import unused_code
from shadewright.core.solutions.ledger import BottleAct
from shadewright.errors import OutOfRangeError
from shadewright.records import reads
from shadewright.records.models import (
    BottleLine,
    Dye,
    PowderJar,
    StockBottle,
)
from shadewright.records.models.shelf import Evidence
from shadewright.records.shapes import SpreadRow, line_spread, terms_to_json
from shadewright.records.writes import Stamp, keep_line
from shadewright.workflows.stamps import past_date
from shadewright.workflows.stock_spreads import METHOD as SPREAD_METHOD
from shadewright.workflows.stock_spreads import NOTHING_SAID, MadeWith, StockSpread
from shadewright.workflows.tools import ToolNow

METHOD = "true strength, version 1"
"""Name and version of the sum that a bottle's strength comes from."""


@dataclass(frozen=True, kw_only=True)
class Particulars:
    """What is written on a bottle beside its strength; all of it optional."""

    made_on: date | None = None
    is_date_about: bool = False
    water: str = ""
    place: str = ""
    discard_by: date | None = None
    dead_volume_ml: float | None = None
    notes: str = ""


@dataclass(frozen=True, kw_only=True)
class Filling:
    """What went into a new bottle and how strong that is."""

    dye: Dye
    volume_ml: float
    strength_percent: float
    evidence: Evidence
    jar: PowderJar | None = None
    wanted_percent: float | None = None
    powder_g: float | None = None
    powder_strength_percent: float | None = None
    is_guess: bool = False
    note: str = ""
    other: StockBottle | None = None
    spread: StockSpread | None = None
    made_with: MadeWith = NOTHING_SAID


def fill_bottle(filling: Filling, about: Particulars, stamp: Stamp) -> StockBottle:
    """Add a bottle with its first line; inside the transaction of a verb."""
    row = _new_row(filling, about, stamp)
    row.save()
    line = BottleLine(
        bottle=row,
        act=BottleAct.FILLED.value,
        volume_ml=filling.volume_ml,
        strength_percent=filling.strength_percent,
        powder_g=filling.powder_g or 0.0,
        is_guess=filling.is_guess,
        jar=filling.jar,
        other=filling.other,
        note=filling.note,
        tool_id=_id(filling.made_with.ware),
        spread=_line_spread(filling.spread),
    )
    keep_line(line, stamp)
    return row


def bottle_of(stamp: Stamp) -> str | None:
    """Return the code of the bottle that this deed has filled already, if any.

    Nobody else can fill one until this transaction ends, so that a deed sent
    twice at once fills one bottle.
    """
    reads.lock_shelf()
    lines = reads.bottle_lines_of(stamp.deed).filter(act=BottleAct.FILLED.value)
    line = lines.first()
    return None if line is None else line.bottle.code


def _new_row(filling: Filling, about: Particulars, stamp: Stamp) -> StockBottle:
    studio = reads.studio_row()
    usual_ml = 0.0 if studio is None else studio.dead_volume_ml
    return StockBottle(
        code=_new_code(stamp),
        dye=filling.dye,
        jar=filling.jar,
        wanted_percent=filling.wanted_percent,
        powder_g=filling.powder_g,
        powder_strength_percent=filling.powder_strength_percent,
        final_ml=filling.volume_ml,
        strength_percent=filling.strength_percent,
        evidence=filling.evidence,
        made_on=past_date(about.made_on, name="The day made", argument="made_on"),
        is_date_about=about.is_date_about,
        made_by_id=stamp.by,
        water=about.water.strip(),
        place=about.place.strip(),
        discard_by=discard_day(about.discard_by, made_on=about.made_on),
        dead_volume_ml=last_drops_ml(
            usual_ml if about.dead_volume_ml is None else about.dead_volume_ml
        ),
        notes=about.notes.strip(),
        method=METHOD,
        created_at=stamp.written_at,
        scale_id=_id(filling.made_with.scale),
        ware_id=_id(filling.made_with.ware),
        is_by_weight=filling.made_with.is_by_weight,
        spread=terms_to_json(filling.spread.strength.terms) if filling.spread else [],
        spread_method=SPREAD_METHOD if filling.spread else "",
    )


def _line_spread(spread: StockSpread | None) -> list[SpreadRow]:
    if spread is None:
        return []
    return line_spread(
        strength=spread.strength.terms, amount=spread.volume.terms, lacks=spread.lacks
    )


def _id(tool: ToolNow | None) -> int | None:
    return None if tool is None else tool.id


def discard_day(value: date | None, *, made_on: date | None) -> date | None:
    """Return the day to discard by, if it is not before the day made."""
    if value and made_on and value < made_on:
        raise OutOfRangeError(
            name="The discard-by day",
            given=f"{value.day} {value:%B %Y}",
            allowed="the day made or later",
            argument="discard_by",
        )
    return value


def last_drops_ml(value: float) -> float:
    """Return what can never be drawn from a bottle, if it can be so much."""
    return require_between(
        value,
        least=0.0,
        most=MOST_VOLUME_ML,
        unit="ml",
        name="The last drops",
        argument="dead_volume_ml",
    )


def _new_code(stamp: Stamp) -> str:
    # The code follows from the deed's own random key: nothing else to keep.
    taken = frozenset(StockBottle.objects.values_list("code", flat=True))
    numbers = Random(stamp.deed.int)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    return unused_code(taken=taken, numbers=numbers)
