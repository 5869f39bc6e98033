"""A stock in the making, step by step: each step keeps what was typed.

The powder leaves the jar at the weighing, not at the end, for that is when it
does. Weighing again takes the first weighing back with a counter-line.
"""

from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from shadewright.core.quantities import require_mass
from shadewright.core.solutions.steps import MakingStep, making_steps
from shadewright.errors import ConflictError, MissingError
from shadewright.records import reads
from shadewright.records.models import JarLine, StockMaking
from shadewright.records.models.ledgers import JarAct
from shadewright.records.writes import keep_jar_line
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import take_powder
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.stocks import (
    PlannedStock,
    begun_stock,
    bottle_up,
    label_strength_percent,
    plan_stock,
)


@dataclass(frozen=True, kw_only=True)
class Making:
    """A stock in the making: the plan, where it is, and what was read so far."""

    id: int
    stock: PlannedStock
    steps: tuple[MakingStep, ...]
    step_number: int
    powder_g: float | None
    final_ml: float | None
    label_percent: float | None
    water: str
    place: str
    discard_by: date | None
    notes: str
    started_at: datetime
    started_by: str
    bottle_code: str
    is_abandoned: bool

    @property
    def step(self) -> MakingStep:
        """The step that waits."""
        return self.steps[self.step_number - 1]


def makings() -> tuple[Making, ...]:
    """Return the stocks in the making, newest first."""
    return tuple(_shape(row) for row in reads.making_rows())


def making(making_id: int) -> Making:
    """Return one stock in the making."""
    return _shape(reads.making_row(making_id))


@transaction.atomic
def start_making(
    *,
    dye_id: int,
    jar_id: int | None,
    volume_ml: float,
    strength_percent: float,
    stamp: Stamp,
) -> Making:
    """Begin a stock; refused like its plan."""
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
        started_at=stamp.at,
        started_by_id=stamp.by,
    )
    return making(row.pk)


@transaction.atomic
def go_to_step(*, making_id: int, key: str) -> Making:
    """Turn to a step; not past one whose number is still wanted."""
    row = _open(making_id)
    keys = [step.key for step in _shape(row).steps]
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
def weigh_powder(*, making_id: int, powder_g: float, stamp: Stamp) -> Making:
    """Keep what the scale showed and take it from the jar; go on to the paste."""
    row = _open(making_id)
    require_mass(powder_g, name="Powder", argument="powder_g")
    if row.powder_g != powder_g:
        _put_back(row, stamp)
        _take_out(row, powder_g, stamp)
    row.powder_g = powder_g
    row.step = "paste"
    row.save(update_fields=["powder_g", "step"])
    return making(making_id)


@transaction.atomic
def make_up(*, making_id: int, final_ml: float, water: str = "") -> Making:
    """Keep the volume that the cold stock was made up to; go on to the label."""
    row = _open(making_id)
    _label_percent(row.powder_g, final_ml, row)
    row.final_ml = final_ml
    row.water = water.strip()
    row.step = "label"
    row.save(update_fields=["final_ml", "water", "step"])
    return making(making_id)


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
        keep_jar_line(counter, _of_deed(stamp, row.deed))


def _of_deed(stamp: Stamp, deed: UUID) -> Stamp:
    return Stamp(by=stamp.by, at=stamp.at, deed=deed, written_at=stamp.written_at)


def _label_percent(
    powder_g: float | None, final_ml: float | None, row: StockMaking
) -> float | None:
    if powder_g is None or final_ml is None:
        return None
    return label_strength_percent(
        powder_g=powder_g,
        final_ml=final_ml,
        powder_strength_percent=100.0 if row.jar is None else row.jar.strength_percent,
    )


def _shape(row: StockMaking) -> Making:
    planned = begun_stock(
        dye=row.dye,
        jar=row.jar,
        volume_ml=row.volume_ml,
        strength_percent=row.wanted_percent,
    )
    steps = making_steps(planned.plan)
    keys = [step.key for step in steps]
    return Making(
        id=row.pk,
        stock=planned,
        steps=steps,
        step_number=keys.index(row.step) + 1,
        powder_g=row.powder_g,
        final_ml=row.final_ml,
        label_percent=_label_percent(row.powder_g, row.final_ml or row.volume_ml, row),
        water=row.water,
        place=row.place,
        discard_by=row.discard_by,
        notes=row.notes,
        started_at=row.started_at,
        started_by="" if row.started_by is None else row.started_by.name,
        bottle_code="" if row.bottle is None else row.bottle.code,
        is_abandoned=row.abandoned_at is not None,
    )
