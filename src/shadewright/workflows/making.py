"""A stock in the making, step by step: each step keeps what was typed.

The powder leaves the jar at the weighing, not at the end, for that is when it
does. Weighing again takes the first weighing back with a counter-line.
"""

from datetime import date
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from shadewright.core.quantities import require_mass
from shadewright.core.solutions.steps import making_steps
from shadewright.errors import ConflictError, MissingError
from shadewright.records import reads
from shadewright.records.models import JarLine, StockMaking
from shadewright.records.models.ledgers import JarAct
from shadewright.records.writes import keep_line
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import take_powder
from shadewright.workflows.makings import Making, label_percent, making
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.stock_spreads import (
    made_with,
    weighed_ml,
)
from shadewright.workflows.stocks import (
    bottle_up,
    plan_stock,
)


@transaction.atomic
def start_making(
    *,
    dye_id: int,
    jar_id: int | None,
    volume_ml: float,
    strength_percent: float,
    stamp: Stamp,
    scale_id: int | None = None,
    ware_id: int | None = None,
) -> Making:
    """Begin a stock; refused like its plan. A scale for ware means by weight."""
    reads.lock_shelf()
    begun = StockMaking.objects.filter(deed=stamp.deed).first()
    if begun is not None:
        return making(begun.pk)
    planned = plan_stock(
        dye_id=dye_id,
        jar_id=jar_id,
        volume_ml=volume_ml,
        strength_percent=strength_percent,
    )
    row = StockMaking.objects.create(
        deed=stamp.deed,
        dye_id=dye_id,
        jar_id=jar_id,
        wanted_percent=strength_percent,
        volume_ml=volume_ml,
        step=making_steps(planned.plan)[0].key,
        scale_id=scale_id,
        ware_id=ware_id,
        is_by_weight=made_with(scale_id, ware_id).is_by_weight,
        started_at=stamp.at,
        started_by_id=stamp.by,
    )
    return making(row.pk)


@transaction.atomic
def go_to_step(*, making_id: int, key: str) -> Making:
    """Turn to a step; not past one whose number is still wanted."""
    row = _open(making_id)
    keys = [step.key for step in making(making_id).steps]
    if key not in keys:
        raise ConflictError(why=f"There is no step “{key}”.")
    if row.powder_g is None and keys.index(key) > keys.index("weigh"):
        raise MissingError(
            name="The weight of the powder",
            advice="Write what the scale really showed.",
            argument="powder_g",
        )
    if row.final_ml is None and keys.index(key) > keys.index("make_up"):
        raise MissingError(
            name="The final volume",
            advice="Write the mark that the cold stock reached.",
            argument="final_ml",
        )
    row.step = key
    row.save(update_fields=["step"])
    return making(making_id)


@transaction.atomic
def choose_scale(*, making_id: int, tool_id: int | None) -> None:
    """Say what the powder is weighed on, or that nobody knows."""
    row = _open(making_id)
    row.scale_id = tool_id
    row.save(update_fields=["scale"])


@transaction.atomic
def choose_ware(*, making_id: int, tool_id: int | None) -> None:
    """Say at whose mark the stock is read, or that nobody knows."""
    row = _open(making_id)
    row.ware_id = tool_id
    row.save(update_fields=["ware"])


@transaction.atomic
def weigh_powder(*, making_id: int, powder_g: float, stamp: Stamp) -> Making:
    """Keep what the scale showed and take it from the jar; go on to the paste."""
    row = _open(making_id)
    require_mass(powder_g, name="Powder", argument="powder_g")
    if row.powder_g != powder_g:
        _put_back(row, stamp)
        _take_out(row, powder_g, stamp)
    row.powder_g = powder_g
    row.step = "paste"
    if row.filled_g is not None:
        row.final_ml = weighed_ml(filled_g=row.filled_g, powder_g=powder_g)
    row.save(update_fields=["powder_g", "final_ml", "step"])
    return making(making_id)


@transaction.atomic
def make_up(*, making_id: int, final_ml: float, water: str = "") -> Making:
    """Keep the volume that the cold stock was made up to; go on to the label."""
    row = _open(making_id)
    return _made_up(row, final_ml, None, water)


