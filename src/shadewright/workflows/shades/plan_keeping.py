"""Keep a set of swatches: a recipe, and a version and a bath for each of them."""

from collections.abc import Iterator
from dataclasses import replace
from uuid import UUID, uuid5

from django.db import transaction

from shadewright.records import recipe_reads
from shadewright.records.models import SwatchPlan
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import keep_bath
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText, Version
from shadewright.workflows.recipes import numbered_name, write_recipe, write_version
from shadewright.workflows.shades.plan_wishes import PlanWish
from shadewright.workflows.shades.planning import (
    PlannedSwatch,
    SwatchSetPlan,
    plan_swatches,
)
from shadewright.workflows.shades.wanted import keep_wanted, wanted_colours
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.waters import usual_water

_MOST_NAME = 60


@transaction.atomic
def keep_plan(wish: PlanWish, stamp: Stamp) -> int:
    """Plan a set for good and return its number; sent twice, it is kept once."""
    recipe_reads.lock_numbers()
    kept = SwatchPlan.objects.filter(deed=stamp.deed).first()
    if kept is not None:
        return kept.pk
    plan = plan_swatches(wish)
    wanted_id = wish.wanted_id or _kept_colour(wish, stamp)
    versions = tuple(_versions(plan, stamp))
    row = SwatchPlan.objects.create(
        deed=stamp.deed,
        kind=wish.kind,
        recipe_id=versions[0].recipe_id,
        base_id=wish.base_id,
        yarn_g=wish.yarn_g,
        wanted_id=wanted_id,
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    for each, version in zip(plan.swatches, versions, strict=True):
        keep_bath(
            wish=_bath(each, plan, version), stamp=_own(stamp, f"bath {each.place}")
        )
    return row.pk


def _kept_colour(wish: PlanWish, stamp: Stamp) -> int | None:
    """Keep the colour that a set is for, unless the very same is kept already."""
    target = wish.target
    if target is None:
        return None
    same = (x for x in wanted_colours() if x.labs == target.labs)
    kept = next(same, None) or keep_wanted(
        target, name=target.name, base_id=wish.base_id, stamp=_own(stamp, "wanted")
    )
    return kept.wanted_id


def _versions(plan: SwatchSetPlan, stamp: Stamp) -> Iterator[Version]:
    name, first = _name(plan), None
    for each in plan.swatches:
        own = _own(stamp, f"version {each.place}")
        text = _text(each, plan)
        if first is None:
            first = write_recipe(name=name, text=text, stamp=own)
            yield first
        else:
            yield write_version(parent_id=first.id, text=text, stamp=own)


def _text(each: PlannedSwatch, plan: SwatchSetPlan) -> RecipeText:
    doses = tuple(
        DoseLine(
            dye_id=draw.dye_id, dye_name=draw.dye_name, depth_percent=draw.depth_percent
        )
        for draw in each.draws
    )
    of_them = f"swatch {each.place} of {len(plan.swatches)}"
    return replace(plan.practice.text, doses=doses, why_changed=of_them)


def _bath(each: PlannedSwatch, plan: SwatchSetPlan, version: Version) -> BathWish:
    water = usual_water()
    return BathWish(
        version_id=version.id,
        base_id=plan.wish.base_id,
        fibre_g=plan.wish.yarn_g,
        dyed_on=plan.wish.dyed_on,
        water_id=None if water is None else water.id,
        is_swatch=True,
        dosing=plan.wish.dosing,
        from_bottles={draw.dye_id: draw.code for draw in each.draws if draw.code},
    )


def _own(stamp: Stamp, part: str) -> Stamp:
    """Return the stamp of one part of a set: always the same for the same set."""
    deed: UUID = uuid5(stamp.deed, part)
    return replace(stamp, deed=deed)


def _name(plan: SwatchSetPlan) -> str:
    """Return the name of a set: ``Swatches 26 Nov, Hollow 4-ply``."""
    day = plan.wish.dyed_on
    wanted = f"Swatches {day.day} {day:%b}, {plan.base_name}"[: _MOST_NAME - 5]
    return numbered_name(wanted)
