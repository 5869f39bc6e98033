"""The dry check of a lot, and what is decided of it."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from shadewright.errors import StudioError
from shadewright.web.checks.forms import CheckForm, DecideForm
from shadewright.web.checks.pages import CheckPage
from shadewright.web.checks.verdicts import decide_keys, shown_check
from shadewright.web.evidence.background import refit_soon
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.workflows.judging.deciding import Choice
from shadewright.workflows.judging.deciding import decide as decide_lot
from shadewright.workflows.judging.dry_checks import Decision, keep_check, last_check
from shadewright.workflows.judging.snips import snip_of
from shadewright.workflows.judging.standards import of_lot, standard_of
from shadewright.workflows.lot_pages import lot_now
from shadewright.workflows.stamps import stamp_now

_WET = (
    "Lot {number} was read wet: kept, and no verdict. Snip, squeeze, dry, read it again"
)


@require_http_methods(["GET", "POST"])
def check(request: HttpRequest, number: str) -> HttpResponse:
    """Show how a lot compares with its standard, and take what was read of it."""
    form = CheckForm(request.POST if request.method == "POST" else None)
    if form.is_bound and form.is_valid():
        address = _kept(request, number, form)
        if address:
            return HttpResponseRedirect(address)
    return show(request, _page(number, form), status=422 if form.errors else 200)


@require_POST
def decide(request: HttpRequest, number: str) -> HttpResponse:
    """Write down what is decided of a lot; to correct it leads to what to add."""
    form = DecideForm(request.POST)
    address = reverse("check-lot", args=[number])
    if not form.is_valid():
        return HttpResponseRedirect(address)
    choice, deed = Choice(form.cleaned_data["choice"]), form.cleaned_data["deed"]
    decide_lot(number, choice, stamp=stamp_now(by=person_id(request), deed=deed))
    say(request, f"Lot {number}: {choice}", undo=reverse("undo", args=[deed]))
    if choice is Choice.CORRECT:
        address = reverse("correct-lot", args=[number])
    return HttpResponseRedirect(address)


def _kept(request: HttpRequest, number: str, form: CheckForm) -> str:
    """Keep what was read and return where to go on; empty where it was refused."""
    deed = form.cleaned_data["deed"]
    stamp = stamp_now(by=person_id(request), deed=deed)
    try:
        found = keep_check(
            number, read=form.read_words(), skeins=form.skeins, stamp=stamp
        )
    except StudioError as error:
        form.refuse(error)
        return ""
    refit_soon(why=f"lot {number} was read")
    undo = reverse("undo", args=[deed])
    if found is None:
        say(request, _WET.format(number=number), undo=undo)
        return reverse("snip-lot", args=[number])
    say(request, f"The check of {number} is kept", undo=undo)
    return reverse("check-lot", args=[number])


def _page(number: str, form: CheckForm) -> CheckPage:
    lot, what = lot_now(number), of_lot(number)
    found = last_check(number)
    standard = standard_of(recipe_id=what.recipe_id, base_id=what.base_id)
    is_open = found is None or found.verdict in {None, Decision.CANNOT_TELL}
    decided_at = lot.held.decided_at
    is_decided = decided_at is not None and (found is None or decided_at >= found.at)
    return CheckPage(
        title=f"Check {number} dry",
        fact=f"{what.recipe_name} on {what.base_name}, beside its standard.",
        crumbs=(
            Link(words="Lots", address=reverse("lots")),
            Link(words=number, address=reverse("lot", args=[number])),
        ),
        number=number,
        what=what,
        has_standard=standard is not None,
        shown=None if found is None else shown_check(found),
        decided=lot.held.decided,
        is_decided_since=is_decided,
        keys_to_decide=() if found is None else decide_keys(found),
        decide_form=DecideForm(),
        snip=snip_of(number),
        form=form,
        is_reading_next=is_open or is_decided,
        own=reverse("check-lot", args=[number]),
    )
