"""A row of skeins whose steps look equal: laid out, and kept as recipes."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from uuid import UUID, uuid5

from django.db import transaction

from shadewright.core.colour import ciede2000
from shadewright.core.quantities import require_between
from shadewright.core.recipes import Shade, gradient, gradient_between
from shadewright.core.recipes.rounding import as_written
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records.models import Recipe
from shadewright.workflows.choices import Choice
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText, Version
from shadewright.workflows.recipes import recipes, write_recipe
from shadewright.workflows.shades.mixing_page import (
    DyeInMix,
    ToldMix,
    mix_now,
    named_dyes,
    told_row,
)
from shadewright.workflows.shades.palettes import PaletteNow
from shadewright.workflows.shades.plan_wishes import PlanKind, PlanWish
from shadewright.workflows.shades.swatches import Doses, DyeDoses
from shadewright.workflows.stamps import Stamp, today

LEAST_STEPS, MOST_STEPS = 2, 12
PALEST_SHARE = 0.05
"""The palest of a row from deep to pale, as a share of the deepest (our choice). [1]"""
_MOST_NAME = 60


@dataclass(frozen=True, kw_only=True)
class GradientWish:
    """What row is wanted: from ``first`` to ``last``, or paler and paler without one.

    ``palest_share`` is the palest as a share of the deepest; 0 for bare yarn.
    """

    base_id: int | None = None
    first: DyeDoses = ()
    last: DyeDoses = ()
    steps: int = 5
    palest_share: float = PALEST_SHARE


@dataclass(frozen=True, kw_only=True)
class Step:
    """One skein of a row; ``from_before`` is CIEDE2000 to the one before it."""

    place: int
    dyes: tuple[DyeInMix, ...]
    told: ToldMix
    from_before: float | None

    @property
    def doses(self) -> Doses:
        """Its dyes by name. [%]."""
        return tuple((dye.name, dye.depth_percent) for dye in self.dyes)


@dataclass(frozen=True, kw_only=True)
class GradientNow:
    """A row on a base; ``why_not`` says why none can be laid out."""

    wish: GradientWish
    base: Choice
    bases: tuple[Choice, ...]
    steps: tuple[Step, ...]
    why_not: str = ""


def colourways() -> tuple[Choice, ...]:
    """Return the recipes in use, each by its newest version, if that is complete."""
    return tuple(
        Choice(id=each.newest.id, words=each.name)
        for each in recipes()
        if each.newest.is_complete
    )


def gradient_now(now: PaletteNow, wish: GradientWish) -> GradientNow:
    """Lay out a row; its first is the deepest, or the first mix."""
    require_between(
        wish.steps,
        least=LEAST_STEPS,
        most=MOST_STEPS,
        unit="",
        name="The number of steps",
        argument="steps",
    )
    both = dict.fromkeys(dye for dye, _depth in (*wish.first, *wish.last))
    shown = mix_now(
        now.palette, base_id=wish.base_id, doses=tuple((dye, 0.0) for dye in both)
    )
    steps: tuple[Step, ...] = ()
    if wish.first and not shown.why_not:
        steps = _steps(now, wish, shown.base.words)
    return GradientNow(
        wish=wish,
        base=shown.base,
        bases=shown.bases,
        steps=steps,
        why_not=shown.why_not,
    )


@transaction.atomic
def keep_gradient(row: GradientNow, *, name: str, stamp: Stamp) -> tuple[Version, ...]:
    """Write each skein of a row down as a recipe: ``Name 1 of 5``; bare yarn is none.

    Sent twice, it is written once.
    """
    if not row.steps:
        raise MissingError(
            name="The row",
            advice=row.why_not or "Choose its first mix.",
            argument="mix",
        )
    names = _names(name, len(row.steps))
    dyed = [step for step in row.steps if step.dyes]
    deeds = {step.place: uuid5(stamp.deed, f"step {step.place}") for step in dyed}
    _refuse_taken([names[step.place - 1] for step in dyed], deeds.values())
    return tuple(
        write_recipe(
            name=names[step.place - 1],
            text=_text(step, row),
            stamp=replace(stamp, deed=deeds[step.place]),
        )
        for step in dyed
    )


def swatch_wish(row: GradientNow) -> PlanWish:
    """Return the skeins of a row as a set of swatches; bare yarn is none of them."""
    if not row.steps:
        raise MissingError(
            name="The row",
            advice=row.why_not or "Choose its first mix.",
            argument="mix",
        )
    return PlanWish(
        kind=PlanKind.MIXES,
        base_id=row.base.id,
        dyed_on=today(),
        rows=tuple(
            tuple((dye.id, dye.depth_percent) for dye in step.dyes)
            for step in row.steps
            if step.dyes
        ),
    )


def _steps(now: PaletteNow, wish: GradientWish, base: str) -> tuple[Step, ...]:
    dyes = {dye.name: dye for dye in named_dyes(now.palette, _every(wish))}
    shades = _shades(now, wish, base)
    rows = [_rounded(shade.doses) for shade in shades]
    told = told_row(now.palette, base=base, rows=rows)
    away = [None, *(ciede2000(one.lab, two.lab) for one, two in pairwise(told))]
    return tuple(
        Step(
            place=place,
            dyes=tuple(
                replace(dyes[name], depth_percent=depth) for name, depth in doses
            ),
            told=each,
            from_before=before,
        )
        for place, (doses, each, before) in enumerate(
            zip(rows, told, away, strict=True), start=1
        )
    )


def _shades(now: PaletteNow, wish: GradientWish, base: str) -> Sequence[Shade]:
    first, last = _by_name(now, wish.first), _by_name(now, wish.last)
    if last:
        return gradient_between(
            now.palette, base=base, first=first, last=last, count=wish.steps
        )
    found = gradient(
        now.palette,
        base=base,
        doses=first,
        count=wish.steps,
        palest_share=wish.palest_share,
    )
    return found[::-1]


def _by_name(now: PaletteNow, doses: DyeDoses) -> Doses:
    named = named_dyes(now.palette, doses)
    return tuple((dye.name, dye.depth_percent) for dye in named)


def _every(wish: GradientWish) -> DyeDoses:
    return tuple({dose[0]: dose for dose in (*wish.first, *wish.last)}.values())


def _rounded(doses: Doses) -> Doses:
    """Return doses as they are written, dyes at nothing left out."""
    return tuple((dye, as_written(depth)) for dye, depth in doses if depth)


def _names(name: str, count: int) -> list[str]:
    tidy = " ".join(name.split())
    if not tidy:
        raise MissingError(
            name="The name", advice="Give the row a name.", argument="called"
        )
    names = [f"{tidy} {place} of {count}" for place in range(1, count + 1)]
    if len(names[-1]) > _MOST_NAME:
        raise OutOfRangeError(
            name="The name of the row",
            given=f"{len(tidy)} characters",
            allowed=f"at most {_MOST_NAME - len(names[-1]) + len(tidy)} characters",
            argument="called",
        )
    return names


def _refuse_taken(names: Sequence[str], deeds: Collection[UUID]) -> None:
    """Refuse a name that another recipe has, before any of the row is written."""
    rows = Recipe.objects.exclude(versions__deed__in=list(deeds))
    for name in names:
        if rows.filter(name__iexact=name).exists():
            raise ConflictError(
                why=f"There is a recipe “{name}” already.",
                advice="Choose another name for the row.",
                argument="called",
            )


def _text(step: Step, row: GradientNow) -> RecipeText:
    lines = tuple(
        DoseLine(dye_id=dye.id, dye_name=dye.name, depth_percent=dye.depth_percent)
        for dye in step.dyes
    )
    where = f"of {len(row.steps)} of a gradient for {row.base.words}"
    return RecipeText(doses=lines, notes=f"Step {step.place} {where}.")
