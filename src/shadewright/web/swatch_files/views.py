"""Look at a file of swatches line by line, keep its good lines, take all away."""

from dataclasses import replace

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from shadewright.errors import OutOfRangeError, StudioError
from shadewright.web.evidence.background import refit_soon
from shadewright.web.frame import person_id
from shadewright.web.pages import show
from shadewright.web.swatch_files.forms import FileForm, LinesForm, asked_keys
from shadewright.web.swatch_files.found import Found, found_in, lines_of
from shadewright.web.swatch_files.pages import FilePage
from shadewright.web.swatch_files.showing import lines_page
from shadewright.web.swatches.words import CRUMBS
from shadewright.web.toasts import say
from shadewright.workflows.shades.keeping_files import (
    MOST_NEW_NAMES,
    NewNames,
    all_swatches_text,
    keep_lines,
    new_names,
)
from shadewright.workflows.shades.kinds import ReadBy
from shadewright.workflows.shades.swatch_files import FileLine
from shadewright.workflows.shades.swatches import swatches_now
from shadewright.workflows.stamps import stamp_now, today

_NO_NAMES = NewNames(bases=(), dyes=())
_SAY_FIRST = "Nothing is kept yet: say first what the new names mean."
_LEFT = "These lines are left: mend them in the text, or take them away as CSV."


@require_http_methods(["GET", "POST"])
def files(request: HttpRequest) -> HttpResponse:
    """Ask for a file; show its lines; keep the good ones."""
    if request.method != "POST":
        return _ask(request, FileForm())
    form = FileForm(request.POST, request.FILES)
    if not form.is_valid():
        return _ask(request, form)
    try:
        found = found_in(
            form.cleaned_data["text"], hex_by=ReadBy(form.cleaned_data["hex_by"])
        )
    except StudioError as error:
        form.refuse(error)
        return _ask(request, form)
    if request.POST.get("go") == "mend" and found.to_mend:
        return _csv(found.to_mend, name="lines-to-mend")
    return _lines(request, form, found)


@require_safe
def take_away(_request: HttpRequest) -> HttpResponse:
    """Hand out every swatch that was read, as a table."""
    return _csv(all_swatches_text(), name=f"swatches-{today():%Y-%m-%d}")


def _lines(request: HttpRequest, form: FileForm, found: Found) -> HttpResponse:
    typed = {} if request.FILES else request.POST.dict()
    try:
        lines = lines_of(found, typed)
        names = _names(found, lines)
    except StudioError as error:
        sent = request.POST.dict() | {"text": form.cleaned_data["text"]}
        asked = LinesForm(sent, found=found, names=_NO_NAMES)
        asked.refuse(error)
        return show(request, lines_page(asked, found), status=422)
    wants = typed.get("go") == "keep"
    if wants and all(key in typed for key in asked_keys(names)):
        asked = LinesForm(request.POST, found=found, names=names)
        if asked.is_valid() and _keep(request, asked, lines):
            return _after(request, form, found)
        return show(request, lines_page(asked, found), status=422)
    sent = form.cleaned_data
    asked = LinesForm(
        initial=typed | {"text": sent["text"], "hex_by": sent["hex_by"]},
        found=found,
        names=names,
    )
    page = lines_page(asked, found)
    return show(request, replace(page, fact=_SAY_FIRST) if wants else page)


def _names(found: Found, lines: tuple[FileLine, ...]) -> NewNames:
    names = new_names(lines)
    count = len(names.bases) + len(names.dyes)
    if count > MOST_NEW_NAMES:
        raise OutOfRangeError(
            name="The names that are new here",
            given=str(count),
            allowed=f"at most {MOST_NEW_NAMES}",
            advice="Add the dyes first, or cut the file in two.",
            argument="text",
        )
    return replace(names, bases=()) if found.samples else names


def _keep(request: HttpRequest, asked: LinesForm, lines: tuple[FileLine, ...]) -> bool:
    deed = asked.cleaned_data["deed"]
    stamp = stamp_now(by=person_id(request), deed=deed)
    try:
        kept = keep_lines(lines, names=asked.said(), stamp=stamp)
    except StudioError as error:
        asked.refuse(error)
        return False
    said = "1 swatch is kept" if kept == 1 else f"{kept} swatches are kept"
    refit_soon(why=f"{said}, out of a file")
    say(request, said, undo=reverse("undo", args=[deed]))
    return True


def _after(request: HttpRequest, form: FileForm, found: Found) -> HttpResponse:
    """Go on to the swatches, or stay with the lines that are to be mended."""
    if not found.to_mend:
        return redirect("swatches")
    hex_by = form.cleaned_data["hex_by"]
    rest = found_in(found.to_mend, hex_by=ReadBy(hex_by))
    initial = {"text": found.to_mend, "hex_by": hex_by}
    asked = LinesForm(initial=initial, found=rest, names=_NO_NAMES)
    return show(request, replace(lines_page(asked, rest), fact=_LEFT))


def _ask(request: HttpRequest, form: FileForm) -> HttpResponse:
    page = FilePage(
        title="Swatches from a file",
        fact="Every line is shown before one is kept.",
        crumbs=CRUMBS,
        form=form,
        has_swatches=bool(swatches_now()),
    )
    return show(request, page, status=422 if form.errors else 200)


def _csv(text: str, *, name: str) -> HttpResponse:
    answer = HttpResponse(text, content_type="text/csv; charset=utf-8")
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}.csv"'
    return answer
