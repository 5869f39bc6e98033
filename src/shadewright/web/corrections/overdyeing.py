"""Overdye a lot: the deeper colourways that it can become."""

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.corrections.forms import KeepForm
from shadewright.web.corrections.keeping import keep_form, kept_address
from shadewright.web.corrections.pages import OverdyePage, SisterCard
from shadewright.web.corrections.pairs import shown_foretold
from shadewright.web.corrections.rows import addition_rows
from shadewright.web.corrections.ways import way_on
from shadewright.web.lot_crumbs import lot_crumbs
from shadewright.web.pages import Link, show
from shadewright.web.pairs import pair_of
from shadewright.web.parts import Caution
from shadewright.workflows.correcting.keeping import CorrectionKind
from shadewright.workflows.correcting.off_shade import OffShade, off_shade
from shadewright.workflows.correcting.sisters import Sister, sisters

_NONE = Caution(
    title="No deeper colourway lies near.",
    text="None of your recipes can be reached from it by adding dye. Sell it as a "
    "one-off, or look for a recipe of its own.",
)


@require_http_methods(["GET", "POST"])
def overdye(request: HttpRequest, number: str) -> HttpResponse:
    """Show the colourways that a lot can become, and plan the bath."""
    off, found, error = _found(number)
    chosen = next(
        (each for each in found if str(each.recipe_id) == request.GET.get("to", "")),
        None,
    )
    form = None
    if off is not None and chosen is not None:
        form = keep_form(off, chosen.doses, becomes=chosen.recipe_id)
        if request.method == "POST":
            form = KeepForm(request.POST)
            if form.is_valid() and (address := _kept(request, form, number, chosen)):
                return HttpResponseRedirect(address)
    page = OverdyePage(
        title=f"Overdye lot {number}",
        fact="A normal path: it becomes a lot of a deeper colourway.",
        crumbs=lot_crumbs(number),
        number=number,
        trouble=_trouble(found, error),
        way=_way(number, error),
        cards=tuple(_card(each, number) for each in found),
        form=form,
        chosen="" if chosen is None else chosen.name,
        own=request.get_full_path(),
    )
    return show(request, page, status=422 if form is not None and form.errors else 200)


def _found(
    number: str,
) -> tuple[OffShade | None, tuple[Sister, ...], StudioError | None]:
    try:
        off = off_shade(number)
        return off, sisters(off), None
    except StudioError as error:
        if error.argument == "number":
            raise
        return None, (), error


def _trouble(found: tuple[Sister, ...], error: StudioError | None) -> Caution | None:
    if error is not None:
        return Caution(title="Not yet.", text=error.sentence)
    return None if found else _NONE


def _way(number: str, error: StudioError | None) -> Link:
    if error is not None:
        return way_on(number, error)
    near = f"{reverse('find')}?{urlencode({'lot': number})}"
    return Link(words="Find a recipe near it", address=near)


def _kept(request: HttpRequest, form: KeepForm, number: str, chosen: Sister) -> str:
    return kept_address(
        request,
        form,
        number=number,
        kind=CorrectionKind.OVERDYE,
        foretold={"de_after": chosen.found.de_after, "becomes": chosen.name},
    )


def _card(each: Sister, number: str) -> SisterCard:
    return SisterCard(
        name=each.name,
        pair=pair_of(
            shown_foretold(each.foretold, name=each.name),
            shown_foretold(each.after, name="This lot after"),
        ),
        rows=addition_rows(each.additions),
        becomes=each.recipe_id,
        address=f"{reverse('overdye-lot', args=[number])}?to={each.recipe_id}",
    )
