"""How this studio works, and the doses that it dyes, as core compares them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import isclose

from shadewright.core.baths import liquor_ml
from shadewright.core.baths.doses import STRENGTH_SERIES_PERCENT
from shadewright.core.baths.levers.practice import Job, Practice
from shadewright.core.baths.levers.ways import Stock, Wanted
from shadewright.records import lever_reads
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.levers_at_hand import (
    makeable,
    making_of,
    scale_of,
    stocks_of,
)
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.recipe_sureness import devices_in_use
from shadewright.workflows.recipes import recipes
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.tools_at_hand import AtHand, at_hand

MOST_JOBS = 80
"""Doses that are compared: those dyed most often."""

_ONE_SKEIN_G = 100.0
_NEARLY = 0.1


@dataclass(frozen=True, kw_only=True)
class StudioNow:
    """The studio's tools, its practice, and its doses, the most dyed first.

    ``recipes`` counts those that the doses come from; ``unserved`` names dyes that
    no good bottle stands of.
    """

    tools: AtHand
    practice: Practice
    jobs: tuple[Job, ...]
    recipes: int
    unserved: tuple[str, ...]
    dye_ids: dict[str, int]


def studio_now() -> StudioNow:
    """Return how the studio works and what it dyes."""
    tools, known = at_hand(), [each.newest for each in recipes()]
    known = [version for version in known if version.is_complete]
    found = sorted(_jobs(known, tools), key=lambda job: -job.times)[:MOST_JOBS]
    strengths = _strengths_kept(shelf())
    dyed = {job.wanted.dye for job in found}
    return StudioNow(
        tools=tools,
        practice=Practice(
            making=making_of(tools),
            devices=devices_in_use(tools),
            strengths_percent=strengths,
        ),
        jobs=tuple(found),
        recipes=len({job.recipe for job in found}),
        unserved=tuple(sorted(dyed - set(strengths))),
        dye_ids={
            line.dye_name: line.dye_id or 0
            for version in known
            for line in version.text.doses
        },
    )


def stock_to_make(
    studio: StudioNow, *, dye: str, strength_percent: float
) -> Stock | None:
    """Return how a stock would be made surest today; None where it cannot be."""
    dye_id = studio.dye_ids[dye]
    made = makeable(
        dye_id,
        studio.practice.making,
        standing=stocks_of(Offer(bottles=shelf()), dye_id),
        devices=studio.practice.devices,
    )
    return next((x for x in made if isclose(x.strength.value, strength_percent)), None)


def _jobs(versions: Iterable[Version], tools: AtHand) -> Iterable[Job]:
    often: dict[int, list[tuple[float, int]]] = {}
    for recipe_id, yarn_g, times in lever_reads.batches():
        often.setdefault(recipe_id, []).append((yarn_g, times))
    for version in versions:
        for yarn_g, times in often.get(version.recipe_id, [(_ONE_SKEIN_G, 1)]):
            yield from _jobs_of(version, tools, yarn_g, times)


def _jobs_of(
    version: Version, tools: AtHand, yarn_g: float, times: int
) -> Iterable[Job]:
    ratio = version.text.liquor_ratio or 0.0
    for line in version.text.doses:
        wanted = Wanted(
            dye=line.dye_name,
            depth_percent=line.depth_percent or 0.0,
            yarn_g=yarn_g,
            liquor_ml=liquor_ml(fibre_mass_g=yarn_g, liquor_ratio=ratio),
            yarn_scale=scale_of(replace(tools, fibre_g=yarn_g).yarn_scale),
        )
        yield Job(recipe=version.recipe_name, wanted=wanted, times=times)


def _strengths_kept(bottles: Iterable[ShelfBottle]) -> dict[str, tuple[float, ...]]:
    """Return the strengths of each dye that stand there, to the usual ones nearby."""
    kept: dict[str, set[float]] = {}
    for bottle in bottles:
        if not (bottle.is_settled or bottle.is_past or bottle.is_empty):
            kept.setdefault(bottle.dye_name, set()).add(_usual(bottle.strength_percent))
    return {dye: tuple(sorted(found, reverse=True)) for dye, found in kept.items()}


def _usual(percent: float) -> float:
    near = min(STRENGTH_SERIES_PERCENT, key=lambda each: abs(each - percent))
    return near if abs(near - percent) <= _NEARLY * near else round(percent, 2)
