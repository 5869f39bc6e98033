"""Days on which the studio is closed."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from shadewright.errors import StudioError
from shadewright.web.dye_days.crumbs import days_crumb
from shadewright.web.dye_days.forms import ClosedForm
from shadewright.web.dye_days.pages import ClosedPage, ClosedRow
from shadewright.web.pages import show
from shadewright.web.templatetags.house import day as day_words
from shadewright.web.toasts import say
from shadewright.workflows.days.closed_days import (
    Closed,
    close_days,
    closed_to_come,
    open_days_again,
)


@require_http_methods(["GET", "POST"])
def closed(request: HttpRequest) -> HttpResponse:
    """Show the closed days; a form that is sent adds some."""
    form = ClosedForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        try:
            kept = close_days(**form.cleaned_data)
        except StudioError as error:
            form.refuse(error)
        else:
            undo = reverse("day-open-again", args=[kept.id])
            say(request, f"Closed: {closed_words(kept)}", undo=undo)
            return redirect("day-closed")
    page = ClosedPage(
        title="Closed days",
        fact="Promises and proposed dye days pass over them; yarn dries on.",
        crumbs=days_crumb(),
        form=form,
        rows=tuple(_row(each) for each in closed_to_come()),
    )
    return show(request, page, status=422 if form.errors else 200)


@require_POST
def open_again(request: HttpRequest, number: int) -> HttpResponse:
    """Let closed days be as any others."""
    say(request, f"Open again: {closed_words(open_days_again(number))}")
    return redirect("day-closed")


def closed_words(each: Closed) -> str:
    """Return from when to when: ``24 Dec 2026 to 2 Jan 2027``."""
    days = (day_words(each.first_on), day_words(each.last_on))
    return " to ".join(dict.fromkeys(days))


def _row(each: Closed) -> ClosedRow:
    return ClosedRow(
        words=closed_words(each),
        why=each.why,
        address=reverse("day-open-again", args=[each.id]),
    )
