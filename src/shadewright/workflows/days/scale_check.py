"""What changes when a recipe is dyed larger, and how sure it still is.

The trial is the largest bath of the same version on the same base that came to a lot.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from shadewright.core.baths.levers.ways import reach_rel
from shadewright.core.baths.stepping import TOO_UNSURE, reach_against, steps_up_g
from shadewright.core.uncertainty import Value
from shadewright.records import lever_reads, recipe_reads
from shadewright.records.models import Bath
from shadewright.workflows.baths import BathPlan, PlannedDose
from shadewright.workflows.dosing import planned_depth
from shadewright.workflows.recipe_shapes import AmountUnit
from shadewright.workflows.shades.own_lots import own_lots_differ

_SAME_RATIO = 0.02


@dataclass(frozen=True, kw_only=True)
class Trial:
    """The largest bath that was dyed so before."""

    number: str
    fibre_g: float
    liquor_ratio: float
    dyed_on: date
    is_swatch: bool


@dataclass(frozen=True, kw_only=True)
class DyeAtScale:
    """How far one dye may be off, as a share of its depth; None where nobody knows.

    ``in_trial`` as the trial's dose was measured, ``in_bath`` as this bath's will be,
    ``apart`` the two against each other.
    """

    dye_name: str
    in_bath: float | None
    in_trial: float | None
    apart: float | None

    @property
    def worst(self) -> float:
        """The larger of what is known."""
        return max(self.in_trial or 0.0, self.apart or 0.0)


@dataclass(frozen=True, kw_only=True)
class ScaleCheck:
    """What scales straight, with the water, not at all; and the steps to take first."""

    bath_g: float
    trial: Trial | None
    straight: tuple[str, ...]
    with_water: tuple[str, ...]
    not_at_all: tuple[str, ...]
    dyes: tuple[DyeAtScale, ...]
    steps_g: tuple[float, ...]

    @property
    def unsure(self) -> tuple[str, ...]:
        """The dyes that may be off by more than is seen."""
        return tuple(x.dye_name for x in self.dyes if x.worst > TOO_UNSURE)


def scale_check(plan: BathPlan) -> ScaleCheck:
    """Return what to know of a planned bath's size."""
    row = _trial(plan)
    trial = None if row is None else _shaped(row)
    return ScaleCheck(
        bath_g=plan.wish.fibre_g,
        trial=trial,
        straight=tuple(_straight(plan)),
        with_water=tuple(_with_water(plan)),
        not_at_all=tuple(_not_at_all(plan, trial)),
        dyes=tuple(_dyes(plan, row)),
        steps_g=steps_up_g(
            tried_g=None if trial is None else trial.fibre_g,
            wanted_g=plan.wish.fibre_g,
        ),
    )


def _trial(plan: BathPlan) -> Bath | None:
    rows = lever_reads.tried_baths(plan.version.id, base_id=plan.wish.base_id)
    number = rows.values_list("number", flat=True).first()
    return None if number is None else recipe_reads.bath_row(number)


def _shaped(row: Bath) -> Trial:
    return Trial(
        number=row.number,
        fibre_g=row.fibre_g,
        liquor_ratio=row.liquor_ratio,
        dyed_on=row.dyed_on,
        is_swatch=row.is_swatch,
    )


def _straight(plan: BathPlan) -> Iterator[str]:
    yield from (dose.dye_name for dose in plan.doses)
    for helper in plan.version.text.helpers:
        if helper.unit == AmountUnit.ON_FIBRE:
            yield helper.name


def _with_water(plan: BathPlan) -> Iterator[str]:
    for helper in plan.version.text.helpers:
        if helper.unit == AmountUnit.PER_LITRE:
            yield f"{helper.name}, counted to the litre"
    yield "what hard water takes of the acid"


def _not_at_all(plan: BathPlan, trial: Trial | None) -> Iterator[str]:
    if trial is not None:
        was, now = trial.liquor_ratio, plan.liquor_ratio
        if abs(was - now) > _SAME_RATIO * now:
            yield f"the liquor: 1:{was:.3g} in the trial, 1:{now:.3g} here"
    yield "the pace of the heat: more water rises more slowly on the same burner"
    yield "how evenly it takes: skeins lie closer and are stirred less"
    own = own_lots_differ()
    if own is not None:
        yield f"how your own lots differ: by about {own.apart:.1f}, whatever the size"


def _dyes(plan: BathPlan, row: Bath | None) -> Iterator[DyeAtScale]:
    tried = {} if row is None else _tried(row)
    for dose in plan.doses:
        now, before = _depth(dose), tried.get(dose.dye_id)
        yield DyeAtScale(
            dye_name=dose.dye_name,
            in_bath=None if now is None else reach_rel(now),
            in_trial=None if before is None else reach_rel(before),
            apart=None
            if now is None or before is None
            else reach_against(bath=now, trial=before),
        )


def _tried(row: Bath) -> Mapping[int, Value]:
    """Return the depths of a trial by dye, as far as their spread was kept."""
    depths = {dose.dye_id: planned_depth(dose) for dose in row.doses.all()}
    return {dye_id: depth for dye_id, depth in depths.items() if depth.terms}


def _depth(dose: PlannedDose) -> Value | None:
    sure = dose.dosed.how_sure.sure
    return None if sure is None else sure.depth
