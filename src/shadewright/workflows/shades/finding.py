"""Find the recipes for a colour on a base, with what the studio has at hand."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from shadewright.core.colour import Lab, Light, ciede2000, difference_words
from shadewright.core.costing import Cost, CostPart
from shadewright.core.mixing import Evidence, Mix, told_mixes
from shadewright.core.mixing.asking import lab_under
from shadewright.core.recipes import (
    Matches,
    Recipe,
    Step,
    Target,
    Wishes,
    matching,
    target_of_labs,
)
from shadewright.core.recipes.matching import MOST_RECIPES
from shadewright.core.recipes.rounding import as_written
from shadewright.core.recipes.targets import steady_lab
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.shades.dye_prices import gram_prices, skein_cost
from shadewright.workflows.shades.find_reasons import Candidate, with_reasons
from shadewright.workflows.shades.find_wishes import (
    AtShelf,
    FindWish,
    at_shelf,
    palette_base,
    wishes_of,
)
from shadewright.workflows.shades.in_the_pot import in_the_pot
from shadewright.workflows.shades.mixing_page import SHOWN_UNDER
from shadewright.workflows.shades.palettes import PaletteNow, palette_or_refuse
from shadewright.workflows.shades.standing_behind import behind_among
from shadewright.workflows.shades.swatches import SwatchNow, swatches_now
from shadewright.workflows.shades.wanted import Wanted, target_of


@dataclass(frozen=True, kw_only=True, eq=False)
class Hunt:
    """A search that is ready to begin; nothing in it asks the store any more."""

    wish: FindWish
    now: PaletteNow
    base_name: str
    target: Target
    wishes: Wishes
    at: AtShelf

    @property
    def key(self) -> str:
        """What tells this search from any other."""
        return repr((
            self.now.fit_id,
            self.now.palette.repeats,
            self.base_name,
            self.target,
            self.wishes,
            self.wish.tolerance,
        ))

    def steps(self) -> Iterator[Step]:
        """Search, a share at a time."""
        return matching(
            self.now.palette,
            base=self.base_name,
            target=self.target,
            wishes=self.wishes,
            top=MOST_RECIPES,
            tolerance=self.wish.tolerance,
        )


@dataclass(frozen=True, kw_only=True)
class UnderLight:
    """Target and prediction under one light; ``is_supposed`` where nobody read it."""

    light: Light
    target: Lab
    foretold: Lab
    is_supposed: bool

    @property
    def difference(self) -> float:
        """CIEDE2000 between them."""
        return ciede2000(self.target, self.foretold)


@dataclass(frozen=True, kw_only=True)
class Answer:
    """A recipe that was found: its colour, its doses for the batch, why it is shown.

    ``difference`` is CIEDE2000 to the target on paper; one pot in ten stays under
    ``within_10``, nine in ten under ``within_90``. ``off`` and ``off_90`` are how far
    the pot comes out from the prediction itself; ``behind`` are the swatches that it
    rests on, the nearest first.
    """

    doses: tuple[PlannedDose, ...]
    lab: Lab
    under: tuple[UnderLight, ...]
    words: str
    difference: float
    expected: float
    within_10: float
    within_90: float
    chance: float
    off: float
    off_90: float
    evidence: Evidence
    behind: tuple[SwatchNow, ...]
    cost: Cost
    why: tuple[str, ...]

    @property
    def depths(self) -> tuple[tuple[int, float], ...]:
        """Its dyes by number, with their depths. [%]."""
        return tuple((dose.dye_id, dose.depth_percent) for dose in self.doses)


@dataclass(frozen=True, kw_only=True)
class Found:
    """All that was found for a wish, the likeliest to come out right first."""

    wish: FindWish
    base_name: str
    answers: tuple[Answer, ...]
    searched: int
    is_within_tolerance: bool
    nearest_difference: float
    nearest_words: str


def hunt(wish: FindWish) -> Hunt:
    """Make a search ready; refused before the first fit or on an unknown base."""
    now = palette_or_refuse()
    base_name = palette_base(now.palette, wish.base_id)
    at = at_shelf(now.palette, base_id=wish.base_id, batch_g=wish.batch_g)
    return Hunt(
        wish=wish,
        now=now,
        base_name=base_name,
        target=target_of(wish.wanted, lights=wish.lights),
        wishes=wishes_of(wish, now.palette, at),
        at=at,
    )


def found_by(ready: Hunt, answer: Matches) -> Found:
    """Return what a search found, with bottles, costs and reasons."""
    prices = gram_prices([each.code for each in ready.at.offer.bottles])
    judged = [
        _in_the_pot(each, ready, target=ready.target)
        for each in answer.recipes
        if each.doses
    ]
    picked = with_reasons(
        [Candidate(recipe=x, cost=_cost(x, ready.at, prices)) for x in judged],
        is_within=answer.is_within_tolerance,
        tolerance=ready.wish.tolerance,
    )
    return Found(
        wish=ready.wish,
        base_name=ready.base_name,
        answers=_answers(ready, picked),
        searched=answer.searched,
        is_within_tolerance=answer.is_within_tolerance,
        nearest_difference=answer.nearest_de,
        nearest_words=answer.nearest_words,
    )


def find(wish: FindWish) -> Found:
    """Search at once, from the wish to the answers."""
    ready = hunt(wish)
    answer = next(step.found for step in ready.steps() if step.found is not None)
    return found_by(ready, answer)


def target_under(wanted: Wanted, light: Light) -> tuple[Lab, bool]:
    """Return a wanted colour under a light, and whether that is only supposed."""
    if wanted.spectrum:
        import numpy as np

        seen = lab_under(np.array([wanted.spectrum]), light=light)[0]
        return Lab(*seen.tolist()), False
    if light in wanted.labs:
        return Lab(*wanted.labs[light]), False
    return steady_lab(wanted.lab, light), True


def _in_the_pot(recipe: Recipe, ready: Hunt, *, target: Target) -> Recipe:
    """Judge a recipe against a colour by the doses that its bottles and tools give."""
    return in_the_pot(
        tuple(_rounded(recipe)),
        palette=ready.now.palette,
        base=ready.base_name,
        target=target,
        at=ready.at,
        tolerance=ready.wish.tolerance,
    )


def _cost(recipe: Recipe, at: AtShelf, prices: Mapping[str, CostPart]) -> Cost:
    doses = [(dye, at.bottles(dye, depth)) for dye, depth in _rounded(recipe)]
    return skein_cost(doses, prices, batch_g=at.bath.fibre_g)


def _planned(recipe: Recipe, at: AtShelf) -> tuple[PlannedDose, ...]:
    return tuple(
        at.dose(dye, depth, place=place)
        for place, (dye, depth) in enumerate(_rounded(recipe), start=1)
    )


def _rounded(recipe: Recipe) -> Iterator[tuple[str, float]]:
    for dye, depth in recipe.doses:
        yield dye, as_written(depth)


def _answers(ready: Hunt, picked: Sequence[Candidate]) -> tuple[Answer, ...]:
    if not picked:
        return ()
    mixes = [Mix(base=ready.base_name, doses=x.recipe.doses) for x in picked]
    told = told_mixes(mixes, palette=ready.now.palette)
    seen = {light: lab_under(told.reflectance, light=light) for light in SHOWN_UNDER}
    used = tuple(each for each in swatches_now() if each.id in set(ready.now.used))
    aims = {light: target_under(ready.wish.wanted, light) for light in SHOWN_UNDER}
    found = []
    for place, each in enumerate(picked):
        under = tuple(
            UnderLight(
                light=light,
                target=aims[light][0],
                foretold=Lab(*seen[light][place].tolist()),
                is_supposed=aims[light][1],
            )
            for light in SHOWN_UNDER
        )
        itself = target_of_labs({Light.D65: each.recipe.lab})
        off = _in_the_pot(each.recipe, ready, target=itself)
        behind = behind_among(used, each.recipe.doses, ready.base_name)
        planned = _planned(each.recipe, ready.at)
        found.append(_answer(each, planned, under, off, behind))
    return tuple(found)


def _answer(
    each: Candidate,
    planned: tuple[PlannedDose, ...],
    under: tuple[UnderLight, ...],
    off: Recipe,
    behind: tuple[SwatchNow, ...],
) -> Answer:
    recipe = each.recipe
    return Answer(
        doses=planned,
        lab=recipe.lab,
        under=under,
        words=difference_words(under[0].target, recipe.lab),
        difference=recipe.de,
        expected=recipe.expected_de,
        within_10=recipe.within_10,
        within_90=recipe.within_90,
        chance=recipe.chance,
        off=off.expected_de,
        off_90=off.within_90,
        evidence=recipe.evidence,
        behind=behind,
        cost=each.cost,
        why=each.why,
    )
