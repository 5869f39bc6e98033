"""Why a lot does not match, and what it teaches."""

from uuid import uuid4

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.core.colour import Lab
from shadewright.core.quality import Drift
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import spread_text
from shadewright.core.uncertainty import half_width
from shadewright.exchange.colour_text import on_screen
from shadewright.web.causes.pages import Beside, CauseRow, StrengthShown, WhyPage
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip
from shadewright.web.toasts import say
from shadewright.web.ways import way_to
from shadewright.workflows.judging.causes import CauseTold, Why
from shadewright.workflows.judging.causes import why as why_of
from shadewright.workflows.judging.lessons import (
    StrengthLesson,
    strength_lesson,
    take_strength,
)
from shadewright.workflows.judging.moved import DoseOff
from shadewright.workflows.shades.entering_swatches import swatch_id_of_bath
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.stamps import stamp_now

_CHIPS = {
    Drift.WITHIN: Chip(words="like the lots before", kind="good"),
    Drift.DRIFTED: Chip(words="off", kind="caution"),
    Drift.CANNOT_TELL: Chip(words="cannot tell", kind="guess"),
}


@require_safe
def why(request: HttpRequest, number: str) -> HttpResponse:
    """Show what was different in a lot, likeliest first."""
    return show(request, _page(why_of(number)))


@require_POST
def take(request: HttpRequest, number: str) -> HttpResponse:
    """Write a bottle’s strength down as the lot’s colour tells it."""
    form = DeedForm(request.POST)
    if form.is_valid():
        deed = form.cleaned_data["deed"]
        stamp = stamp_now(by=person_id(request), deed=deed)
        lesson = take_strength(number=number, stamp=stamp)
        counts = amount_text(lesson.strength.value, "%")
        words = f"Bottle {lesson.bottle} counts as {counts} now"
        say(request, words, undo=reverse("undo", args=[deed]))
    return HttpResponseRedirect(reverse("lot-why", args=[number]))


def _page(told: Why) -> WhyPage:
    number, what = told.lot.number, told.history.what
    return WhyPage(
        title="Why does it not match?",
        fact=f"Lot {number}, {what.recipe_name} on {what.base_name}, beside "
        "the lots before it.",
        crumbs=(
            Link(words="Lots", address=reverse("lots")),
            Link(words=number, address=reverse("lot", args=[number])),
        ),
        number=number,
        verdict=_CHIPS[told.found.verdict],
        words=_words(told),
        difference=_difference(told),
        beside=_beside(told),
        next_step=_next_step(told),
        rows=tuple(_row(cause) for cause in told.causes),
        unwritten=f"{told.unwritten_percent:.0f}\u00a0%" if told.is_off else "",
        test=told.test,
        doses=tuple(_dose(dose) for dose in told.doses),
        signals=told.signals,
        notes=told.notes,
        strength=_strength(strength_lesson(told)),
        may_teach=_may_teach(told),
        teach_deed=uuid4(),
        drift=reverse("drift", args=[what.recipe_id, what.base_id]),
        file=way_to("history", what.recipe_id, what.base_id, lot=number),
        own=reverse("lot-why", args=[number]),
    )


def _words(told: Why) -> str:
    found = told.found
    if found.verdict is Drift.CANNOT_TELL:
        return f"It cannot be told: {found.why}."
    if found.verdict is Drift.WITHIN:
        return "Nothing is wrong: noise alone throws lots this far."
    return f"Beside the lots before it is: {found.words}."


def _difference(told: Why) -> str:
    if told.found.de is None:
        return ""
    return (
        f"CIEDE2000\u00a0{told.found.de:.1f} from the mean of the lots in control; "
        f"noise alone gives {told.found.expected_de:.1f} on average"
    )


def _beside(told: Why) -> Beside | None:
    colour = told.lot.past.colour
    if told.usual is None or colour is None:
        return None
    hexes = (_hex(told.usual), _hex(colour))
    said = f"The lots before at the left, lot {told.lot.number} at the right"
    words = told.found.words
    return Beside(hexes=hexes, said=f"{said}: {words}" if words else said)


def _hex(lab: Lab) -> str:
    return on_screen((lab.L, lab.a, lab.b)).hex_code


def _next_step(told: Why) -> Link | None:
    """Return the one act that helps where nothing can be told, or it is off."""
    number = told.lot.number
    if told.lot.past.colour is None:
        return Link(
            words="Read its colour", address=reverse("read-bath", args=[number])
        )
    if told.is_off:
        return Link(words="Correct it", address=reverse("correct-lot", args=[number]))
    return None


def _row(cause: CauseTold) -> CauseRow:
    size = "" if cause.difference is None else f", CIEDE2000 {cause.difference:.1f}"
    which = f" ({cause.which})" if cause.which else ""
    return CauseRow(
        what=f"{cause.name}{which}",
        changed=_changed(cause),
        does=f"{cause.does}{size}.",
        chance=f"{cause.chance_percent:.0f}\u00a0%",
    )


def _changed(cause: CauseTold) -> str:
    if not cause.now:
        return f"not written down; {cause.was} before"
    return f"{cause.now}, not {cause.was}"


def _dose(dose: DoseOff) -> str:
    given = amount_text(dose.given_percent, "%")
    usual = amount_text(dose.usual_percent, "%")
    said = f"{dose.dye} went in at {given}, in the lots before at {usual}."
    if dose.difference is None:
        return f"{said} What that does to the colour no palette can say yet."
    return (
        f"{said} By the palette that alone makes it: {dose.words}, "
        f"CIEDE2000 {dose.difference:.1f}."
    )


def _strength(lesson: StrengthLesson | None) -> StrengthShown | None:
    if lesson is None:
        return None
    way = "weaker" if lesson.is_weaker else "stronger"
    strength = amount_text(lesson.strength.value, "%")
    spread = spread_text(half_width(lesson.strength))
    return StrengthShown(
        bottle=lesson.bottle,
        words=f"If it was the bottle, {lesson.bottle} of {lesson.dye} is {way} than "
        f"its ledger says: {strength} ±\u00a0{spread} at least, not "
        f"{amount_text(lesson.was_percent, '%')}.",
        why_not=lesson.why_not,
        deed=uuid4(),
    )


def _may_teach(told: Why) -> bool:
    """Whether its colour is known and does not teach the palette yet."""
    if told.lot.colour is None:
        return False
    swatch_id = swatch_id_of_bath(told.lot.number)
    return swatch_id is None or not swatch_now(swatch_id).is_evidence
