"""Show one bath at the pot."""

import json
from uuid import uuid4

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.utils import timezone
from django.views.decorators.http import require_safe

from shadewright.core.quantities import amount_text, counted
from shadewright.web.bench.clock_words import every_clock, kind, millis, now_ms, wire
from shadewright.web.bench.next_words import next_bar, next_wire
from shadewright.web.bench.notes import cup_note, deviation_note, late_acid
from shadewright.web.bench.pages import (
    BenchPage,
    DoubleTick,
    RoundRow,
)
from shadewright.web.bench.panels import first_view, panels
from shadewright.web.bench.words import line_words, written
from shadewright.web.pages import show
from shadewright.workflows.bath_pages import (
    BathNow,
    BathStatus,
    StepNow,
    bath_now,
    open_baths,
)
from shadewright.workflows.bench_doses import bottle_trouble
from shadewright.workflows.days.next_things import next_things
from shadewright.workflows.deviations import OVER, UNDER
from shadewright.workflows.shelf import shelf

VIEWS = {
    "main",
    "ask",
    "other",
    "problem",
    "bottle",
    "wrong",
    "out",
    "note",
    "left",
}
_OVER = {BathStatus.FINISHED, BathStatus.GIVEN_UP}


@require_safe
def bench(request: HttpRequest, number: str) -> HttpResponse:
    """Show the step at hand."""
    asked = request.GET.get("view", "")
    return show(request, bench_page(request, number, view=asked))


@require_safe
def bench_now(_request: HttpRequest, number: str) -> JsonResponse:
    """Say what the time is, what rings, and whether anything new was written."""
    bath, every = bath_now(number), open_baths()
    return JsonResponse({
        "now": now_ms(),
        "mark": _mark(bath),
        "clocks": wire(every_clock(every)),
        "elsewhere": _elsewhere_ms(bath, every),
        "things": next_wire(next_things(timezone.now(), every)),
    })


def bench_page(
    request: HttpRequest,
    number: str,
    *,
    view: str = "",
    fault: str = "",
    seen: str = "",
) -> BenchPage:
    """Return the page of one bath."""
    bath, every, bottles = bath_now(number), open_baths(), shelf()
    now_key = _step_at_hand(bath, request.GET.get("step", ""))
    asked_view = view if view in VIEWS else ""
    things = next_things(timezone.now(), every)
    undoable = [str(line.deed) for line in bath.standing if line.may_undo]
    return BenchPage(
        title=bath.called,
        fact=_fact(bath),
        number=bath.number,
        kind=kind(),
        now_ms=now_ms(),
        mark=_mark(bath),
        clocks=json.dumps(wire(every_clock(every))),
        bottles=json.dumps({x.code: [x.dye_name, bottle_trouble(x)] for x in bottles}),
        elsewhere_ms=_elsewhere_ms(bath, every),
        things=json.dumps(next_wire(things)),
        bar=next_bar(things, number),
        undo_key=uuid4(),
        undo_first=undoable[0] if undoable else "",
        standing=" ".join(undoable),
        is_new=not bath.standing,
        is_over=bath.status in _OVER,
        panels=panels(
            bath,
            bottles,
            now_key=now_key,
            view=first_view(bath, now_key, asked_view),
            seen=seen,
        ),
        round=tuple(_row(bath, *x, now_key) for x in enumerate(bath.steps, start=1)),
        written=tuple(written(bath, x) for x in bath.standing),
        doubles=tuple(_double(bath, x) for x in bath.steps if x.is_double),
        deviation=deviation_note(bath),
        cup=cup_note(bath),
        late_acid=late_acid(bath),
        over=OVER,
        under=UNDER,
        shows_round=view == "round",
        fault=fault,
    )


def _step_at_hand(bath: BathNow, asked: str) -> str:
    if any(each.step.key == asked for each in bath.steps):
        return asked
    at_hand = bath.next_step or bath.steps[-1]
    return at_hand.step.key


def _fact(bath: BathNow) -> str:
    skeins = counted(bath.skeins, "skein") if bath.skeins else ""
    place = " on ".join(part for part in (bath.pot_name, bath.source_name) if part)
    parts = (
        bath.number,
        bath.base_name,
        amount_text(bath.fibre_g, "g"),
        skeins,
        place,
    )
    return " · ".join(part for part in parts if part)


def _mark(bath: BathNow) -> str:
    newest = bath.lines[0].deed if bath.lines else ""
    return f"{len(bath.lines)}-{newest}"


def _elsewhere_ms(bath: BathNow, every: tuple[BathNow, ...]) -> int:
    """Return when the newest line of any other pot was written."""
    others = (x.lines[0].at for x in every if x.number != bath.number and x.lines)
    return max((millis(at) for at in others), default=0)


def _row(bath: BathNow, number: int, each: StepNow, now_key: str) -> RoundRow:
    step = each.step
    words = step.title
    if step.amount is not None:
        words += f" {amount_text(step.amount, step.unit)}"
    if each.ticks:
        words = line_words(bath, each.ticks[0])
    state = "done" if each.is_done else "now" if step.key == now_key else "to come"
    return RoundRow(key=step.key, number=number, words=words, state=state)


def _double(bath: BathNow, each: StepNow) -> DoubleTick:
    return DoubleTick(
        words=f"{each.step.title} was ticked {len(each.ticks)} times. "
        "Was it done once? Then take the other back.",
        ticks=tuple(written(bath, tick) for tick in each.ticks),
    )
