"""Every pot that is open: what asks first stands first."""

from datetime import datetime

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.utils import timezone
from django.views.decorators.http import require_safe

from shadewright.core.quantities import amount_text
from shadewright.web.bench.clock_words import (
    alarms,
    every_clock,
    left_words,
    millis,
    now_ms,
    wire,
)
from shadewright.web.bench.pages import BenchListPage, PotCard, Pots
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip
from shadewright.web.templatetags.house import day
from shadewright.workflows.bath_pages import BathNow, BathStatus, Clock, open_baths
from shadewright.workflows.stamps import today


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
    """Say what the time is and when each pot rings."""
    return JsonResponse({"now": now_ms(), "clocks": wire(every_clock(open_baths()))})


def pots_of_today() -> Pots:
    """Return the pots that are open, with their alarms."""
    baths = [bath for bath in open_baths() if bath.dyed_on <= today()]
    now = timezone.now()
    ranked = sorted(baths, key=lambda bath: _rank(bath, now))
    cards = tuple(_card(bath, now, is_first=not n) for n, bath in enumerate(ranked))
    return Pots(cards=cards, alarms=alarms(baths))


def _soonest(bath: BathNow) -> Clock | None:
    return min(bath.clocks, key=lambda clock: clock.rings_at, default=None)


def _rank(bath: BathNow, now: datetime) -> tuple[int, datetime, str]:
    """Ringing pots first, then the soonest clock, then those begun."""
    soonest = _soonest(bath)
    if soonest is not None:
        return (0 if soonest.rings_at <= now else 1), soonest.rings_at, bath.number
    is_planned = bath.status is BathStatus.PLANNED
    return 3 if is_planned else 2, now, bath.number


def _card(bath: BathNow, now: datetime, *, is_first: bool) -> PotCard:
    soonest = _soonest(bath)
    is_planned = bath.status is BathStatus.PLANNED
    step = bath.next_step
    return PotCard(
        number=bath.number,
        title=f"{bath.number} {bath.recipe_name}",
        fact=_fact(bath),
        state=_state(bath, soonest, now),
        asks="" if step is None else step.step.title,
        clock_ms=None if soonest is None else millis(soonest.rings_at),
        clock="" if soonest is None else left_words(soonest.rings_at, now),
        key="Start" if is_planned else "Go on",
        is_first=is_first,
    )


def _state(bath: BathNow, soonest: Clock | None, now: datetime) -> Chip:
    if soonest is not None and soonest.rings_at <= now:
        return Chip(words="asks for you", kind="problem")
    return Chip(words=bath.status.value)


def _fact(bath: BathNow) -> str:
    since = "" if bath.dyed_on == today() else f"from {day(bath.dyed_on)}"
    parts = (bath.pot_name, amount_text(bath.fibre_g, "g"), bath.base_name, since)
    return " · ".join(part for part in parts if part)
