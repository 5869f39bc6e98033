"""What is wished of a bath within its day, by a form or by dragging its bar."""

from datetime import date, time

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_http_methods

from shadewright.errors import ConflictError, NotFoundError, StudioError
from shadewright.web.dye_days.crumbs import crumbs_of
from shadewright.web.dye_days.forms import DeedOnlyForm, WishForm, said_flag, said_time
from shadewright.web.dye_days.pages import BathOfDayPage
from shadewright.web.dye_days.plan_views import outcome_words
from shadewright.web.dye_days.words import clock
from shadewright.web.frame import person_id
from shadewright.web.pages import show
from shadewright.web.toasts import say
from shadewright.workflows.days.day_now import DayBath, DayNow, day_now
from shadewright.workflows.days.pinning import WishSaid, keep_wish, pin_place
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import stamp_now


@require_http_methods(["GET", "POST"])
def bath_of_day(request: HttpRequest, day: date, number: str) -> HttpResponse:
    """Show what is wished of a bath; a form that is sent keeps it and plans anew."""
    now = day_now(day)
    bath = _bath(now, number)
    if request.method != "POST":
        return show(request, _page(now, bath, WishForm(initial=_initial(bath))))
    if request.POST.get("act") == "drag":
        return _dragged(request, now, bath)
    form = WishForm(request.POST)
    if form.is_valid():
        try:
            keep_wish(day=day, number=number, wish=WishSaid(**form.said()))
            return _planned_anew(request, now, bath)
        except StudioError as error:
            form.refuse(error)
    return show(request, _page(now, bath, form), status=422)


def _dragged(request: HttpRequest, now: DayNow, bath: DayBath) -> HttpResponse:
    """Pin a bath where its bar was dropped."""
    try:
        at = time.fromisoformat(request.POST.get("starts_at", "")).replace(tzinfo=None)
    except ValueError:
        raise ConflictError(why="The bar was dropped beside the day.") from None
    pin_place(
        day=now.day,
        number=bath.number,
        source=request.POST.get("source", ""),
        starts_at=at,
    )
    return _planned_anew(request, now, bath)


def _planned_anew(request: HttpRequest, now: DayNow, bath: DayBath) -> HttpResponse:
    """Plan the day again if it was planned; else only the wish is kept."""
    if now.schedule is None:
        say(request, f"Kept for {bath.called}; the plan will respect it")
        return redirect("day", now.day)
    sent = DeedOnlyForm(request.POST)
    deed = sent.cleaned_data["deed"] if sent.is_valid() else None
    stamp = stamp_now(by=person_id(request), deed=deed)
    made = make_plan(day=now.day, stamp=stamp, why=f"{bath.called} was pinned")
    say(request, outcome_words(made))
    return redirect("day", now.day)


def _bath(now: DayNow, number: str) -> DayBath:
    found = next((each for each in now.baths if each.number == number), None)
    if found is None:
        raise NotFoundError(kind="bath of this day", key=number, argument="number")
    return found


def _initial(bath: DayBath) -> dict[str, object]:
    wish = bath.wish
    return {
        "pot": str(wish.pot_id or ""),
        "source": str(wish.source_id or ""),
        "starts_at": said_time(wish.starts_at),
        "due_at": said_time(wish.due_at),
        "night": said_flag(wish.is_overnight),
        "stay": said_flag(wish.cools_on_source),
        "is_steamed": wish.is_steamed,
        "family": wish.family,
    }


def _page(now: DayNow, bath: DayBath, form: WishForm) -> BathOfDayPage:
    return BathOfDayPage(
        title=f"Wishes of {bath.called}",
        fact="What you leave empty the plan chooses.",
        crumbs=crumbs_of(now.day),
        form=form,
        stands=_stands(now, bath),
        bath=bath.number,
        day=now.day,
    )


def _stands(now: DayNow, bath: DayBath) -> str:
    planned = None if now.schedule is None else now.schedule.bath(bath.number)
    if planned is None:
        return "It stands in no plan yet."
    where = " on ".join(x for x in (planned.pot, planned.source) if x)
    return f"Now planned from {clock(planned.stages[0].starts_at)} in {where}."
