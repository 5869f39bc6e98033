"""Acid for acid, and a spent bath."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quantities import NO_BREAK, amount_text, number_text
from shadewright.errors import StudioError
from shadewright.web.acidity.forms import (
    CITRIC,
    CRYSTALS,
    HAVE,
    VINEGAR,
    AcidForAcidForm,
)
from shadewright.web.acidity.pages import (
    AcidForAcidPage,
    Answered,
    BasisRow,
    PourAwayPage,
)
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution
from shadewright.workflows.acid_for_acid import HANDY_PH, AcidForAcid, InStead
from shadewright.workflows.spent_baths import spent_bath

_SODA = Caution(
    title="It foams",
    text="Slowly, a little at a time, and never in a full or a hot pot. Gloves and "
    "goggles on. Follow the safety data sheets and your local rules.",
)

_AMOUNTS: tuple[tuple[str, str, Callable[[InStead], str]], ...] = (
    (VINEGAR, "Vinegar, 5 %", lambda row: _about(row.vinegar_ml, "ml")),
    (CITRIC, "Citric, anhydrous", lambda row: _about(row.citric_g, "g")),
    (CRYSTALS, "Citric, monohydrate", lambda row: _about(row.citric_mono_g, "g")),
)


@require_safe
def acid_for_acid(request: HttpRequest) -> HttpResponse:
    """Show what stands for an amount of vinegar or citric acid."""
    form = AcidForAcidForm(request.GET or _first())
    answered = None
    if form.is_valid():
        try:
            answered = _answered(form)
        except StudioError as error:
            form.refuse(error)
    page = AcidForAcidPage(
        title="Acid for acid",
        fact="How much of one gives up as much as another hangs on what counts.",
        crumbs=(Link(words="Acids and helpers", address=reverse("acids")),),
        form=form,
        answered=answered,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_safe
def pour_away(request: HttpRequest, number: str) -> HttpResponse:
    """Show how a bath is made neutral."""
    found = spent_bath(number)
    soda = found.bicarbonate_g
    metal = Caution(title="A dye holds a metal", text=found.metal)
    address = reverse("bath", args=[number])
    page = PourAwayPage(
        title="Before you pour it away",
        fact=f"Bath {number}, once the yarn is out.",
        crumbs=(
            Link(words="Dye days", address=reverse("days")),
            Link(words=f"Bath {number}", address=address),
        ),
        bicarbonate="" if soda is None else _about(soda, "g"),
        why_not=found.why_not,
        steps=found.steps,
        cautions=(_SODA, metal) if found.metal else (_SODA,),
        back=address,
    )
    return show(request, page)


def _first() -> dict[str, str]:
    return {
        "have": VINEGAR,
        "amount": "100",
        "strength": "5",
        "basis": str(HANDY_PH),
    }


def _answered(form: AcidForAcidForm) -> Answered:
    found, have = form.answer(), form.cleaned_data["have"]
    unit = "ml" if have == VINEGAR else "g"
    name = dict(HAVE)[have].lower()
    others = [each for each in _AMOUNTS if each[0] != have]
    rows = sorted(found.rows, key=lambda row: row.by_ph != form.by_ph)
    return Answered(
        instead_of=f"{amount_text(form.cleaned_data['amount'], unit)} of {name}",
        heads=tuple(head for _, head, _ in others),
        rows=tuple(
            BasisRow(
                basis="all of it" if row.by_ph is None else f"by pH {row.by_ph:g}",
                cells=tuple(amount(row) for _, _, amount in others),
                is_chosen=row.by_ph == form.by_ph,
            )
            for row in rows
        ),
        said=_said(found, unit),
        cautions=tuple(Caution(title="Mind", text=text) for text in found.cautions),
    )


def _said(found: AcidForAcid, unit: str) -> str:
    if found.said is None:
        return ""
    least, most = found.said.least_g, found.said.most_g
    if unit == "g":  # then it is vinegar that is said, of 5 g in 100 ml
        least, most = 20 * least, 20 * most
    other, acid = ("g", "citric acid") if unit == "ml" else ("ml", "vinegar")
    return (
        f"Commonly said: {_about(least, other)} to {_about(most, other)} of "
        f"{acid}. That is common practice, sixfold apart and without a source."
    )


def _about(value: float, unit: str) -> str:
    """Return an amount in two digits: no acid is known better than that."""
    return f"{number_text(value, digits=2)}{NO_BREAK}{unit}"
