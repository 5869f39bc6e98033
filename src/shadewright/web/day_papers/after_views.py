"""How a day went: planned beside real, what differed, what it took and teaches."""

from datetime import date, datetime
from uuid import uuid5

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.timezone import localtime

from shadewright.core.quantities import NO_BREAK, amount_text, counted, number_text
from shadewright.errors import StudioError
from shadewright.web.baths.words import status_chip
from shadewright.web.day_papers.forms import ReadForm
from shadewright.web.day_papers.pages import (
    AfterPage,
    BathSide,
    EntryRow,
    FigureRow,
    SideRow,
)
from shadewright.web.day_papers.rack_words import drying_rows
from shadewright.web.day_papers.used_words import cautions, figures, spent_rows
from shadewright.web.dye_days.crumbs import crumbs_of
from shadewright.web.dye_days.words import clock
from shadewright.web.frame import person_id
from shadewright.web.named_days import named_day
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip
from shadewright.web.templatetags.house import moment
from shadewright.web.toasts import say
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.after import (
    BathWent,
    DayAfter,
    Lasted,
    Moment,
    day_after,
)
from shadewright.workflows.days.day_ledger import DayAct, DayEntry, write_day
from shadewright.workflows.days.stage_times import FEWEST, StageTime, StageTimes
from shadewright.workflows.stamps import stamp_now

_OPEN = {BathStatus.PLANNED, BathStatus.GOING, BathStatus.COOLING}
_METER_DIGITS = 9
_PAPERS = (
    ("Day sheet", "day-sheet"),
    ("Soak list", "soak-list"),
    ("Pull list", "pull-list"),
    ("Cards", "day-cards"),
)

_OF_WAITING = {"soak-list", "pull-list"}
"""Papers of baths that have not begun."""


def after(request: HttpRequest, day: date) -> HttpResponse:
    """Show how a day went; what is sent is a reading or a note of it."""
    form = ReadForm(request.POST or None)
    if request.method != "POST":
        return show(request, _page(day, form))
    if form.is_valid():
        try:
            count = _write(request, day, form)
        except StudioError as error:
            form.refuse(error)
        else:
            say(
                request, f"{counted(count, 'line')} written" if count else "Nothing new"
            )
            return HttpResponseRedirect(reverse("day-after", args=[day]))
    return show(request, _page(day, form), status=422)


def _write(request: HttpRequest, day: date, form: ReadForm) -> int:
    typed, by = form.cleaned_data, person_id(request)
    lines = (
        ("water", DayAct.WATER, typed["water"], ""),
        ("power", DayAct.POWER, typed["power"], ""),
        ("note", DayAct.NOTE, None, typed["note"]),
    )
    kept = [line for line in lines if line[2] is not None or line[3]]
    for name, act, value, note in kept:
        stamp = stamp_now(by=by, deed=uuid5(typed["deed"], name))
        try:
            write_day(day, act, value=value, note=note, stamp=stamp)
        except StudioError as error:
            error.argument = name
            raise
    return len(kept)


def _page(day: date, form: ReadForm) -> AfterPage:
    found = day_after(day)
    waits = any(each.status is BathStatus.PLANNED for each in found.baths)
    return AfterPage(
        title=f"How it went: {named_day(day)}",
        fact=_fact(found),
        crumbs=crumbs_of(day),
        papers=tuple(
            Link(words=words, address=reverse(name, args=[day]))
            for words, name in _PAPERS
            if name not in _OF_WAITING or waits
        )
        if found.baths
        else (),
        baths=tuple(_bath(each, day) for each in found.baths),
        times=_times(found.times),
        hung=drying_rows(found.hung),
        figures=figures(found.use, found.ledger),
        spent=spent_rows(found.use),
        cautions=cautions(found.use),
        form=form,
        entries=tuple(_entry(each) for each in found.ledger.entries),
        off=_off(found),
        off_address=reverse("day-off", args=[day]),
    )


def _fact(found: DayAfter) -> str:
    if not found.baths:
        return "No bath was planned for this day."
    finished = sum(each.status is BathStatus.FINISHED for each in found.baths)
    said = f"{finished} of {counted(len(found.baths), 'bath')} finished"
    last = found.last_off
    if last.real is None:
        return f"{said}."
    off = f"{said}, the last heat off at {clock(last.real)}"
    return f"{off}, {last.differs}." if last.differs else f"{off}."


def _bath(each: BathWent, day: date) -> BathSide:
    rows = (*(_moment(x, day) for x in each.moments), *map(_lasted, each.lengths))
    return BathSide(
        address=reverse("bath", args=[each.number]),
        called=each.called,
        state=status_chip(each.status),
        in_short=_in_short(each),
        rows=tuple(row for row in rows if row.planned or row.real),
        differs=each.differs,
        card=reverse("type-card", args=[each.number]) if each.status in _OPEN else "",
    )


def _in_short(each: BathWent) -> str:
    """Return how late its heat went off, and how much else differed."""
    if each.status is BathStatus.PLANNED:
        return ""
    off = each.moments[2].differs
    said = (
        f"heat off {off}" if off else "",
        f"{counted(len(each.differs), 'thing')} differed" if each.differs else "",
    )
    return ", ".join(part for part in said if part)


def _moment(each: Moment, day: date) -> SideRow:
    return SideRow(
        what=each.what,
        planned=_clock(each.planned, day),
        real=_clock(each.real, day),
        differs=each.differs,
    )


def _clock(at: datetime | None, day: date) -> str:
    if at is None:
        return ""
    return clock(at) if localtime(at).date() == day else moment(at)


def _lasted(each: Lasted) -> SideRow:
    return SideRow(
        what=each.what,
        planned=each.words(each.planned),
        real=each.words(each.real),
        differs=each.differs,
    )


def _times(times: StageTimes) -> tuple[FigureRow, ...]:
    said = (
        ("Filling, a litre", times.fill_min_per_l),
        ("A dose", times.dose_min),
        ("The look before heat off", times.check_min),
        ("Rinsing and hanging, a skein", times.rinse_min_per_skein),
        ("Cooling before the rinse", times.cool_min),
    )
    return tuple(
        FigureRow(
            what=what,
            much=amount_text(round(time.minutes, 1), "min"),
            rests_on=_rests_on(time),
        )
        for what, time in said
    )


def _rests_on(time: StageTime) -> str:
    if time.is_learned:
        return f"The median of {counted(time.rests_on, 'timing')} of yours."
    return (
        f"A usual value, a guess: {counted(time.rests_on, 'timing')} of yours so far, "
        f"{FEWEST} are wanted."
    )


def _entry(each: DayEntry) -> EntryRow:
    read = "" if each.value is None else number_text(each.value, digits=_METER_DIGITS)
    amount = f" {read}{NO_BREAK}{each.unit}" if read else ""
    note = f": {each.note}" if each.note else ""
    return EntryRow(
        deed=each.deed,
        at=moment(each.at),
        words=f"{each.act.label}{amount}{note}",
        by=each.by,
        is_undone=each.is_undone,
        may_undo=each.may_undo,
    )


def _off(found: DayAfter) -> Chip:
    said = found.ledger.all_off
    if said is None:
        return Chip(words="not said yet", kind="caution")
    return Chip(words=f"said at {clock(said.at)}", kind="good")
