"""What is said of a set of swatches, and the doses that come of it."""

from collections.abc import Collection
from dataclasses import dataclass, field
from datetime import date
from functools import lru_cache

from django.db.models import Count

from shadewright.core.colour import Lab
from shadewright.core.mixing import Advised, Palette, advised_swatches
from shadewright.core.mixing.laying_out import ladder_depths, mixes_in_parts
from shadewright.core.recipes.bracketing import bracketing_trials
from shadewright.core.recipes.rounding import as_written
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.records import recipe_reads
from shadewright.records.models import Base, Dye, SwatchPlan, WantedColour
from shadewright.records.models.swatches import PlanKind
from shadewright.workflows.shades.palettes import (
    closest_reading,
    gone_dyes,
    palette_or_refuse,
)
from shadewright.workflows.shades.swatches import DyeDoses
from shadewright.workflows.shades.wanted import Wanted
from shadewright.workflows.tools_at_hand import AS_USUAL, DosingWish

__all__ = [
    "JAR_RATIO",
    "MOST_SWATCHES",
    "YARN_G",
    "PlanKind",
    "PlanWish",
    "base_name",
    "doses_wanted",
    "dye_names",
    "usual_base",
]

MOST_SWATCHES = 40
"""More little baths than this nobody dyes in a day (our choice). [-]"""
JAR_RATIO = 50.0
"""Liquor of a jar, millilitres a gram of yarn (common practice: 50 to 100). [mL/g]"""
YARN_G = (5.0, 10.0, 20.0)
"""What a swatch usually weighs. [g]"""


@dataclass(frozen=True, kw_only=True)
class PlanWish:
    """What is said of a set before it is planned.

    A ladder wants ``dye_ids``, ``top_percent`` and ``rungs``; mixes want two or three
    dyes, ``total_percent`` and ``parts``; what helps most wants a ``count``, and may
    have a colour in mind (``wanted_id``, or a ``target`` that is kept with the set); a
    bracket wants a ``mix``, and may have one too. What was
    laid out already, such as a gradient, brings its ``rows``. ``like_id`` is
    the version of a recipe whose acid and heat are taken over, None as usual.
    """

    kind: PlanKind
    base_id: int
    dyed_on: date
    yarn_g: float = 10.0
    liquor_ratio: float = JAR_RATIO
    dye_ids: tuple[int, ...] = ()
    top_percent: float = 2.0
    rungs: int = 4
    total_percent: float = 1.0
    parts: int = 4
    count: int = 4
    mix: DyeDoses = ()
    rows: tuple[DyeDoses, ...] = ()
    wanted_id: int | None = None
    like_id: int | None = None
    target: Wanted | None = None
    dosing: DosingWish = field(default=AS_USUAL)


def doses_wanted(wish: PlanWish) -> tuple[DyeDoses, ...]:
    """Return the doses of every swatch of a set, in order."""
    found = wish.rows or _LAID_OUT[wish.kind](wish)
    if not found:
        raise MissingError(
            name="A swatch", advice="Choose at least one dye.", argument="dyes"
        )
    if len(found) > MOST_SWATCHES:
        raise OutOfRangeError(
            name="The swatches of this set",
            given=str(len(found)),
            allowed=f"at most {MOST_SWATCHES}",
            advice="Take fewer dyes, rungs or parts, or plan two sets.",
            argument="dyes",
        )
    return found


def base_name(wish: PlanWish) -> str:
    """Return the name of the yarn."""
    return recipe_reads.base_row(wish.base_id).name


def usual_base() -> int | None:
    """Return the yarn that a set is for where nothing is said: the last set’s.

    Else the one with most swatches, or any in use.
    """
    plan = SwatchPlan.objects.filter(base__is_retired=False).first()
    if plan is not None:
        return plan.base_id
    rows = Base.objects.filter(is_retired=False).annotate(taught=Count("swatches"))
    first = rows.order_by("-taught", "name").first()
    return None if first is None else first.pk


def dye_names(dye_ids: Collection[int]) -> dict[int, str]:
    """Return the names of some dyes by number."""
    rows = Dye.objects.filter(pk__in=dye_ids)
    return dict(rows.values_list("pk", "name"))


def _ladder(wish: PlanWish) -> tuple[DyeDoses, ...]:
    depths = ladder_depths(top_percent=wish.top_percent, rungs=wish.rungs)
    return tuple(((dye, depth),) for dye in wish.dye_ids for depth in depths)


def _mixes(wish: PlanWish) -> tuple[DyeDoses, ...]:
    mixed = mixes_in_parts(
        dyes=[str(each) for each in wish.dye_ids],
        total_percent=wish.total_percent,
        parts=wish.parts,
    )
    return tuple(tuple((int(dye), depth) for dye, depth in each) for each in mixed)


def _next(wish: PlanWish) -> tuple[DyeDoses, ...]:
    now = palette_or_refuse()
    advised = _advised(
        now.palette,
        base_name(wish),
        wish.count,
        _towards(wish),
        gone_dyes(now.palette),
        closest_reading(now),
    )
    numbers = dict(Dye.objects.values_list("name", "pk"))
    return tuple(
        tuple((numbers[dye], depth) for dye, depth in each.doses) for each in advised
    )


@lru_cache(maxsize=16)
def _advised(
    palette: Palette,
    base: str,
    count: int,
    towards: Lab | None,
    gone: tuple[str, ...],
    sd: float | None,
) -> tuple[Advised, ...]:
    """Return what would help most, reckoned once while the palette holds."""
    return advised_swatches(
        palette,
        base=base,
        count=count,
        towards=towards,
        without=gone,
        reading_sd=sd,
    )


def _bracket(wish: PlanWish) -> tuple[DyeDoses, ...]:
    names = dye_names([dye for dye, _depth in wish.mix])
    numbers = {name: dye for dye, name in names.items()}
    doses = tuple((names[dye], depth) for dye, depth in wish.mix if dye in names)
    trials = bracketing_trials(
        palette_or_refuse().palette, base=base_name(wish), doses=doses
    )
    return tuple(
        tuple((numbers[dye], as_written(depth)) for dye, depth in each.doses)
        for each in trials
    )


def _towards(wish: PlanWish) -> Lab | None:
    if wish.wanted_id is None and wish.target is not None:
        return wish.target.lab
    row = WantedColour.objects.filter(pk=wish.wanted_id or 0).first()
    return None if row is None else Lab(*row.labs["D65"])


_LAID_OUT = {
    PlanKind.LADDER: _ladder,
    PlanKind.MIXES: _mixes,
    PlanKind.NEXT: _next,
    PlanKind.BRACKET: _bracket,
}
