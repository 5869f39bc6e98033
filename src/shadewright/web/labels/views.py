"""Print labels, and find a bottle by its label."""

from collections.abc import Callable
from typing import Any
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_safe

from shadewright.errors import MissingError, StudioError
from shadewright.exchange import Scanned
from shadewright.web.forms import StudioForm
from shadewright.web.labels.forms import CodeForm, LabelsForm, PhotoForm
from shadewright.web.labels.pages import FindPage, LabelsPage
from shadewright.web.pages import Link, show
from shadewright.web.pdfs import pdf
from shadewright.web.shelf.tasks import bottle_address
from shadewright.workflows.finding import found_by_code, found_by_photo
from shadewright.workflows.labels import bottles_to_label, label_preview, print_labels
from shadewright.workflows.shelf import shelf, shelf_bottle

FIRST_FORMAT = "a4-21"
SHELF = Link(words="Shelf", address="/shelf/")
_FORMAT_KEY = "label_format"


def labels(request: HttpRequest) -> HttpResponse:
    """Choose bottles and paper; the answer to the form is the PDF."""
    if request.method != "POST":
        return show(request, _labels_page(LabelsForm(initial=_usual(request))))
    form = LabelsForm(request.POST)
    if form.is_valid():
        chosen = form.cleaned_data
        try:
            return _printed(
                request, chosen["codes"], chosen["format"], chosen["skip_first"]
            )
        except StudioError as error:
            form.refuse(error)
    return show(request, _labels_page(form), status=422)


@require_safe
def preview(request: HttpRequest) -> HttpResponse:
    """Answer with a picture of the first page that these choices would print."""
    form = LabelsForm(request.GET)
    if not form.is_valid():
        raise MissingError(name="The preview", advice="Tick a bottle first.")
    chosen = form.cleaned_data
    picture = label_preview(
        codes=chosen["codes"],
        format_key=chosen["format"],
        skip_first=chosen["skip_first"],
    )
    return HttpResponse(picture, content_type="image/png")


@require_GET
def bottle_label(request: HttpRequest, code: str) -> HttpResponse:
    """Answer with one bottle's label, in the format asked for or used last.

    A browser that never printed one is asked for its paper first. That it was
    printed is remembered even though this is a GET: it is true, and twice is once.
    """
    bottle = shelf_bottle(code)
    used = request.session.get(_FORMAT_KEY, "")
    asked = request.GET.get("format", used)
    if not asked:
        return redirect(f"{reverse('labels')}?{urlencode({'codes': bottle.code})}")
    return _printed(request, [bottle.code], asked, 0)


def find(request: HttpRequest) -> HttpResponse:
    """Open the bottle or the bath whose code is typed or photographed."""
    if request.method != "POST":
        return show(request, _find_page(CodeForm(), PhotoForm()))
    if "by" in request.POST or request.FILES:
        photo = PhotoForm(request.POST, request.FILES)
        return _opened(photo, _by_photo) or show(
            request, _find_page(CodeForm(), photo), status=422
        )
    code = CodeForm(request.POST)
    return _opened(code, _by_code) or show(
        request, _find_page(code, PhotoForm()), status=422
    )


def _opened(
    form: StudioForm, find_it: Callable[[dict[str, Any]], Scanned]
) -> HttpResponse | None:
    """Lead to what was found; nothing where the form or the records say no."""
    if not form.is_valid():
        return None
    try:
        found = find_it(form.cleaned_data)
    except StudioError as error:
        form.add_error(next(iter(form.fields)), error.sentence)
        return None
    is_bath = found.kind == "bath"
    return (
        redirect("bath", found.key) if is_bath else redirect(bottle_address(found.key))
    )


def _address(found: Scanned) -> str:
    is_bath = found.kind == "bath"
    return reverse("bath", args=[found.key]) if is_bath else bottle_address(found.key)


def _by_photo(typed: dict[str, Any]) -> Scanned:
    return found_by_photo(typed["photo"].read())


def _by_code(typed: dict[str, Any]) -> Scanned:
    return found_by_code(typed["code"])


def _printed(
    request: HttpRequest, codes: list[str], format_key: str, skip_first: int
) -> HttpResponse:
    sheet = print_labels(codes=codes, format_key=format_key, skip_first=skip_first)
    request.session[_FORMAT_KEY] = format_key
    return pdf(sheet, name=f"bottle labels {' '.join(codes[:12])}")


def _usual(request: HttpRequest) -> dict[str, object]:
    asked = request.GET
    used = request.session.get(_FORMAT_KEY, FIRST_FORMAT)
    wanting = [bottle.code for bottle in bottles_to_label()]
    return {
        "codes": asked.getlist("codes") if asked else wanting,
        "format": asked.get("format", used),
        "skip_first": asked.get("skip_first", "0"),
    }


def _labels_page(form: LabelsForm) -> LabelsPage:
    return LabelsPage(
        title="Bottle labels",
        fact="Those that want a label are ticked: new bottles, and stock whose "
        "strength has changed.",
        crumbs=(SHELF,),
        form=form,
        preview=_preview_address(form),
        has_bottles=bool(shelf()),
    )


def _preview_address(form: LabelsForm) -> str:
    """Return where the picture of these choices is; nothing if there is none."""
    asked = {name: form[name].value() for name in ("codes", "format", "skip_first")}
    if not LabelsForm(asked).is_valid():
        return ""
    return f"{reverse('labels-preview')}?{urlencode(asked, doseq=True)}"


def _find_page(code: CodeForm, photo: PhotoForm) -> FindPage:
    return FindPage(
        title="Open a bottle or a bath",
        fact="By the code on its label or the number on its card, or by a photo.",
        crumbs=(SHELF,),
        code=code,
        photo=photo,
    )
