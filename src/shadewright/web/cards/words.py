"""The words of a card that is typed back."""

from django.utils import timezone

from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text, counted
from shadewright.workflows.bath_pages import BathNow, DoneLine, StepNow
from shadewright.workflows.typed_cards import Outcome


def card_fact(bath: BathNow) -> str:
    """Return what the head of the card says, in a line."""
    skeins = "" if bath.skeins is None else counted(bath.skeins, "skein")
    yarn = amount_text(bath.fibre_g, "g")
    day = f"{bath.dyed_on.day} {bath.dyed_on:%B %Y}"
    recipe = f"{bath.recipe_name}, version {bath.version_number}"
    parts = (recipe, bath.base_name, yarn, skeins, bath.pot_name, day)
    return " · ".join(filter(None, parts))


def title_of(each: StepNow) -> str:
    """Return a line's title as it is printed."""
    strength = None if each.dose is None else each.dose.strength_percent
    said = "" if strength is None else f" {amount_text(strength, '%')}"
    return f"{each.step.title}{said}"


def done_words(bath: BathNow, each: StepNow) -> str:
    """Return why a line is not typed here."""
    if each.ticks:
        return f"Done: {_said(each.ticks[0])}"
    if each.parts:
        parts = ", ".join(_said(line) for line in each.parts)
        how = "In, in parts" if each.is_done else "Partly in; go on at the bench"
        return f"{how}: {parts}"
    lot = "has its lot" if bath.has_lot else "gets its lot on the next page"
    return f"{bath.number} {lot}" if each.step.kind is StepKind.FINISH else ""


def outcome_words(bath: BathNow, outcome: Outcome) -> str:
    """Return what became of a card, in a sentence or two."""
    count = len(outcome.written)
    lines = "1 line" if count == 1 else f"{count} lines"
    said = f"Card of {bath.number}: {lines} written"
    if not count:
        said = f"Card of {bath.number}: no line was written"
        said += f", only {' and '.join(outcome.also)}" if outcome.also else ""
    stood = ", ".join(each.step.title for each in outcome.stood)
    if stood:
        said += f". {stood} stood already and stays as it was"
    return said


def _said(line: DoneLine) -> str:
    amount = "" if line.value is None else f"{amount_text(line.value, line.unit)}, "
    who = ", ".join(filter(None, (line.by, line.device)))
    at = timezone.localtime(line.at)
    return f"{amount}{at:%H:%M}{f' ({who})' if who else ''}"
