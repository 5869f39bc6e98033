"""The acid and the heat of a set of swatches: as the studio usually dyes."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from shadewright.core.baths.heating import PROGRAMMES
from shadewright.records import recipe_reads, shade_reads
from shadewright.records.models import Bath, RecipeVersion
from shadewright.workflows.recipe_shapes import (
    HelperLine,
    RecipeText,
    Version,
    shaped_version,
)
from shadewright.workflows.recipes import recipes
from shadewright.workflows.usual_acids import acid_to_begin

_TO_BEGIN = PROGRAMMES["levelling"]


@dataclass(frozen=True, kw_only=True)
class SetPractice:
    """How every swatch of a set is dyed, and where that comes from.

    ``text`` holds no dose; ``like_id`` is the version that it follows, None where the
    studio has none yet. ``note`` says what to mind.
    """

    text: RecipeText
    words: str
    like_id: int | None = None
    note: str = ""


def set_practice(
    like_id: int | None, *, liquor_ratio: float, depths: dict[int, float]
) -> SetPractice:
    """Return the acid and heat of a set: of a recipe, else as usual, else a start."""
    like = _version(like_id)
    if like is None:
        return _to_begin(depths, liquor_ratio=liquor_ratio)
    text = RecipeText(
        doses=(),
        helpers=like.text.helpers,
        liquor_ratio=liquor_ratio,
        start_c=like.text.start_c,
        rise_c_per_min=like.text.rise_c_per_min,
        top_c=like.text.top_c,
        hold_min=like.text.hold_min,
        stops=like.text.stops,
        stirring=like.text.stirring,
    )
    words = f"Acid and heat as in {like.recipe_name}, version {like.number}."
    return SetPractice(text=text, words=words, like_id=like.id, note=_note(text))


def practices_to_follow() -> tuple[Version, ...]:
    """Return the recipes whose acid and heat a set may take over, by name."""
    newest = (each.newest for each in recipes())
    return tuple(each for each in newest if each.is_complete)


def _version(like_id: int | None) -> Version | None:
    if like_id is not None:
        return shaped_version(recipe_reads.version_row(like_id))
    row = next((each for each in _usual() if each.auxiliaries.exists()), None)
    return None if row is None else shaped_version(row)


def _usual() -> Iterator[RecipeVersion]:
    # The last set, the last bath, any recipe; whichever names its acid.
    plan = shade_reads.swatch_plan_rows().first()
    if plan is not None:
        yield from recipe_reads.version_rows().filter(recipe=plan.recipe)[:1]
    bath = Bath.objects.filter(version__what_is_missing="").first()
    if bath is not None:
        yield recipe_reads.version_row(bath.version_id)
    rows = recipe_reads.version_rows().filter(what_is_missing="").order_by("-id")
    yield from rows[:1]


def _to_begin(depths: dict[int, float], *, liquor_ratio: float) -> SetPractice:
    acid = acid_to_begin(depths)
    curve = _TO_BEGIN.curve
    last = curve.legs[-1]
    text = RecipeText(
        doses=(),
        liquor_ratio=liquor_ratio,
        start_c=curve.start_c,
        rise_c_per_min=last.rise_c_per_min,
        top_c=last.to_c,
        hold_min=last.hold_min,
    )
    if acid.auxiliary_id is not None and acid.percent_owf is not None:
        helper = HelperLine(
            auxiliary_id=acid.auxiliary_id, name=acid.name, amount=acid.percent_owf
        )
        text = replace(text, helpers=(helper,))
    source = acid.words if text.helpers else ""
    words = f"No recipe to follow yet: heat as for “{_TO_BEGIN.name}”. {source}".strip()
    return SetPractice(text=text, words=words, note=_note(text))


def _note(text: RecipeText) -> str:
    if text.helpers:
        return ""
    return (
        "No acid goes in: choose a recipe whose acid the swatches take over, or write "
        "down the class of these dyes and the acid on your shelf."
    )
