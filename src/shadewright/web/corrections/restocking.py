"""The same again: an old lot found, what has changed, and what to dye now."""

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quantities import amount_text
from shadewright.errors import NotFoundError, StudioError
from shadewright.web.colours import foretold_colour
from shadewright.web.corrections.forms import RestockForm
from shadewright.web.corrections.pages import RestockPage
from shadewright.web.corrections.pairs import measured_of
from shadewright.web.lot_crumbs import lots_link
from shadewright.web.mix_text import mix_text
from shadewright.web.pages import Link, show
from shadewright.web.pairs import Pair, pair_of
from shadewright.workflows.correcting.restock import (
    NearLot,
    Restock,
    lots_near,
    version_of_lot,
)
from shadewright.workflows.correcting.restock import restock as old_lot
from shadewright.workflows.shades.swatches import Doses
from shadewright.workflows.shades.wanted import wanted_of_text

_NOTHING = "No lot’s colour was read or noted yet: there is none to lay beside it."


@require_safe
def restock(request: HttpRequest) -> HttpResponse:
    """Ask for an old lot or an old skein, and say what to dye now."""
    is_asked = bool(request.GET.get("lot") or request.GET.get("colour"))
    form = RestockForm(request.GET if is_asked else None)
    found, near = _answer(form) if is_asked and form.is_valid() else (None, ())
    page = RestockPage(
        title="The same again",
        fact="From a lot number or an old skein to what to dye now.",
        crumbs=(lots_link(),),
        form=form,
        near=near,
        found=found,
        pair=None if found is None else _pair(found),
        then="" if found is None else _mix(found.off.doses),
        now="" if found is None or found.now is None else _mix(found.now.doses),
        ways=_ways_without(form) if found is None else _ways(found),
        nothing=_NOTHING
        if is_asked and form.is_valid() and not (found or near)
        else "",
        own=reverse("restock"),
    )
    return show(request, page, status=422 if form.errors else 200)


def _answer(form: RestockForm) -> tuple[Restock | None, tuple[NearLot, ...]]:
    number, colour = form.cleaned_data["lot"], form.cleaned_data["colour"]
    try:
        if number:
            return old_lot(number.upper()), ()
        return None, lots_near(wanted_of_text(colour))
    except StudioError as error:
        form.add_error("lot" if number else "colour", error.sentence)
        return None, ()


def _pair(found: Restock) -> Pair | None:
    if found.now is None:
        return None
    foretold = foretold_colour(
        found.now.lab,
        expected=found.now.expected_de,
        within_90=found.now.within_90,
        evidence=found.now.evidence,
        name="Foretold now",
    )
    return pair_of(measured_of(found.off), foretold)


def _mix(doses: Doses) -> str:
    return " + ".join(f"{dye} {amount_text(depth, '%')}" for dye, depth in doses)


def _ways(found: Restock) -> tuple[Link, ...]:
    off = found.off
    find = f"{reverse('find')}?{urlencode({'lot': off.number, 'base': off.base_id})}"
    ways = [
        Link(words="Look for a recipe with any dyes", address=find),
        _as_written(off.version_id),
    ]
    if found.doses:
        mix = {"base": off.base_id, "mix": mix_text(found.doses), "lot": off.number}
        ways.insert(
            0,
            Link(
                words="Try this mix, and save it",
                address=f"{reverse('mix')}?{urlencode(mix)}",
            ),
        )
    return tuple(ways)


def _ways_without(form: RestockForm) -> tuple[Link, ...]:
    """Return what can be done with a lot of which nobody can say what it needs now."""
    number = str(form["lot"].value() or "").strip().upper()
    try:
        version_id = version_of_lot(number)
    except NotFoundError:
        return ()
    return (
        _as_written(version_id),
        Link(words="See the lot", address=reverse("lot", args=[number])),
    )


def _as_written(version_id: int) -> Link:
    plain = f"{reverse('plan-bath')}?{urlencode({'version': version_id})}"
    return Link(words="Plan it as it was written", address=plain)
