"""Questions to the store about recipes, baths and lots."""

from uuid import UUID

from django.db.models import Prefetch, QuerySet

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Base,
    Bath,
    BathLine,
    LotLine,
    MillLot,
    Pot,
    Recipe,
    RecipeVersion,
    Studio,
)


def recipe_rows() -> QuerySet[Recipe]:
    """Return every recipe with all its versions, newest first."""
    versions = Prefetch("versions", queryset=version_rows().order_by("-number"))
    return Recipe.objects.prefetch_related(versions)


def colourway_rows() -> QuerySet[Recipe]:
    """Return every recipe that is a colourway: sets and corrections are none."""
    return recipe_rows().filter(swatch_plan=None, correction=None)


def recipe_row(recipe_id: int) -> Recipe:
    """Return one recipe with all its versions."""
    row = recipe_rows().filter(pk=recipe_id).first()
    if row is None:
        raise NotFoundError(kind="recipe", key=str(recipe_id), argument="recipe")
    return row


def version_rows() -> QuerySet[RecipeVersion]:
    """Return versions with all that they say."""
    rows = RecipeVersion.objects.select_related("recipe", "parent", "created_by")
    return rows.prefetch_related("parts__doses__dye", "auxiliaries__auxiliary")


def version_row(version_id: int) -> RecipeVersion:
    """Return one version."""
    row = version_rows().filter(pk=version_id).first()
    if row is None:
        raise NotFoundError(
            kind="version of a recipe", key=str(version_id), argument="version"
        )
    return row


def version_of_deed(deed: UUID) -> RecipeVersion | None:
    """Return the version that a deed wrote already, if any."""
    return version_rows().filter(deed=deed).first()


def tries(recipe_id: int | None = None) -> list[tuple[int, str, int]]:
    """Return recipe, base and version of what was dyed to a lot, by base."""
    rows = Bath.objects.filter(lot__isnull=False).order_by("base__name")
    if recipe_id is not None:
        rows = rows.filter(version__recipe_id=recipe_id)
    found = rows.values_list("version__recipe_id", "base__name", "version__number")
    return list(found.distinct())


def base_row(base_id: int) -> Base:
    """Return one base."""
    row = Base.objects.filter(pk=base_id).first()
    if row is None:
        raise NotFoundError(kind="base", key=str(base_id), argument="base")
    return row


def mill_lot_row(mill_lot_id: int) -> MillLot:
    """Return one delivery of a base."""
    row = MillLot.objects.filter(pk=mill_lot_id).first()
    if row is None:
        raise NotFoundError(kind="mill lot", key=str(mill_lot_id), argument="mill_lot")
    return row


def pot_row(pot_id: int) -> Pot:
    """Return one pot."""
    row = Pot.objects.filter(pk=pot_id).first()
    if row is None:
        raise NotFoundError(kind="pot", key=str(pot_id), argument="pot")
    return row


def bath_rows() -> QuerySet[Bath]:
    """Return baths with all that was planned, newest first."""
    rows = Bath.objects.select_related(
        "version__recipe", "base", "mill_lot", "pot", "source", "created_by", "lot"
    )
    return rows.prefetch_related(
        "doses__dye", "doses__bottle", "doses__tool", "version__auxiliaries__auxiliary"
    )


def bath_row(number: str) -> Bath:
    """Return the bath of a number."""
    row = bath_rows().filter(number=number).first()
    if row is None:
        raise _no_bath(number)
    return row


def locked_bath(number: str) -> Bath:
    """Return a bath whose ledger nobody else can add to in this transaction.

    What was planned is not fetched with it: a tap needs none of that.
    """
    row = Bath.objects.select_for_update().filter(number=number).first()
    if row is None:
        raise _no_bath(number)
    return row


def lock_baths_of(deed: UUID) -> None:
    """Let nobody else add to the ledgers of the baths that a deed wrote in.

    A bath is locked before its bottles, as when a dose is drawn.
    """
    rows = Bath.objects.filter(lines__deed=deed).order_by("pk")
    for pk in rows.values_list("pk", flat=True).distinct():
        Bath.objects.select_for_update().filter(pk=pk).first()


def bath_lines_of(deed: UUID) -> QuerySet[BathLine]:
    """Return the lines in baths' ledgers that one deed wrote."""
    return BathLine.objects.filter(deed=deed).select_related("bath").order_by("id")


def lot_lines_of(deed: UUID) -> QuerySet[LotLine]:
    """Return the lines in lots' ledgers that one deed wrote."""
    return LotLine.objects.filter(deed=deed).select_related("lot").order_by("id")


def bath_of_deed(deed: UUID) -> Bath | None:
    """Return the bath that a deed planned already, if any."""
    return bath_rows().filter(deed=deed).first()


def listed_bath_rows() -> QuerySet[Bath]:
    """Return baths as a list shows them: with their ledgers, newest first."""
    rows = Bath.objects.select_related("version__recipe", "base", "pot", "lot")
    return rows.prefetch_related("lines", "doses__bottle")


def lock_numbers() -> None:
    """Let nobody else give a number before this transaction ends."""
    Studio.objects.select_for_update().first()


def numbers_from(start: str) -> list[str]:
    """Return every bath's number that begins so, on whatever day it is dyed now."""
    rows = Bath.objects.filter(number__startswith=start)
    return list(rows.values_list("number", flat=True))


def _no_bath(number: str) -> NotFoundError:
    return NotFoundError(
        kind="bath",
        key=number,
        advice="Read the number on its card again.",
        argument="bath",
    )
