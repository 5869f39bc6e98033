"""The swatches as a table: sorted, searched, each with its colour."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.web.colours import colour_of_reading
from shadewright.web.finding import asked, says
from shadewright.web.lots.paging import page_asked, pages_of
from shadewright.web.pages import show
from shadewright.web.parts import Chip
from shadewright.web.sorting import arrange, read_order
from shadewright.web.standings import standing_chip
from shadewright.web.swatches.pages import ListRow, SwatchesPage
from shadewright.web.swatches.words import (
    KINDS,
    SHADES,
    dose_words,
    kind_chip,
    title_of,
)
from shadewright.workflows.shades.entering_swatches import taken_back
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import Standing, SwatchNow, swatches_now

_ON_A_PAGE = 60
_RANKS = {read_by: rank for rank, read_by in enumerate(KINDS)}


@dataclass(frozen=True, kw_only=True)
class _Found:
    """A swatch with its standing in words, to be searched and sorted."""

    now: SwatchNow
    standing: Chip

    @property
    def texts(self) -> tuple[str, ...]:
        """What a search looks in."""
        reading = self.now.reading
        kind = "" if reading is None else kind_chip(reading.read_by).words
        named = (title_of(self.now), dose_words(self.now), self.now.base_name)
        return (*named, kind, self.standing.words)


_KEYS: dict[str, Callable[[_Found], Any]] = {
    "swatch": lambda found: title_of(found.now).casefold(),
    "base": lambda found: found.now.base_name.casefold(),
    "dyed": lambda found: found.now.dyed_on,
    "light": lambda found: found.now.reading and found.now.reading.lab.L,
    "kind": lambda found: found.now.reading and _RANKS[found.now.reading.read_by],
    "standing": lambda found: found.standing.words,
    "entered": lambda found: found.now.id,
}


@require_safe
def swatches(request: HttpRequest) -> HttpResponse:
    """Show the swatches, the newest first."""
    query, order = asked(request), read_order(request, _KEYS, default="-entered")
    found = [each for each in _every() if says(query, *each.texts)]
    rows = arrange(found, order, _KEYS)
    pages = max(1, -(-len(rows) // _ON_A_PAGE))
    page = min(max(page_asked(request), 1), pages)
    first = (page - 1) * _ON_A_PAGE
    shown = SwatchesPage(
        title="Swatches",
        fact="Yarn whose colour teaches the palette.",
        crumbs=(SHADES,),
        rows=tuple(map(_row, rows[first : first + _ON_A_PAGE])),
        order=order,
        query=query,
        pages=pages_of(request, page=page, pages=pages),
    )
    return show(request, shown)


def _every() -> list[_Found]:
    holds = palette_now()
    suspects = set() if holds is None else {each.swatch_id for each in holds.suspects}
    gone = taken_back()
    return [
        _Found(now=now, standing=standing_chip(now, is_suspect=now.id in suspects))
        for now in swatches_now()
        if now.standing is not Standing.UNREAD or now.id not in gone
    ]


def _row(found: _Found) -> ListRow:
    swatch, reading = found.now, found.now.reading
    return ListRow(
        address=reverse("swatch", args=[swatch.id]),
        title=title_of(swatch),
        doses="" if swatch.label == dose_words(swatch) else dose_words(swatch),
        base_name=swatch.base_name,
        dyed_on=swatch.dyed_on,
        seen=None if reading is None else colour_of_reading(reading),
        kind=None if reading is None else kind_chip(reading.read_by),
        standing=found.standing,
    )
