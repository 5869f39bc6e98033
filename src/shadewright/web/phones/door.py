"""The door: the one page for a device that is not paired."""

from django.conf import settings
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError, TooManyTriesError
from shadewright.web import guests
from shadewright.web.frame import Frame
from shadewright.web.pages import show
from shadewright.web.phones.forms import DoorForm
from shadewright.web.phones.pages import DoorPage
from shadewright.workflows import devices


@require_http_methods(["GET", "POST"])
def pair(request: HttpRequest) -> HttpResponse:
    """Ask for the desk's code and a name; right, the phone keeps its cookie."""
    if guests.is_at_the_desk(request):
        return HttpResponseRedirect(reverse("phones"))
    if guests.paired_device(request) is not None:
        return HttpResponseRedirect(reverse("today"))
    if request.method == "GET":
        return _door(request, DoorForm(initial={"code": request.GET.get("code", "")}))
    form = DoorForm(request.POST)
    if not form.is_valid():
        return _door(request, form, status=422)
    return _tried(request, form)


def _tried(request: HttpRequest, form: DoorForm) -> HttpResponse:
    try:
        token = devices.pair(**form.cleaned_data, address=request.META["REMOTE_ADDR"])
    except TooManyTriesError as error:
        form.refuse(error)
        return _slowed(_door(request, form, status=429), error.wait_s)
    except StudioError as error:
        form.refuse(error)
        return _door(request, form, status=422)
    answer = HttpResponseRedirect(reverse("today"))
    _give_cookie(answer, token)
    return answer


def _slowed(answer: HttpResponse, wait_s: int | None) -> HttpResponse:
    if wait_s is not None:
        answer.headers["Retry-After"] = str(wait_s)
    return answer


def _give_cookie(answer: HttpResponse, token: str) -> None:
    """Let the phone keep its token; plain http allows no ``Secure``."""
    answer.set_cookie(
        settings.PHONE_COOKIE_NAME,
        token,
        max_age=settings.PHONE_COOKIE_AGE,
        httponly=True,
        samesite="Strict",
    )


def _door(request: HttpRequest, form: DoorForm, *, status: int = 200) -> HttpResponse:
    """Show the door, with nothing of the studio around it."""
    page = DoorPage(
        title="Pair this phone",
        fact="At the computer that serves the studio: Today, Phones, Pair a phone.",
        form=form,
    )
    bare = Frame(is_demo=settings.IS_DEMO, address=request.path, places=())
    return show(request, page, status=status, frame=bare)