@transaction.atomic
def make_up_by_weight(*, making_id: int, filled_g: float, water: str = "") -> Making:
    """Keep what the finished stock weighs, without its vessel; go on to the label."""
    row = _open(making_id)
    final_ml = weighed_ml(filled_g=filled_g, powder_g=row.powder_g or 0.0)
    return _made_up(row, final_ml, filled_g, water)


def _made_up(
    row: StockMaking, final_ml: float, filled_g: float | None, water: str
) -> Making:
    label_percent(row.powder_g, final_ml, row)
    row.final_ml, row.filled_g = final_ml, filled_g
    row.water = water.strip()
    row.step = "label"
    row.save(update_fields=["final_ml", "filled_g", "water", "step"])
    return making(row.pk)


@transaction.atomic
def keep_particulars(
    *, making_id: int, place: str, discard_by: date | None, notes: str
) -> Making:
    """Keep what was typed for the label while the stock is not finished yet."""
    row = _open(making_id)
    row.place = place.strip()
    row.discard_by = discard_by
    row.notes = notes.strip()
    row.save(update_fields=["place", "discard_by", "notes"])
    return making(making_id)


@transaction.atomic
def finish_making(
    *,
    making_id: int,
    stamp: Stamp,
    place: str = "",
    discard_by: date | None = None,
    notes: str = "",
) -> ShelfBottle:
    """Put the bottle on the shelf with its true strength."""
    reads.lock_shelf()
    reads.lock_making(making_id)
    finished = reads.making_row(making_id).bottle
    if finished is not None:
        return shelf_bottle(finished.code)
    row = _open(making_id)
    powder_g, final_ml = row.powder_g, row.final_ml
    if powder_g is None or final_ml is None:
        raise ConflictError(
            why="The powder is not weighed or the volume not read yet.",
            advice="Finish the steps before.",
        )
    bottle = bottle_up(
        dye=row.dye,
        jar=row.jar,
        wanted_percent=row.wanted_percent,
        powder_g=powder_g,
        final_ml=final_ml,
        about=Particulars(
            made_on=timezone.localdate(stamp.at),
            water=row.water,
            place=place,
            discard_by=discard_by,
            notes=notes,
        ),
        stamp=_of_deed(stamp, row.deed),
        made_with=made_with(row.scale_id, row.ware_id, filled_g=row.filled_g),
    )
    row.bottle = reads.bottle_row(bottle.code)
    row.save(update_fields=["bottle"])
    return bottle


@transaction.atomic
def abandon_making(*, making_id: int, is_powder_kept: bool, stamp: Stamp) -> None:
    """Give a stock up; powder that never left the jar for good goes back."""
    row = _open(making_id)
    if is_powder_kept:
        _put_back(row, stamp)
    row.abandoned_at = stamp.at
    row.save(update_fields=["abandoned_at"])


def _open(making_id: int) -> StockMaking:
    reads.lock_making(making_id)
    row = reads.making_row(making_id)
    if row.bottle is not None:
        raise ConflictError(why="This stock is finished and stands on the shelf.")
    if row.abandoned_at is not None:
        raise ConflictError(why="This stock was given up.", advice="Begin a new one.")
    return row


def _take_out(row: StockMaking, powder_g: float, stamp: Stamp) -> None:
    if row.jar is not None:
        take_powder(
            row=reads.locked_jar(row.jar.pk),
            dye_id=row.dye_id,
            powder_g=powder_g,
            stamp=_of_deed(stamp, row.deed),
        )


def _put_back(row: StockMaking, stamp: Stamp) -> None:
    lines = reads.jar_lines_of(row.deed).filter(undone_by=None, undoes=None)
    for line in lines:
        counter = JarLine(jar=line.jar, act=JarAct.UNDO, undoes=line)
        keep_line(counter, _of_deed(stamp, row.deed))


def _of_deed(stamp: Stamp, deed: UUID) -> Stamp:
    return Stamp(by=stamp.by, at=stamp.at, deed=deed, written_at=stamp.written_at)
