"""Questions to the store about orders, and about the baths that can serve them."""

from collections.abc import Collection
from datetime import date
from uuid import UUID

from django.db.models import Exists, OuterRef, Prefetch, Q, QuerySet

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Base,
    Bath,
    BathFor,
    LotLine,
    Order,
    OrderEdit,
    OrderLine,
    ParLevel,
    Recipe,
    RecipeVersion,
    SkeinsOut,
)

_STANDING = Q(undone_by=None) & ~Q(act="undone")


def order_row(number: int) -> Order:
    """Return the order of a number, with its lines."""
    row = Order.objects.prefetch_related("lines").filter(number=number).first()
    if row is None:
        raise NotFoundError(
            kind="order",
            key=str(number),
            advice="Look for it among all orders.",
            argument="number",
        )
    return row


def order_edits_of(deed: UUID) -> QuerySet[OrderEdit]:
    """Return the lines in orders' ledgers that one deed wrote."""
    return OrderEdit.objects.filter(deed=deed).order_by("id")


def called_in_orders() -> dict[str, str]:
    """Return what each recipe and base is called, by its kind and its key."""
    recipes, bases = Recipe.objects.all(), Base.objects.all()
    return {f"recipe {row.pk}": row.name for row in recipes} | {
        f"base {row.pk}": row.name for row in bases
    }


def open_lines() -> QuerySet[OrderLine]:
    """Return the lines of open orders that were not dropped, oldest first."""
    rows = OrderLine.objects.filter(order__is_closed=False, is_dropped=False)
    rows = rows.select_related("order", "recipe", "base").order_by("id")
    return rows.prefetch_related(_gone("skeins_out"))


def newest_versions(recipe_ids: Collection[int]) -> dict[int, RecipeVersion]:
    """Return the version of each of some recipes that holds now, by recipe."""
    rows = RecipeVersion.objects.filter(recipe_id__in=recipe_ids)
    rows = rows.select_related("recipe").order_by("number")
    return {row.recipe_id: row for row in rows}


def par_rows() -> QuerySet[ParLevel]:
    """Return what the shelf should hold, by colourway and base."""
    return ParLevel.objects.select_related("recipe", "base").order_by(
        "recipe__name", "base__name"
    )


def serving_baths(
    *, recipe_ids: Collection[int], base_ids: Collection[int], since: date
) -> QuerySet[Bath]:
    """Return baths that gave a lot or are to be dyed, of some recipes and bases.

    And on those bases whatever corrects a lot, as its recipe is no colourway; and those
    that are for a line of an open order, whatever they are. Of baths without a lot,
    those planned from a date on.
    """
    shares = BathFor.objects.filter(bath=OuterRef("pk"), line__order__is_closed=False)
    recipes = Q(version__recipe_id__in=recipe_ids)
    corrects = Q(version__recipe__correction__isnull=False)
    of_these = (recipes | corrects) & Q(base_id__in=base_ids)
    awaited = Q(lot__isnull=False) | Q(dyed_on__gte=since)
    rows = _with_lots().filter(is_swatch=False)
    rows = rows.filter((of_these & awaited) | Exists(shares))
    return rows.order_by("dyed_on", "id")


def serving_bath(number: str) -> Bath:
    """Return one bath likewise."""
    row = _with_lots().filter(number=number).first()
    if row is None:
        raise NotFoundError(
            kind="bath",
            key=number,
            advice="Read the number on its card again.",
            argument="number",
        )
    return row


def baths_from(day: date) -> QuerySet[Bath]:
    """Return baths for yarn that is sold, from a date on, oldest first."""
    rows = _with_lots().filter(is_swatch=False, dyed_on__gte=day)
    return rows.order_by("dyed_on", "id")


def _with_lots() -> QuerySet[Bath]:
    rows = Bath.objects.select_related(
        "version__recipe__correction__becomes",
        "version__recipe__correction__lot",
        "base",
        "lot",
        "pot",
    )
    lot_lines = LotLine.objects.filter(_STANDING)
    rows = rows.prefetch_related("lines", "for_lines__line__order")
    rows = rows.prefetch_related(_gone("for_lines__line__skeins_out"))
    rows = rows.prefetch_related(_gone("lot__skeins_out"))
    return rows.prefetch_related(Prefetch("lot__lines", queryset=lot_lines))


def listed_orders(
    words: Collection[str] = (), *, is_closed: bool = False
) -> QuerySet[Order]:
    """Return open or closed orders that say every word, with their lines."""
    rows = Order.objects.filter(is_closed=is_closed)
    for word in words:
        rows = rows.filter(
            Q(for_whom__icontains=word)
            | Q(notes__icontains=word)
            | Q(number__icontains=word)
            | Exists(_saying(word))
        )
    rows = rows.select_related("created_by")
    rows = rows.prefetch_related("lines__recipe", "lines__base")
    return rows.order_by("-number") if is_closed else rows.order_by("number")


def _saying(word: str) -> QuerySet[OrderLine]:
    rows = OrderLine.objects.filter(order=OuterRef("pk"))
    return rows.filter(
        Q(recipe__name__icontains=word)
        | Q(base__name__icontains=word)
        | Q(as_said__icontains=word)
    )


def shares_of(line_ids: Collection[int]) -> QuerySet[BathFor]:
    """Return which baths are for some lines, oldest first."""
    rows = BathFor.objects.filter(line_id__in=line_ids).select_related("bath")
    return rows.order_by("bath__dyed_on", "bath_id")


def customers() -> list[str]:
    """Return for whom orders were, the newest first."""
    rows = Order.objects.order_by("-id").values_list("for_whom", flat=True)
    return list(dict.fromkeys(rows[:200]))


def orders_of_bath(number: str) -> QuerySet[Order]:
    """Return the orders that a bath is for, but not those that were called off."""
    shares = BathFor.objects.filter(bath__number=number, line__is_dropped=False)
    rows = Order.objects.filter(lines__in=shares.values("line"))
    return rows.exclude(why_closed="Called off").distinct().order_by("number")


def _gone(path: str) -> "Prefetch[str, QuerySet[SkeinsOut], str]":
    """Return what went out and was not taken back, to be fetched along a path."""
    return Prefetch(path, SkeinsOut.objects.filter(undone_by=None, undoes=None))
