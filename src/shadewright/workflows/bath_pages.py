"""A bath as it stands now: its round with what was ticked, its clocks, its lines."""

from collections.abc import Iterable, Sequence

from shadewright.core.baths.rounds import RoundStep
from shadewright.core.solutions.keeping import Purpose
from shadewright.records import lot_reads, reads, recipe_reads
from shadewright.records.models import Bath, BathDose, BathLine
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import state_of
from shadewright.workflows.bath_shapes import (
    PART,
    BathNow,
    BathStatus,
    Clock,
    DoneLine,
    DoseNow,
    StepNow,
    called,
)
from shadewright.workflows.clocks import clocks_of
from shadewright.workflows.dosing import dye_in_g, remembered
from shadewright.workflows.heat_words import step_words
from shadewright.workflows.heating import StudioHeat, heat_of_bath, top_caution
from shadewright.workflows.rescaling import rescaled
from shadewright.workflows.rounds import round_of, step_of_scale_g
from shadewright.workflows.undo import may_undo

__all__ = [
    "BathAct",
    "BathNow",
    "BathStatus",
    "Clock",
    "DoneLine",
    "DoseNow",
    "StepNow",
    "bath_now",
    "open_baths",
    "shaped_bath",
    "shaped_baths",
    "status_of",
]

_TICKS = {
    BathAct.STARTED,
    BathAct.DOSED,
    BathAct.MISSED,
    BathAct.ADDED,
    BathAct.HEAT_ON,
    BathAct.AT_TOP,
    BathAct.CHECKED,
    BathAct.HEAT_OFF,
    BathAct.FINISHED,
}


def bath_now(number: str) -> BathNow:
    """Return one bath as it stands now."""
    return shaped_baths([recipe_reads.bath_row(number)])[0]


def open_baths() -> tuple[BathNow, ...]:
    """Return the baths that are neither finished nor given up, oldest first."""
    over = (BathAct.FINISHED, BathAct.GIVEN_UP)
    return shaped_baths(lot_reads.baths_without(over).order_by("dyed_on", "id"))


def shaped_bath(row: Bath) -> BathNow:
    """Return a row as the bath stands now."""
    return shaped_baths([row])[0]


def shaped_baths(rows: Iterable[Bath]) -> tuple[BathNow, ...]:
    """Return rows as their baths stand now, looked up together."""
    baths = tuple(rows)
    lines, book = lot_reads.bath_ledgers(baths), StudioHeat()
    lots = lot_reads.baths_with_lot(baths)
    return tuple(
        _bath(row, lines.get(row.pk, ()), book, has_lot=row.pk in lots) for row in baths
    )


def _bath(
    row: Bath, ledger: Sequence[BathLine], book: StudioHeat, *, has_lot: bool
) -> BathNow:
    name = row.version.recipe.name
    lines = tuple(map(_shaped, ledger))
    doses = {f"dose-{n}": dose for n, dose in enumerate(row.doses.all(), start=1)}
    heat = heat_of_bath(row, book)
    round_ = round_of(row, heating="" if heat is None else step_words(heat))
    planned = (_step(step, lines, doses.get(step.key)) for step in round_)
    steps = rescaled(planned, lines)
    return BathNow(
        number=row.number,
        recipe_name=name,
        version_id=row.version_id,
        version_number=row.version.number,
        base_name=row.base.name,
        mill_lot="" if row.mill_lot is None else row.mill_lot.lot,
        pot_name="" if row.pot is None else row.pot.name,
        water_id=row.water_id,
        is_swatch=row.is_swatch,
        purpose=Purpose(row.purpose),
        dyed_on=row.dyed_on,
        fibre_g=row.fibre_g,
        skeins=row.skeins,
        liquor_ratio=row.liquor_ratio,
        is_by_weight=row.is_by_weight,
        notes=row.notes,
        status=status_of(line.act for line in lines if not line.is_undone),
        steps=steps,
        clocks=clocks_of(row.number, called(row.number, name), steps, lines),
        lines=lines,
        has_lot=has_lot,
        source_name="" if row.source is None else row.source.name,
        heat=heat,
        top_caution=top_caution(row.version.top_c, book),
    )


def _shaped(line: BathLine) -> DoneLine:
    return DoneLine(
        deed=line.deed,
        act=BathAct(line.act),
        step=line.step,
        at=line.at,
        by="" if line.by is None else line.by.name,
        device=line.device,
        value=line.value,
        unit=line.unit,
        bottle="" if line.bottle is None else line.bottle.code,
        dye="" if line.bottle is None else line.bottle.dye.name,
        is_drawn=line.drawn_id is not None,
        note=line.note,
        is_undone=hasattr(line, "undone_by") or line.undoes_id is not None,
        may_undo=may_undo(line),
        has_photo=bool(line.photo),
    )


def _step(step: RoundStep, lines: Sequence[DoneLine], dose: BathDose | None) -> StepNow:
    standing = [line for line in reversed(lines) if not line.is_undone]
    ticks = [x for x in standing if x.step == step.key and x.act in _TICKS]
    parts = [x for x in standing if x.step == step.key + PART]
    return StepNow(
        step=step,
        ticks=tuple(ticks),
        parts=tuple(parts),
        dose=None if dose is None else _dose(dose, [*ticks, *parts]),
    )


def _dose(dose: BathDose, lines: Sequence[DoneLine]) -> DoseNow:
    return DoseNow(
        dye_id=dose.dye_id,
        dye_name=dose.dye.name,
        dye_g=dose.dye_g,
        depth_percent=dose.depth_percent,
        strength_percent=dose.strength_percent,
        given_g=sum(_given_g(dose, line) for line in lines),
        how_sure=remembered(dose),
        tool="" if dose.tool is None else dose.tool.name,
        step_g=step_of_scale_g(dose),
    )


def _given_g(dose: BathDose, line: DoneLine) -> float:
    """Return the dye that a line brought, none where it was another dye's."""
    if line.act != BathAct.DOSED or line.value is None:
        return 0.0
    if line.unit == "g" and not line.bottle:
        return line.value
    planned = dose.bottle
    if not line.bottle or (planned is not None and line.bottle == planned.code):
        return dye_in_g(line.value, line.unit, dose.strength_percent or 0.0)
    bottle = reads.bottle_row(line.bottle)
    if bottle.dye_id != dose.dye_id:
        return 0.0
    return dye_in_g(line.value, line.unit, state_of(bottle).strength_percent)


def status_of(acts: Iterable[BathAct]) -> BathStatus:
    """Return where a bath is by the acts that stand; a note begins nothing."""
    done = set(acts) - {BathAct.NOTE}
    reached = (
        (BathAct.GIVEN_UP, BathStatus.GIVEN_UP),
        (BathAct.FINISHED, BathStatus.FINISHED),
        (BathAct.HEAT_OFF, BathStatus.COOLING),
    )
    for act, status in reached:
        if act in done:
            return status
    return BathStatus.GOING if done else BathStatus.PLANNED
