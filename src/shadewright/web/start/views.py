"""Found the studio; say who works in it."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from shadewright.core.baths.heating import boiling_point_c
from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.pages import show
from shadewright.web.start.forms import (
    AltitudeForm,
    FoundForm,
    PersonForm,
    RateForm,
)
from shadewright.web.start.pages import PeoplePage, StartPage
from shadewright.web.toasts import say
from shadewright.workflows.people import add_person, people
from shadewright.workflows.studio import (
    found_studio,
    set_altitude,
    set_rate,
    studio,
)


@require_http_methods(["GET", "POST"])
def start(request: HttpRequest) -> HttpResponse:
    """Ask what a new studio needs, and found it."""
    if studio() is not None:
        return HttpResponseRedirect(reverse("shelf"))
    form = FoundForm(request.POST or None)
    if form.is_valid() and _founded(request, form):
        return HttpResponseRedirect(reverse("shelf"))
    page = StartPage(
        title="Begin your studio",
        fact="Three lines, then your shelf.",
        form=form,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def who_works_here(request: HttpRequest) -> HttpResponse:
    """List the people, and let somebody join."""
    form = PersonForm(request.POST or None)
    if form.is_valid() and _joined(request, form):
        return HttpResponseRedirect(reverse("people"))
    page = _people_page(form, _rate_form())
    return show(request, page, status=422 if form.errors else 200)


@require_POST
def rate(request: HttpRequest) -> HttpResponse:
    """Set what an hour of work is worth, or that none is reckoned."""
    form = RateForm(request.POST)
    if form.is_valid() and _rated(request, form):
        return HttpResponseRedirect(reverse("people"))
    return show(request, _people_page(PersonForm(), form), status=422)


@require_POST
def altitude(request: HttpRequest) -> HttpResponse:
    """Set how high the studio stands; higher up, water boils sooner."""
    form = AltitudeForm(request.POST)
    if form.is_valid():
        set_altitude(form.cleaned_data["altitude_m"] or 0.0)
        say(request, "How high the studio stands is written down")
        return HttpResponseRedirect(reverse("people"))
    page = _people_page(PersonForm(), _rate_form(), form)
    return show(request, page, status=422)


def _people_page(
    form: PersonForm, rate_form: RateForm, altitude_form: AltitudeForm | None = None
) -> PeoplePage:
    here_m = _altitude_m()
    boils_c = boiling_point_c(altitude_m=here_m)
    return PeoplePage(
        title="People",
        fact="Each line of a ledger says who wrote it.",
        people=people(),
        form=form,
        rate_form=rate_form,
        altitude_form=altitude_form or AltitudeForm(initial={"altitude_m": here_m}),
        boils_at=amount_text(boils_c, "°C"),
    )


def _altitude_m() -> float:
    here = studio()
    return 0.0 if here is None else here.altitude_m


def _rate_form() -> RateForm:
    here = studio()
    return RateForm(initial={"rate_per_hour": here and here.rate_per_hour})


def _rated(request: HttpRequest, form: RateForm) -> bool:
    try:
        set_rate(form.cleaned_data["rate_per_hour"])
    except StudioError as error:
        form.refuse(error)
        return False
    say(request, "What an hour is worth is written down")
    return True


def _founded(request: HttpRequest, form: FoundForm) -> bool:
    try:
        facts = found_studio(**form.cleaned_data)
    except StudioError as error:
        form.refuse(error)
        return False
    say(request, f"{facts.name} is founded")
    return True


def _joined(request: HttpRequest, form: PersonForm) -> bool:
    try:
        person = add_person(form.cleaned_data["name"])
    except StudioError as error:
        form.refuse(error)
        return False
    say(request, f"{person.name} has joined")
    return True
