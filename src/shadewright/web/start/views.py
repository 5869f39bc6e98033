"""Found the studio; say who works in it."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.pages import show
from shadewright.web.start.forms import FoundForm, PersonForm
from shadewright.web.start.pages import PeoplePage, StartPage
from shadewright.web.toasts import say
from shadewright.workflows.people import add_person, people
from shadewright.workflows.studio import found_studio, studio


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
    page = PeoplePage(
        title="People",
        fact="Each line of a ledger says who wrote it.",
        people=people(),
        form=form,
    )
    return show(request, page, status=422 if form.errors else 200)


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
