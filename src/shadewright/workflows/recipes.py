"""Recipes: write one, write its next version, take an old one in as it is."""

from collections.abc import Sequence

from django.db import transaction

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import recipe_reads
from shadewright.records.models import (
    Recipe,
    RecipeAuxiliary,
    RecipeDose,
    RecipePart,
    RecipeVersion,
)
from shadewright.workflows.recipe_checks import check_recipe
from shadewright.workflows.recipe_curves import stored_curve
from shadewright.workflows.recipe_shapes import (
    DoseLine,
    HelperLine,
    RecipePage,
    RecipeText,
    Version,
    missing_in,
    shaped_recipe,
    shaped_version,
)
from shadewright.workflows.stamps import Stamp

_MOST_NAME, _MOST_NAMES = 60, 200


def recipes(*, is_retired: bool = False) -> tuple[RecipePage, ...]:
    """Return every colourway in use, or every retired one, by name."""
    tried = recipe_reads.tries()
    rows = recipe_reads.colourway_rows().filter(is_retired=is_retired)
    return tuple(shaped_recipe(row, tried) for row in rows)


def has_recipes() -> bool:
    """Whether any recipe is in use."""
    return recipe_reads.colourway_rows().filter(is_retired=False).exists()


def count_retired() -> int:
    """Return how many recipes are retired."""
    return recipe_reads.colourway_rows().filter(is_retired=True).count()


def recipe(recipe_id: int) -> RecipePage:
    """Return one recipe with its versions."""
    tried = recipe_reads.tries(recipe_id)
    return shaped_recipe(recipe_reads.recipe_row(recipe_id), tried)


def version(version_id: int) -> Version:
    """Return one version."""
    return shaped_version(recipe_reads.version_row(version_id))


@transaction.atomic
def write_recipe(*, name: str, text: RecipeText, stamp: Stamp) -> Version:
    """Write a new recipe with its first version."""
    recipe_reads.lock_numbers()
    written = recipe_reads.version_of_deed(stamp.deed)
    if written is not None:
        return shaped_version(written)
    row = Recipe.objects.create(
        name=_free_name(name), created_at=stamp.at, created_by_id=stamp.by
    )
    return _write(row, text, parent=None, stamp=stamp)


@transaction.atomic
def write_version(*, parent_id: int, text: RecipeText, stamp: Stamp) -> Version:
    """Write the next version; the one it comes from stays as it was."""
    recipe_reads.lock_numbers()
    written = recipe_reads.version_of_deed(stamp.deed)
    if written is not None:
        return shaped_version(written)
    parent = recipe_reads.version_row(parent_id)
    return _write(parent.recipe, text, parent=parent, stamp=stamp)


@transaction.atomic
def rename_recipe(*, recipe_id: int, name: str) -> RecipePage:
    """Give a recipe another name; what it was named stays readable."""
    recipe_reads.lock_numbers()
    row = recipe_reads.recipe_row(recipe_id)
    before, row.name = row.name, _free_name(name, but_for=recipe_id)
    if before.casefold() != row.name.casefold():
        row.was_named = _named_before(row.was_named, before)
    row.save(update_fields=["name", "was_named"])
    return recipe(recipe_id)


def retire_recipe(*, recipe_id: int, is_retired: bool = True) -> RecipePage:
    """Take a recipe out of the list, or back into it; nothing is deleted."""
    row = recipe_reads.recipe_row(recipe_id)
    row.is_retired = is_retired
    row.save(update_fields=["is_retired"])
    return recipe(recipe_id)


def numbered_name(wanted: str) -> str:
    """Return a name that no recipe has: as it is, or with a number behind it."""
    rows = Recipe.objects.filter(name__istartswith=wanted)
    names = {name.casefold() for name in rows.values_list("name", flat=True)}
    numbered = (f"{wanted} ({count})" for count in range(2, len(names) + 2))
    return next(x for x in (wanted, *numbered) if x.casefold() not in names)


def _write(
    row: Recipe, text: RecipeText, *, parent: RecipeVersion | None, stamp: Stamp
) -> Version:
    check_recipe(text)
    newest = row.versions.order_by("-number").first()
    made = RecipeVersion.objects.create(
        recipe=row,
        number=1 if newest is None else newest.number + 1,
        parent=parent,
        deed=stamp.deed,
        liquor_ratio=text.liquor_ratio,
        start_c=text.start_c,
        rise_c_per_min=text.rise_c_per_min,
        top_c=text.top_c,
        hold_min=text.hold_min,
        curve=stored_curve(text, text.stops),
        purpose=text.purpose,
        ties=text.ties.strip(),
        stirring=text.stirring.strip(),
        look_at_15=text.look_at_15.strip(),
        notes=text.notes.strip(),
        as_written=text.as_written.strip(),
        why_changed=text.why_changed.strip(),
        what_is_missing=missing_in(text)[:300],
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    _write_doses(made, text.doses)
    _write_helpers(made, text.helpers)
    return shaped_version(recipe_reads.version_row(made.pk))


def _write_doses(made: RecipeVersion, doses: Sequence[DoseLine]) -> None:
    part = RecipePart.objects.create(version=made)
    for position, dose in enumerate(doses, start=1):
        RecipeDose.objects.create(
            part=part,
            position=position,
            dye_id=dose.dye_id,
            depth_percent=dose.depth_percent,
            as_written=dose.as_written.strip(),
        )


def _write_helpers(made: RecipeVersion, helpers: Sequence[HelperLine]) -> None:
    for position, helper in enumerate(helpers, start=1):
        RecipeAuxiliary.objects.create(
            version=made,
            position=position,
            auxiliary_id=helper.auxiliary_id,
            amount=helper.amount,
            unit=helper.unit,
            when=helper.when,
            at_c=helper.at_c,
        )


def _free_name(name: str, *, but_for: int | None = None) -> str:
    wanted = " ".join(name.split())
    if not wanted:
        raise MissingError(
            name="The name", advice="Give the colourway a name.", argument="name"
        )
    if len(wanted) > _MOST_NAME:
        raise OutOfRangeError(
            name="The name",
            given=f"{len(wanted)} characters",
            allowed=f"at most {_MOST_NAME} characters",
            argument="name",
        )
    twin = Recipe.objects.filter(name__iexact=wanted).exclude(pk=but_for or 0).first()
    if twin is not None:
        raise ConflictError(
            why=f"There is a recipe “{twin.name}” already"
            + (", among the retired." if twin.is_retired else "."),
            advice="Write a new version of it, or choose another name.",
            argument="name",
        )
    return wanted


def _named_before(names: str, name: str) -> str:
    """Add a name to the earlier ones; the oldest go where there is no more room."""
    kept = [*filter(None, names.split(", ")), name]
    while len(", ".join(kept)) > _MOST_NAMES:
        kept.pop(0)
    return ", ".join(kept)
