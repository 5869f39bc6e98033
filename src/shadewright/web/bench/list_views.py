"""Every pot that is open: what asks first stands first."""

from collections.abc import Sequence
from hashlib import sha256

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_safe

from shadewright.core.quantities import amount_text
from shadewright.web.bench.clock_words import (
    alarms,
    every_clock,
    millis,
    now_ms,
    wire,
)
from shadewright.web.bench.next_words import CLOCK_KINDS, clock_text, lead
from shadewright.web.bench.pages import AllOff, BenchListPage, PotCard, Pots
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip
from shadewright.web.templatetags.house import day
from shadewright.workflows.bath_pages import BathNow, open_baths
from shadewright.workflows.days.all_off import AllOffAsked, all_off_asked
from shadewright.workflows.days.next_things import NextKind, NextThing, next_things
from shadewright.workflows.stamps import today

_STATES = {
    NextKind.RINGS: Chip(words="asks for you", kind="problem"),
    NextKind.HANDS: Chip(words="wants hands"),
    NextKind.RUNS: Chip(words="going"),
    NextKind.COOLS: Chip(words="cooling"),
    NextKind.DRIES: Chip(words="drying"),
    NextKind.BEGINS: Chip(words="planned"),
}
_LATE = Chip(words="late", kind="caution")


@require_safe
def bench_list(request: HttpRequest) -> HttpResponse:
    """Show the pots of today, and those left from before."""
    page = BenchListPage(
        title="Pots",
        fact="What asks first stands first.",
        crumbs=(Link(words="Today", address="/"),),
        pots=pots_of_today(),
    )
    return show(request, page)


@require_safe
def clocks(_request: HttpRequest) -> JsonResponse:
    """Say what the time is, when each pot rings, and whether the list changed."""
    every = open_baths()
    said = {"now": now_ms(), "clocks": wire(every_clock(every))}
    return JsonResponse({**said, "mark": _pots(every).mark})


def pots_of_today() -> Pots:
    """Return the pots that are open, with their alarms."""
    return _pots(open_baths())


def _pots(every: Sequence[BathNow]) -> Pots:
    now = timezone.now()
    known = {bath.number: bath for bath in every}
    things = next_things(now, every)
    all_off = _all_off(all_off_asked(now, every))
    return Pots(
        cards=tuple(
            _card(known[thing.number], thing, is_first=not place)
            for place, thing in enumerate(things)
        ),
        alarms=alarms(every),
        all_off=all_off,
        mark=_mark(things, all_off),
    )


def _card(bath: BathNow, thing: NextThing, *, is_first: bool) -> PotCard:
    is_clock = thing.kind in CLOCK_KINDS and thing.at is not None
    is_planned = thing.kind is NextKind.BEGINS
    return PotCard(
        number=bath.number,
        title=bath.called,
        fact=_fact(bath, thing.pot),
        state=_LATE if is_planned and thing.is_late else _STATES[thing.kind],
        asks=thing.words,
        when=lead(thing),
        clock_ms=millis(thing.at) if is_clock and thing.at else None,
        clock=clock_text(thing, timezone.now()),
        key="Start" if is_planned else "Go on",
        is_first=is_first,
    )


def _fact(bath: BathNow, pot: str) -> str:
    since = "" if bath.dyed_on == today() else f"from {day(bath.dyed_on)}"
    parts = (pot, amount_text(bath.fibre_g, "g"), bath.base_name, bath.number, since)
    return " · ".join(part for part in parts if part)


def _all_off(asked: AllOffAsked | None) -> AllOff | None:
    if asked is None:
        return None
    if asked.hot:
        words = f"The room closes. Still on the heat: {', '.join(asked.hot)}."
    else:
        words = "By the records every heat is off. Look at each burner and plug."
    return AllOff(
        words=words,
        is_hot=bool(asked.hot),
        address=reverse("day-off", args=[asked.day]),
    )


def _mark(things: Sequence[NextThing], all_off: AllOff | None) -> str:
    """Return a few signs that stand for everything the list says."""
    said = [(x.number, x.words, x.kind, x.at, x.is_late) for x in things]
    return sha256(repr((said, all_off)).encode()).hexdigest()[:12]
