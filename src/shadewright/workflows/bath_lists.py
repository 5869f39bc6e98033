"""Baths as a list shows them: one line each, with where the bath is."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from django.core.paginator import Paginator
from django.db.models import Q

from shadewright.records import recipe_reads
from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_pages import BathStatus, status_of
from shadewright.workflows.stamps import today

_DAY, _WEEK = timedelta(days=1), timedelta(days=7)
PAGE_ROWS = 30
"""How many past baths one page shows."""


@dataclass(frozen=True, kw_only=True)
class BathEntry:
    """A bath in one line."""

    number: str
    dyed_on: date
    recipe_name: str
    version_number: int
    base_name: str
    pot_name: str
    fibre_g: float
    skeins: int | None
    is_swatch: bool
    status: BathStatus
    has_lot: bool


@dataclass(frozen=True, kw_only=True)
class PastBaths:
    """A page of the baths that were, newest first."""

    rows: tuple[BathEntry, ...]
    page: int
    pages: int


def coming_baths() -> tuple[BathEntry, ...]:
    """Return the baths of today and later, and any of this week still going."""
    rows = recipe_reads.listed_bath_rows().order_by("dyed_on", "id")
    week = rows.filter(dyed_on__range=(today() - _WEEK, today() - _DAY), lot=None)
    going = {BathStatus.GOING, BathStatus.COOLING}
    old = tuple(each for each in _entries(week) if each.status in going)
    return old + _entries(rows.filter(dyed_on__gte=today()))


def past_baths(
    query: str = "", *, page: int = 1, without: Collection[str] = ()
) -> PastBaths:
    """Return a page of the baths before today; with a query, those that say so."""
    rows = recipe_reads.listed_bath_rows().filter(dyed_on__lt=today())
    for word in query.split():
        rows = rows.filter(_says(word))
    found = Paginator(rows.exclude(number__in=without), PAGE_ROWS).get_page(page)
    return PastBaths(
        rows=_entries(found), page=found.number, pages=found.paginator.num_pages
    )


def baths_of_recipe(recipe_id: int, *, most: int) -> tuple[BathEntry, ...]:
    """Return the newest baths that a recipe was planned for, newest first."""
    rows = recipe_reads.listed_bath_rows().filter(version__recipe_id=recipe_id)
    return _entries(rows[:most])


def _says(word: str) -> Q:
    fields = ("number", "version__recipe__name", "base__name", "pot__name", "notes")
    found = Q()
    for name in fields:
        found |= Q(**{f"{name}__icontains": word})
    return found


def _entries(rows: Iterable[Bath]) -> tuple[BathEntry, ...]:
    return tuple(_entry(row) for row in rows)


def _entry(row: Bath) -> BathEntry:
    acts = [BathAct(line.act) for line in standing_lines(row.lines.all())]
    return BathEntry(
        number=row.number,
        dyed_on=row.dyed_on,
        recipe_name=row.version.recipe.name,
        version_number=row.version.number,
        base_name=row.base.name,
        pot_name="" if row.pot is None else row.pot.name,
        fibre_g=row.fibre_g,
        skeins=row.skeins,
        is_swatch=row.is_swatch,
        status=status_of(acts),
        has_lot=hasattr(row, "lot"),
    )
