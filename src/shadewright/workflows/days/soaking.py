"""The soak list of a day: which yarn goes under water when, and for which bath."""

from collections.abc import Iterator
from datetime import date, time, timedelta

from django.utils import timezone

from shadewright.core.quantities import amount_text
from shadewright.paper.tick_lists import DayList, ListColumn, ListPart, day_list_pdf
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.bath_yarn import base_of_bath
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.day_order import OrderedBath, clock, day_in_order
from shadewright.workflows.recipes import version
from shadewright.workflows.stamps import today
from shadewright.workflows.studio import studio

SOAK = timedelta(minutes=30)
"""Yarn is wet through after about so long (common practice)."""

_SAID = (
    "Weigh each yarn dry first and write the true weight. Tie a tag with the number "
    "on it, then put it under water until no air comes out of it."
)
_BEFORE = "Day before"
_SAID_BEFORE = (
    "Nobody is in early enough for some: it soaks overnight. Forgotten, it goes under "
    "water first thing, and its pot waits until it is wet through."
)
_COLUMNS = (
    ListColumn(head="Under water", share=0.13, is_large=True),
    ListColumn(head="Bath", share=0.24),
    ListColumn(head="Yarn", share=0.25),
    ListColumn(head="Skeins", share=0.08, is_large=True),
    ListColumn(head="Dry", share=0.12, is_large=True),
    ListColumn(head="True weight, g", share=0.18),
)


def soak_list(day: date, *, paper: str = "a4") -> bytes:
    """Return the soak list of a day as a PDF, the first bath first."""
    here, opens_at = studio(), day_now(day).opens_at
    rows = [
        _row(each, opens_at)
        for each in day_in_order(day).baths
        if each.bath.status is BathStatus.PLANNED
    ]
    is_before = any(_BEFORE in row for row in rows)
    said = f"{_SAID} {_SAID_BEFORE}" if is_before else _SAID
    part = ListPart(name="Yarn to soak", said=said, columns=_COLUMNS, rows=tuple(rows))
    what = DayList(
        name="Soak list",
        day=day,
        parts=(part,),
        is_demo=here is not None and here.is_demo,
    )
    return day_list_pdf(what, paper=paper, printed_on=today())


def _row(each: OrderedBath, opens_at: time) -> tuple[str, ...]:
    bath = each.bath
    return (
        _under_water(each, opens_at),
        f"{bath.number} {bath.recipe_name}",
        ". ".join(_yarn(each)),
        "" if bath.skeins is None else str(bath.skeins),
        amount_text(bath.fibre_g, "g"),
        "",
    )


def _under_water(each: OrderedBath, opens_at: time) -> str:
    """Return when yarn goes in: the day before, where nobody is there early enough."""
    if each.begins is None:
        return ""
    at = timezone.localtime(each.begins - SOAK)
    return _BEFORE if at.time() < opens_at else clock(at)


def _yarn(each: OrderedBath) -> Iterator[str]:
    bath = each.bath
    words = base_of_bath(bath)
    yield f"{words[:1].upper()}{words[1:]}"
    ties = version(bath.version_id).text.ties
    if ties:
        yield f"Ties: {ties.rstrip('.')}"
