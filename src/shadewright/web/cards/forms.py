"""The form of a card: its lines are the card's, each with the card's blanks."""

from typing import Any, ClassVar

from django import forms

from shadewright.core.baths.blanks import Blank, blanks_of
from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.web.cards.fields import (
    MISSED,
    PLANNED,
    blank_fields,
    line_fields,
    name_of,
)
from shadewright.web.forms import DeedForm
from shadewright.workflows.bath_pages import BathAct, BathNow, StepNow
from shadewright.workflows.typed_cards import TypedCard, TypedLine

_MOST_NOTES = 280
_WENT_IN = (Blank.AMOUNT, Blank.BOTTLE)
_BOTH = "it is ticked as left out, yet an amount or a bottle is written. Clear one."


class CardForm(DeedForm):
    """The foot of a card; ``card_form`` adds its lines."""

    notes = forms.CharField(label="Notes", required=False, max_length=_MOST_NOTES)

    steps: ClassVar[tuple[RoundStep, ...]] = ()
    last: ClassVar[str] = ""

    def clean(self) -> dict[str, Any]:
        """Refuse a line that says two things at once."""
        typed: dict[str, Any] = super().clean() or {}
        for step in self.steps:
            name = name_of(step, MISSED)
            if typed.get(name) and any(typed.get(name_of(step, x)) for x in _WENT_IN):
                self.add_error(name, f"{self.fields[name].label}: {_BOTH}")
        return typed

    def card(self, number: str, *, is_all: bool) -> TypedCard:
        """Return what was typed; with ``is_all`` every other line is as planned."""
        lines = (self._line(step, is_all=is_all) for step in self.steps)
        return TypedCard(
            bath=number,
            lines=tuple(line for line in lines if line is not None),
            notes=self.cleaned_data["notes"],
            rinses=self._after(Blank.RINSES) or 0,
            hung_at=self._after(Blank.RACK),
        )

    def wait_in(self) -> None:
        """Put the cursor into the line after the last that something is typed in."""
        typed = [
            place
            for place, step in enumerate(self.steps)
            if any(self[name_of(step, blank)].value() for blank in blanks_of(step))
        ]
        following = self.steps[max(typed, default=-1) + 1 :]
        names = [name_of(step, blanks_of(step)[0]) for step in following]
        self.fields[next(iter(names), "notes")].widget.attrs["autofocus"] = True

    def _after(self, blank: Blank) -> Any:  # ruff: ignore[any-type]
        return self.cleaned_data.get(f"{self.last}-{blank.name.lower()}")

    def _line(self, step: RoundStep, *, is_all: bool) -> TypedLine | None:
        typed = self.cleaned_data
        said = typed.get(name_of(step, Blank.AMOUNT))
        amount, unit = said if isinstance(said, tuple) else (said, "")
        line = TypedLine(
            step=step.key,
            is_missed=typed[name_of(step, MISSED)],
            amount=amount,
            unit=unit,
            at=typed.get(name_of(step, Blank.TIME)),
            bottle=typed.get(name_of(step, Blank.BOTTLE), ""),
            temperature_c=typed.get(name_of(step, Blank.TEMPERATURE)),
            ph=typed.get(name_of(step, Blank.PH)),
            looked_like=typed.get(name_of(step, Blank.LOOKED), ""),
        )
        is_planned = is_all or typed[name_of(step, PLANNED)]
        return line if is_planned or line.says_more else None


def card_form(bath: BathNow) -> type[CardForm]:
    """Return the form of one bath's card."""
    members: dict[str, object] = {
        "steps": tuple(each.step for each in bath.steps if is_typed(each)),
        "last": bath.steps[-1].step.key,
    }
    for place, each in enumerate(bath.steps, start=1):
        if is_typed(each):
            members |= line_fields(place, each.step, day=bath.dyed_on)
        elif each.step.kind is StepKind.FINISH:
            blanks = open_blanks(bath, each)
            members |= blank_fields(place, each.step, blanks, day=bath.dyed_on)
    made: Any = type(CardForm)
    form: type[CardForm] = made("CardForm", (CardForm,), members)
    return form


def open_blanks(bath: BathNow, each: StepNow) -> tuple[Blank, ...]:
    """Return the blanks that are typed in: what stands already is not asked again."""
    if is_typed(each):
        return () if each.is_done else blanks_of(each.step)
    if each.step.kind is not StepKind.FINISH:
        return ()
    acts = {line.act for line in bath.standing}
    written = {Blank.RINSES: BathAct.RINSED, Blank.RACK: BathAct.HUNG}
    return tuple(blank for blank, act in written.items() if act not in acts)


def is_typed(each: StepNow) -> bool:
    """Whether a line is typed here: not the lot's, nor a dose that came in parts."""
    return each.step.kind is not StepKind.FINISH and not each.parts
