"""Recipes: write one, write its next version, take an old one in as it is."""

from collections.abc import Sequence

from django.db import transaction

from shadewright.core.quantities import require_above_zero, require_between
from shadewright.errors import ConflictError, MissingError
from shadewright.records import recipe_reads
from shadewright.records.models import (
    Recipe,
    RecipeAuxiliary,
    RecipeDose,
    RecipePart,
    RecipeVersion,
)
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

MOST_DEPTH_PERCENT = 20.0
MOST_RATIO = 500.0


def recipes() -> tuple[RecipePage, ...]:
    """Return every recipe in use, by name."""
    return tuple(shaped_recipe(row) for row in recipe_reads.recipe_rows())


def recipe(recipe_id: int) -> RecipePage:
    """Return one recipe with its versions."""
    return shaped_recipe(recipe_reads.recipe_row(recipe_id))


def version(version_id: int) -> Version:
    """Return one version."""
    return shaped_version(recipe_reads.version_row(version_id))


@transaction.atomic
def write_recipe(*, name: str, text: RecipeText, stamp: Stamp) -> Version:
    """Write a new recipe with its first version."""
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
    written = recipe_reads.version_of_deed(stamp.deed)
    if written is not None:
        return shaped_version(written)
    parent = recipe_reads.version_row(parent_id)
    return _write(parent.recipe, text, parent=parent, stamp=stamp)


@transaction.atomic
def rename_recipe(*, recipe_id: int, name: str) -> RecipePage:
    """Give a recipe another name; what it was named stays readable."""
    row = recipe_reads.recipe_row(recipe_id)
    if " ".join(name.split()).casefold() != row.name.casefold():
        row.was_named = ", ".join(part for part in (row.was_named, row.name) if part)
        row.name = _free_name(name)
        row.save(update_fields=["name", "was_named"])
    return recipe(recipe_id)


def _write(
    row: Recipe, text: RecipeText, *, parent: RecipeVersion | None, stamp: Stamp
) -> Version:
    _check(text)
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
        )


def _check(text: RecipeText) -> None:
    if not text.doses and not text.as_written.strip():
        raise MissingError(
            name="The dye",
            advice="Name at least one dye, or paste the old recipe as it is written.",
            argument="doses",
        )
    for dose in text.doses:
        if dose.depth_percent is not None:
            require_above_zero(
                dose.depth_percent,
                most=MOST_DEPTH_PERCENT,
                unit="%",
                name=f"The depth of {dose.dye_name or 'the dye'}",
                argument="doses",
            )
    for helper in text.helpers:
        require_above_zero(
            helper.amount,
            most=500.0,
            unit=helper.unit,
            name="The amount",
            argument="helpers",
        )
    _check_numbers(text)


def _check_numbers(text: RecipeText) -> None:
    if text.liquor_ratio is not None:
        require_above_zero(
            text.liquor_ratio,
            most=MOST_RATIO,
            unit="l/kg",
            name="The liquor ratio",
            argument="liquor_ratio",
        )
    bounded = (
        ("start_c", text.start_c, 0.0, 100.0, "°C", "The starting temperature"),
        ("top_c", text.top_c, 20.0, 105.0, "°C", "The top temperature"),
        ("rise_c_per_min", text.rise_c_per_min, 0.05, 20.0, "°C/min", "The rise"),
        ("hold_min", text.hold_min, 0.0, 600.0, "min", "The hold"),
    )
    for argument, value, least, most, unit, name in bounded:
        if value is not None:
            require_between(
                value, least=least, most=most, unit=unit, name=name, argument=argument
            )


def _free_name(name: str) -> str:
    wanted = " ".join(name.split())
    if not wanted:
        raise MissingError(
            name="The name", advice="Give the colourway a name.", argument="name"
        )
    if Recipe.objects.filter(name__iexact=wanted).exists():
        raise ConflictError(
            why=f"There is a recipe “{wanted}” already.",
            advice="Write a new version of it, or choose another name.",
            argument="name",
        )
    return wanted
