"""Plan a day, plan it anew from now, look for a better plan, say what is out."""

from datetime import date

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_http_methods

from shadewright.core.quantities import amount_text, counted
from shadewright.errors import ConflictError, StudioError
from shadewright.web.asking import number_of
from shadewright.web.dye_days import patience
from shadewright.web.dye_days.crumbs import crumbs_of
from shadewright.web.dye_days.day_page import day_page, held_words
from shadewright.web.dye_days.forms import DeedOnlyForm, OutForm
from shadewright.web.dye_days.pages import OutRow, ReplanPage
from shadewright.web.dye_days.words import clock
from shadewright.web.frame import person_id
from shadewright.web.named_days import named_day
from shadewright.web.pages import show
from shadewright.web.toasts import say
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.day_now import DayBath, DayNow, OutNow, day_now
from shadewright.workflows.days.hours import put_out, take_back
from shadewright.workflows.days.schedules import Schedule
from shadewright.workflows.days.scheduling import (
    check_can_plan,
    check_held,
    is_planned,
    make_plan,
)
from shadewright.workflows.stamps import Stamp, stamp_now, today

_GOING = {BathStatus.GOING, BathStatus.COOLING}


@require_http_methods(["GET", "POST"])
def plan(request: HttpRequest, day: date) -> HttpResponse:
    """Plan a day, or look for a better plan with patience; then show it."""
    form = DeedOnlyForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        act = request.POST.get("act", "plan")
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        if act == "patience":
            check_can_plan(day_now(day))
            patience.begin(day, stamp)
        elif act == "stop":
            patience.stop(day)
        else:
            try:
                _check_seen(day, form)
                _planned(request, day, stamp, form.cleaned_data["why"])
            except ConflictError as error:
                return _refused(request, day, error)
    return redirect("day", day)


@require_http_methods(["GET", "POST"])
def replan(request: HttpRequest, day: date) -> HttpResponse:
    """Say what is out and what is going, and plan the rest anew from now."""
    form = OutForm(request.POST if request.POST.get("act") == "out" else None)
    if request.method == "POST":
        act = request.POST.get("act", "")
        if act == "out" and not form.is_valid():
            return show(request, _page(day_now(day), form), status=422)
        try:
            return _changed(request, day, act, form)
        except StudioError as error:
            if act != "out":
                raise
            form.refuse(error)
            return show(request, _page(day_now(day), form), status=422)
    return show(request, _page(day_now(day), form))


def _changed(request: HttpRequest, day: date, act: str, form: OutForm) -> HttpResponse:
    """Do what was asked: something is out, or back, or the day is planned anew."""
    sent = DeedOnlyForm(request.POST)
    if not sent.is_valid():
        return redirect("day-replan", day)
    stamp = stamp_now(by=person_id(request), deed=sent.cleaned_data["deed"])
    why = sent.cleaned_data["why"]
    try:
        _check_seen(day, sent)
    except ConflictError as error:
        return _refused(request, day, error)
    if act == "out":
        why = _put_out(day, form, stamp)
    elif act == "back":
        number = number_of(
            request.POST.get("id", ""), kind="thing that is out", argument="id"
        )
        why = f"{take_back(day=day, outage_id=number)} is back"
    _planned(request, day, stamp, why)
    return redirect("day", day)


def _check_seen(day: date, form: DeedOnlyForm) -> None:
    """Refuse to plan over a plan that the page did not show; once sent, it is made."""
    held = form.cleaned_data["held"]
    if held is not None and not is_planned(form.cleaned_data["deed"]):
        check_held(day, held=held or None)


def _refused(request: HttpRequest, day: date, error: ConflictError) -> HttpResponse:
    """Show the day as it stands now, with the way on."""
    page = day_page(day_now(day), refused=error.sentence)
    return show(request, page, status=409)


def _put_out(day: date, form: OutForm, stamp: Stamp) -> str:
    kind, _, number = form.cleaned_data["thing"].partition("-")
    at, why = form.cleaned_data["starts_at"], form.cleaned_data["out_why"]
    name = put_out(
        day=day,
        pot_id=int(number) if kind == "pot" else None,
        source_id=int(number) if kind == "source" else None,
        starts_at=at,
        why=why,
        stamp=stamp,
    )
    since = f" from {clock(at)}" if at else ""
    return f"{name} is out{since}"


def _planned(request: HttpRequest, day: date, stamp: Stamp, why: str) -> None:
    made = make_plan(day=day, stamp=stamp, why=why)
    patience.forget(day)
    say(request, outcome_words(made))


def outcome_words(made: Schedule) -> str:
    """Return what a plan came to, in one line."""
    said = [f"{counted(len(made.baths), 'bath')} planned, the last until "]
    said[0] += clock(made.ends_at)
    if made.left_out:
        count = len(made.left_out)
        said.append(f"{count} {'does' if count == 1 else 'do'} not fit in")
    changes = len(made.plan.get("changes", ()))
    if changes:
        said.append(
            f"{changes} stand{'s' if changes == 1 else ''} elsewhere than before"
        )
    return "; ".join(said)


def _page(now: DayNow, form: OutForm) -> ReplanPage:
    is_today = now.day == today()
    return ReplanPage(
        title="Replan from now" if is_today else "Plan it anew",
        fact=f"{named_day(now.day)}. What is on the heat stays, the rest is planned "
        "anew, with as little change as can be.",
        crumbs=crumbs_of(now.day),
        day=now.day,
        deed=stamp_now(by=None).deed,
        held=held_words(now),
        going=tuple(_going(each) for each in now.baths if each.status in _GOING),
        outs=tuple(OutRow(id=each.id, words=_out(each)) for each in now.outages),
        form=form,
    )


def _going(bath: DayBath) -> str:
    where = " on ".join(x for x in (bath.pot_name, bath.source_name) if x)
    litres = amount_text(bath.liquor_l, "l")
    return f"{bath.called}: {bath.status.value}, {litres}{where and f' in {where}'}."


def _out(each: OutNow) -> str:
    since = f"from {clock(each.starts_at)}" if each.starts_at else "all day"
    return f"{each.name} is out {since}{each.why and f': {each.why}'}"
