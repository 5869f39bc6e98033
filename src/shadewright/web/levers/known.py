"""How well a recipe is known, as its page shows it."""

from dataclasses import dataclass

from django.urls import reverse

from shadewright.core.baths.levers.saying import share_words
from shadewright.core.baths.levers.scaling import BatchSureness
from shadewright.core.quantities import amount_text
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.recipe_sureness import RecipeSureness, recipe_sureness


@dataclass(frozen=True, kw_only=True)
class DyeKnown:
    """One dye at a batch."""

    dye: str
    spread: str


@dataclass(frozen=True, kw_only=True)
class BatchKnown:
    """A batch: its yarn, the least sure dye, and each dye."""

    yarn: str
    is_usual: bool
    worst: str
    dyes: tuple[DyeKnown, ...]


@dataclass(frozen=True, kw_only=True)
class RecipeKnown:
    """A sentence, the batches, and the page with more; empty where nothing is known.

    ``wants_tools`` says that it is only the tools that are missing.
    """

    sentence: str
    batches: tuple[BatchKnown, ...]
    wants_tools: bool
    more: str


def recipe_known(version: Version) -> RecipeKnown:
    """Return how well a version is known."""
    found = recipe_sureness(version)
    return RecipeKnown(
        sentence="" if found is None else _sentence(found),
        batches=()
        if found is None
        else tuple(_batch(each, found.usual_g) for each in found.batches),
        wants_tools=version.is_complete and version.text.liquor_ratio is not None,
        more=reverse("whole-shelf"),
    )


def _sentence(found: RecipeSureness) -> str:
    usual, yarn = found.usual, amount_text(found.usual_g, "g")
    batch = f"the usual batch of {yarn}" if found.is_dyed else f"a batch of {yarn}"
    worst = usual.worst
    if worst is None or worst.reach is None:
        lack = " and ".join(dose.dye for dose in usual.doses if dose.reach is None)
        return (
            f"At {batch} this recipe is not known: nothing at hand measures {lack}. "
            "A good bottle of it is wanted, or a tool that suits the dose."
        )
    sure = share_words(worst.reach)
    if len(usual.doses) == 1:
        return f"This recipe is known to {sure} at {batch}."
    return (
        f"This recipe is known to {sure} or better for each dye at {batch}; "
        f"{worst.dye} is the least sure."
    )


def _batch(batch: BatchSureness, usual_g: float) -> BatchKnown:
    worst = batch.worst
    return BatchKnown(
        yarn=amount_text(batch.yarn_g, "g"),
        is_usual=batch.yarn_g == usual_g,
        worst="" if worst is None or worst.reach is None else share_words(worst.reach),
        dyes=tuple(
            DyeKnown(
                dye=dose.dye,
                spread="not known" if dose.reach is None else share_words(dose.reach),
            )
            for dose in batch.doses
        ),
    )
