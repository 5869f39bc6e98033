"""The page where a palette begins."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.core.quantities import counted
from shadewright.errors import StudioError
from shadewright.web.evidence.background import refit_soon
from shadewright.web.frame import person_id
from shadewright.web.pages import show
from shadewright.web.swatches.pages import BeginPage
from shadewright.web.swatches.start_form import MORE_ROWS, StartForm
from shadewright.web.swatches.words import SHADES
from shadewright.web.toasts import say
from shadewright.workflows.bases import bases
from shadewright.workflows.dyes import dyes
from shadewright.workflows.shades.starting import keep_start
from shadewright.workflows.stamps import stamp_now

USUAL_FIBRES = (
    "100 % wool",
    "75 % wool, 25 % nylon",
    "80 % wool, 20 % silk",
    "100 % silk",
    "100 % nylon",
)


@require_http_methods(["GET", "POST"])
def start(request: HttpRequest) -> HttpResponse:
    """Ask for a swatch of each dye, keep them all, and fit the first palette."""
    if request.method != "POST":
        return show(request, _page(StartForm(initial=asked_base(request))))
    if request.POST.get("act") == "more":
        return show(request, _page(_longer(request)))
    form = StartForm(request.POST)
    base_id = _kept(request, form) if form.is_valid() else None
    if base_id is None:
        return show(request, _page(form), status=422)
    return redirect("palette", base_id)


def asked_base(request: HttpRequest) -> dict[str, str]:
    """Return the yarn that the address names by its number, for the form."""
    number = request.GET.get("base", "")
    named = next((each for each in bases() if str(each.id) == number), None)
    return {} if named is None else {"base": named.name}


def _longer(request: HttpRequest) -> StartForm:
    typed: dict[str, Any] = request.POST.dict()
    count = StartForm(initial=typed).count
    return StartForm(initial={**typed, "rows": count + MORE_ROWS})


def _kept(request: HttpRequest, form: StartForm) -> int | None:
    deed = form.cleaned_data["deed"]
    words = form.words()
    try:
        kept = keep_start(
            words=words, stamp=stamp_now(by=person_id(request), deed=deed)
        )
    except StudioError as error:
        form.refuse(error)
        return None
    entered = f"{counted(len(kept.swatches), 'swatch', 'swatches')} of {words.base}"
    refit_soon(why=entered)
    undo = reverse("undo", args=[deed])
    say(request, f"{entered} entered", undo=undo)
    return kept.base_id


def _page(form: StartForm) -> BeginPage:
    return BeginPage(
        title="Begin a palette",
        fact="One swatch of each dye is enough. Each more makes it surer.",
        crumbs=(SHADES,),
        form=form,
        dye_names=tuple(dye.name for dye in dyes()),
        base_names=tuple(base.name for base in bases()),
        usual_fibres=USUAL_FIBRES,
    )
