"""When a day opens and who is in; the dye room and its habits."""

from dataclasses import asdict
from datetime import date

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.dye_days.crumbs import crumbs_of, days_crumb
from shadewright.web.dye_days.forms import HoursForm, said_time
from shadewright.web.dye_days.pages import HoursPage, RoomPage
from shadewright.web.dye_days.people_lines import people_text, read_people
from shadewright.web.dye_days.room_form import RoomForm
from shadewright.web.frame import person_id
from shadewright.web.named_days import named_day
from shadewright.web.pages import show
from shadewright.web.toasts import say
from shadewright.workflows.days.day_now import DayNow, day_now
from shadewright.workflows.days.hours import HoursSaid, keep_hours
from shadewright.workflows.days.room import keep_room, room_now
from shadewright.workflows.stamps import stamp_now


@require_http_methods(["GET", "POST"])
def hours(request: HttpRequest, day: date) -> HttpResponse:
    """Show and keep a day's hours and its people."""
    now = day_now(day)
    form = HoursForm(request.POST) if request.method == "POST" else _form(now)
    if request.method == "POST" and form.is_valid():
        try:
            _kept(request, day, form)
        except StudioError as error:
            form.refuse(error)
        else:
            more = "" if now.schedule is None else ". Replan for it to count"
            say(request, f"Hours and people are kept{more}")
            return redirect("day", day)
    page = HoursPage(
        title="Hours and people",
        fact=f"{named_day(day)}. What you leave as it is stays as the room has it.",
        crumbs=crumbs_of(day),
        form=form,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def room(request: HttpRequest) -> HttpResponse:
    """Show and keep the dye room's usual day."""
    form = RoomForm(request.POST) if request.method == "POST" else _room_form()
    if request.method == "POST" and form.is_valid():
        try:
            keep_room(form.room())
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, "The dye room is kept")
            return redirect("days")
    page = RoomPage(
        title="The dye room",
        fact="Its usual day; a day may have its own hours and people.",
        crumbs=days_crumb(),
        form=form,
    )
    return show(request, page, status=422 if form.errors else 200)


def _kept(request: HttpRequest, day: date, form: HoursForm) -> None:
    sent = form.cleaned_data
    keep_hours(
        day=day,
        said=HoursSaid(
            opens_at=sent["opens_at"],
            closes_at=sent["closes_at"],
            people=read_people(sent["people"]),
            sinks=sent["sinks"],
            rack_slots=sent["rack_slots"],
            rack_used=sent["rack_used"],
        ),
        stamp=stamp_now(by=person_id(request)),
    )


def _form(now: DayNow) -> HoursForm:
    return HoursForm(
        initial={
            "opens_at": said_time(now.opens_at),
            "closes_at": said_time(now.closes_at),
            "people": people_text(now.people) if now.are_people_said else "",
            "sinks": now.sinks,
            "rack_slots": now.rack_slots,
            "rack_used": now.rack_used,
        }
    )


def _room_form() -> RoomForm:
    known = asdict(room_now())
    whole = {"washout_min", "dry_hours", "pack_days", "look_every_min"}
    said = {
        name: round(value) if name in whole else value for name, value in known.items()
    }
    said |= {name: said_time(known[name]) for name in ("opens_at", "closes_at")}
    return RoomForm(initial=said)
