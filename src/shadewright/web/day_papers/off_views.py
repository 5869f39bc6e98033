"""Is everything off? Each burner to look at, and the key that says so."""

from datetime import date

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse

from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.day_papers.forms import OffForm
from shadewright.web.day_papers.pages import OffPage, SourceRow
from shadewright.web.dye_days.crumbs import crumbs_of
from shadewright.web.dye_days.words import clock
from shadewright.web.frame import person_id
from shadewright.web.named_days import named_day
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, Chip
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows.bath_pages import BathAct, open_baths
from shadewright.workflows.bath_shapes import BathNow, BathStatus
from shadewright.workflows.days.all_off import source_names
from shadewright.workflows.days.day_ledger import DayEntry, day_ledger, say_all_off
from shadewright.workflows.days.room_clocks import on_the_heat
from shadewright.workflows.stamps import stamp_now

_ON = Chip(words="on, as ticked", kind="problem")
_OFF = Chip(words="off, as ticked")
_LOOK = Caution(
    title="The records cannot see a burner",
    text="Look at each one: knob, plug, gas valve. A pot stays hot for hours: nobody "
    "carries it, and no child or pet comes near it. Close powder and acid and put them "
    "out of reach. Follow your local rules.",
)


def off(request: HttpRequest, day: date) -> HttpResponse:
    """Ask whether everything is off; one tap says so."""
    every = open_baths()
    hot = on_the_heat(every)
    form = OffForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        try:
            say_all_off(day, hot=[bath.called for bath in hot], stamp=stamp)
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, "All off", undo=reverse("undo", args=[stamp.deed]))
            after = reverse("day-after", args=[day])
            return HttpResponseRedirect(way_back(request, otherwise=after))
    status = 422 if request.method == "POST" else 200
    return show(request, _page(day, form, every), status=status)


def _page(day: date, form: OffForm, every: tuple[BathNow, ...]) -> OffPage:
    said, hot = day_ledger(day).all_off, on_the_heat(every)
    return OffPage(
        title="Is everything off?",
        fact=named_day(day),
        crumbs=crumbs_of(day),
        form=form,
        sources=tuple(
            _source(name, power_kw, hot) for name, power_kw in source_names()
        ),
        hot=tuple(
            Link(words=bath.called, address=reverse("bench", args=[bath.number]))
            for bath in hot
        ),
        overnight=tuple(bath.called for bath in every if _cools(bath)),
        cautions=(_LOOK,),
        said="" if said is None else _said(said),
    )


def _cools(bath: BathNow) -> bool:
    """Whether its yarn still lies in its pot."""
    is_out = any(line.act in {BathAct.HUNG, BathAct.DRY} for line in bath.standing)
    return bath.status is BathStatus.COOLING and not is_out


def _source(name: str, power_kw: float, hot: tuple[BathNow, ...]) -> SourceRow:
    on = [bath.called for bath in hot if bath.source_name == name]
    power = amount_text(power_kw, "kW")
    return SourceRow(
        name=name,
        said=f"{power}, {', '.join(on)}" if on else power,
        state=_ON if on else _OFF,
    )


def _said(entry: DayEntry) -> str:
    by = f" by {entry.by}" if entry.by else ""
    return f"Said at {clock(entry.at)}{by}."
