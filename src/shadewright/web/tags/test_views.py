"""Bleed and rub tests of a lot."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from shadewright.errors import StudioError
from shadewright.web.frame import person_id
from shadewright.web.lot_crumbs import lot_crumbs
from shadewright.web.pages import show
from shadewright.web.photos import jpeg
from shadewright.web.tags.forms import TestForm
from shadewright.web.tags.pages import LotTestsPage, TestRow
from shadewright.web.toasts import say
from shadewright.workflows.judging.fastness import (
    STEPS,
    FastnessNow,
    cloth_photo,
    fastness_of,
    keep_test,
)
from shadewright.workflows.stamps import stamp_now


@require_http_methods(["GET", "POST"])
def lot_tests(request: HttpRequest, number: str) -> HttpResponse:
    """Show a lot's tests, and write one down."""
    form = TestForm()
    if request.method == "POST":
        form = TestForm(request.POST, request.FILES)
        if form.is_valid() and _kept(request, number, form):
            return HttpResponseRedirect(reverse("lot-tests", args=[number]))
    page = LotTestsPage(
        title=f"Bleed and rub tests of {number}",
        fact="Before it is sold, on a snip of yarn.",
        crumbs=lot_crumbs(number),
        number=number,
        rows=tuple(map(_row, fastness_of(number))),
        form=form,
        steps=tuple((str(kind.label), words) for kind, words in STEPS.items()),
        own=reverse("lot-tests", args=[number]),
    )
    return show(request, page, status=422 if form.errors else 200)


@require_safe
def cloth(_request: HttpRequest, number: str, test_id: int) -> HttpResponse:
    """Send the photo of a test's cloths: always a JPEG that was drawn here."""
    return jpeg(cloth_photo(number, test_id), name=f"cloths-{test_id}")


def _kept(request: HttpRequest, number: str, form: TestForm) -> bool:
    deed = form.cleaned_data["deed"]
    stamp = stamp_now(by=person_id(request), deed=deed)
    try:
        keep_test(number=number, said=form.said, stamp=stamp)
    except StudioError as error:
        form.refuse(error)
        return False
    say(request, f"The test of {number} is kept", undo=reverse("undo", args=[deed]))
    return True


def _row(test: FastnessNow) -> TestRow:
    stained = ", ".join(f"{cloth} {grade:g}" for cloth, grade in test.staining)
    parts = [f"staining {stained}" if stained else ""]
    parts.append("" if test.change is None else f"change {test.change:g}")
    how = "It may mark other yarn: rinse and test it again. Until then its tag says so."
    return TestRow(
        test=test,
        kind=str(test.kind.label),
        words="; ".join(part for part in parts if part),
        how=how if test.is_weak else "",
    )
