"""A bath that is planned: give it up, plan it anew, take another bottle."""

from django.db import transaction

from shadewright.core.baths import stock_volume_ml
from shadewright.core.quantities import amount_text
from shadewright.core.solutions.keeping import Purpose
from shadewright.errors import ConflictError, NotFoundError, OutOfRangeError
from shadewright.records import reads, recipe_reads
from shadewright.records.models import (
    Bath,
    BathDose,
    BathFor,
    BathLine,
    DayWish,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.writes import keep_line
from shadewright.workflows.bath_pages import BathNow, BathStatus, shaped_bath
from shadewright.workflows.bath_shapes import StepNow
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import keep_bath
from shadewright.workflows.bench_doses import bottle_trouble
from shadewright.workflows.bottle_choice import first_to_expire, refused_for
from shadewright.workflows.dosing import measure_anew
from shadewright.workflows.promised import promised_ml
from shadewright.workflows.shelf import ShelfBottle, shelf, shelf_bottle
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.tools_at_hand import DosingWish

OVER = {BathStatus.FINISHED, BathStatus.GIVEN_UP}


def wish_of(number: str) -> BathWish:
    """Return what was said of a bath when it was planned."""
    row = recipe_reads.bath_row(number)
    return BathWish(
        version_id=row.version_id,
        base_id=row.base_id,
        fibre_g=row.fibre_g,
        dyed_on=row.dyed_on,
        mill_lot_id=row.mill_lot_id,
        pot_id=row.pot_id,
        source_id=row.source_id,
        water_id=row.water_id,
        wet_yarn_g=row.wet_yarn_g,
        skeins=row.skeins,
        liquor_ratio=row.liquor_ratio,
        is_swatch=row.is_swatch,
        purpose=Purpose(row.purpose),
        notes=row.notes,
        dosing=DosingWish(
            yarn_scale=row.yarn_scale_id,
            is_by_weight=row.is_by_weight,
            tools={
                dose.position: dose.tool_id
                for dose in row.doses.all()
                if dose.tool_id is not None and dose.bottle_id is not None
            },
        ),
    )


@transaction.atomic
def plan_anew(*, number: str, wish: BathWish, stamp: Stamp) -> str:
    """Give a bath up that has not begun, and plan it again; return the new number."""
    recipe_reads.lock_numbers()
    row = recipe_reads.locked_bath(number)
    if not recipe_reads.bath_lines_of(stamp.deed).exists():
        if shaped_bath(row).status is not BathStatus.PLANNED:
            raise ConflictError(
                why=f"Bath {number} has begun or is over, so it is not planned anew.",
                advice="Plan another bath instead.",
            )
        new = keep_bath(wish=wish, stamp=stamp, instead_of=number)
        _hand_on(row, recipe_reads.bath_row(new))
        _keep(row, BathAct.GIVEN_UP, f"planned anew as {new}", stamp)
        return new
    return keep_bath(wish=wish, stamp=stamp)


def _hand_on(old: Bath, new: Bath) -> None:
    """Let the new bath be for the same orders, and of the same wishes in its day."""
    BathFor.objects.filter(bath=old).update(bath=new)
    if new.dyed_on == old.dyed_on:
        DayWish.objects.filter(bath=old).update(bath=new)


@transaction.atomic
def give_up(*, number: str, why: str, stamp: Stamp) -> None:
    """End a bath without a lot; what was poured stays poured."""
    row = recipe_reads.locked_bath(number)
    if recipe_reads.bath_lines_of(stamp.deed).exists():
        return
    if shaped_bath(row).status in OVER or hasattr(row, "lot"):
        raise ConflictError(why=f"Bath {number} is over already.")
    _keep(row, BathAct.GIVEN_UP, why, stamp)


def bottles_for(number: str, step: str) -> tuple[ShelfBottle, ...]:
    """Return the bottles that may give a dose whole, the first to expire first."""
    row = recipe_reads.bath_row(number)
    dose = _dose(row, step)
    taken = promised_ml(but_for=number)
    fit = (
        each
        for each in shelf()
        if each.dye_id == dose.dye_id
        and not _trouble(each, row)
        and each.usable_ml - taken.get(each.code, 0.0) >= _volume_ml(dose, each)
    )
    return tuple(sorted(fit, key=first_to_expire))


@transaction.atomic
def change_bottle(*, number: str, step: str, code: str, stamp: Stamp) -> None:
    """Take a dose that is not poured yet from another bottle."""
    row = recipe_reads.locked_bath(number)
    if recipe_reads.bath_lines_of(stamp.deed).exists():
        return
    dose = _dose(row, step)
    bottle = shelf_bottle(code)
    _check_unpoured(shaped_bath(row), step)
    _check_bottle(bottle, dose, row)
    before = "weighed dry" if dose.bottle is None else f"from {dose.bottle.code}"
    dose.bottle = reads.bottle_row(code)
    dose.volume_ml = _volume_ml(dose, bottle)
    dose.strength_percent = bottle.strength_percent
    dose.save(update_fields=["bottle", "volume_ml", "strength_percent"])
    measure_anew(row, dose)
    now = f"{amount_text(dose.volume_ml, 'ml')} from {code}"
    note = f"{dose.dye.name}: {now}, was planned {before}"
    _keep(row, BathAct.NOTE, note, stamp, step=step)


def _check_unpoured(bath: BathNow, step: str) -> None:
    if bath.status in OVER:
        raise ConflictError(why=f"Bath {bath.number} is over.")
    each = step_of(bath, step)
    if each.is_done or each.parts:
        raise ConflictError(
            why="This dose is in the pot already.",
            advice="If it came from another bottle, undo it and enter it again.",
        )


def step_of(bath: BathNow, key: str) -> StepNow:
    """Return a step of a bath by its key."""
    found = next((each for each in bath.steps if each.step.key == key), None)
    if found is None:
        raise NotFoundError(kind="step of this bath", key=key, argument="step")
    return found


def _trouble(bottle: ShelfBottle, bath: Bath) -> str:
    """Say why a bottle gives nothing now, or nothing to this bath."""
    said = bottle_trouble(bottle)
    why = refused_for(bottle, Purpose(bath.purpose))
    if said or not why:
        return said
    return f"Bottle {bottle.code} is {why}: not for a colour of this bath."


def _check_bottle(bottle: ShelfBottle, dose: BathDose, bath: Bath) -> None:
    if bottle.dye_id != dose.dye_id:
        raise OutOfRangeError(
            name="The bottle",
            given=f"{bottle.code}, {bottle.dye_name}",
            allowed=f"one of {dose.dye.name}",
            argument="bottle",
        )
    trouble = _trouble(bottle, bath)
    if trouble:
        raise ConflictError(why=trouble, argument="bottle")
    wanted_ml = _volume_ml(dose, bottle)
    if bottle.usable_ml < wanted_ml:
        raise OutOfRangeError(
            name=f"What is left in {bottle.code}",
            given=amount_text(bottle.usable_ml, "ml"),
            allowed=f"at least {amount_text(wanted_ml, 'ml')}",
            advice="Take another bottle, or plan the bath anew over two.",
            argument="bottle",
        )


def _dose(row: Bath, step: str) -> BathDose:
    keyed = {f"dose-{n}": dose for n, dose in enumerate(row.doses.all(), start=1)}
    if step not in keyed:
        raise NotFoundError(kind="dose of this bath", key=step, argument="step")
    return keyed[step]


def _volume_ml(dose: BathDose, bottle: ShelfBottle) -> float:
    return stock_volume_ml(
        dye_mass_g=dose.dye_g, strength_percent=bottle.strength_percent
    )


def _keep(row: Bath, act: BathAct, note: str, stamp: Stamp, *, step: str = "") -> None:
    line = BathLine(bath=row, act=act, step=step, note=note.strip()[:300])
    keep_line(line, stamp)
