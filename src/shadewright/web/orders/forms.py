"""What is asked for an order, a promise, a share of a lot and a par level."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.errors import StudioError
from shadewright.web.amounts import AmountField, some_mass
from shadewright.web.forms import DayInput, DeedForm, NumberInput, StudioForm
from shadewright.workflows.choices import bases_in_use
from shadewright.workflows.days.order_pages import OrderNow
from shadewright.workflows.days.orders import LineWish, OrderWish
from shadewright.workflows.recipes import recipes

MOST_ROWS = 30
_NAMES = ("recipe", "base", "skeins", "skein_g", "said")


@dataclass(frozen=True, kw_only=True)
class LineFields:
    """The fields of one line; ``drop`` only where the line stands already."""

    place: int
    recipe: BoundField
    base: BoundField
    skeins: BoundField
    skein_g: BoundField
    said: BoundField
    drop: BoundField | None


class OrderForm(DeedForm):
    """For whom, and a line for each colourway; empty lines are passed over.

    The only base that there is stands in every line, and begins none by itself.
    """

    rows = forms.IntegerField(widget=forms.HiddenInput, required=False)
    seen = forms.CharField(widget=forms.HiddenInput, required=False)
    for_whom = forms.CharField(
        label="For whom",
        max_length=80,
        widget=forms.TextInput(attrs={"list": "customers", "autocomplete": "off"}),
    )
    due_on = forms.DateField(
        label="Wanted by",
        required=False,
        widget=DayInput(),
        help_text="Empty if there is no hurry.",
    )
    notes = forms.CharField(
        label="What else they said",
        max_length=2000,
        required=False,
        widget=forms.Textarea(attrs={"rows": 2}),
        help_text="No colourway yet? Their words alone will do.",
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
        before: OrderNow | None = None,
    ) -> None:
        said = data if data is not None else initial or {}
        self.kept = 0 if before is None else len(before.lines)
        self.count = _row_count(said.get("rows"), least=max(1, self.kept))
        super().__init__(data, initial={**(initial or {}), "rows": self.count})
        known = _recipe_choices(before), _base_choices(before)
        self.only_base = known[1][1][0] if len(known[1]) == 2 else ""
        for place in range(1, self.count + 1):
            self.fields |= _line_fields(place, *known)
            self.fields[f"base_{place}"].initial = self.only_base
            if place <= self.kept:
                self.fields[f"drop_{place}"] = forms.BooleanField(
                    label="Not wanted any more", required=False
                )
        self.speak_plainly()

    @property
    def lines(self) -> tuple[LineFields, ...]:
        """The fields, line by line."""
        return tuple(
            LineFields(
                place=place,
                drop=self[f"drop_{place}"] if place <= self.kept else None,
                **{name: self[f"{name}_{place}"] for name in _NAMES},
            )
            for place in range(1, self.count + 1)
        )

    def clean(self) -> dict[str, Any]:
        """See that each line that is begun is whole."""
        sent = super().clean() or self.cleaned_data
        for place in self._begun():
            self._clean_line(place)
        return sent

    def wish(self) -> OrderWish:
        """Return what the form says."""
        sent = self.cleaned_data
        return OrderWish(
            for_whom=sent["for_whom"],
            due_on=sent["due_on"],
            notes=sent["notes"],
            lines=tuple(self._line(place) for place in self._begun()),
        )

    def refuse(self, error: StudioError) -> None:
        """Put a refusal by its line: the workflow knows only lines that are begun."""
        name, _, place = error.argument.rpartition("_")
        begun = list(self._begun())
        if name in _NAMES and place.isdecimal() and 0 < int(place) <= len(begun):
            self.add_error(f"{name}_{begun[int(place) - 1]}", error.sentence)
            return
        super().refuse(error)

    def _begun(self) -> Iterator[int]:
        for place in range(1, self.count + 1):
            said = {name: self.data.get(f"{name}_{place}") for name in _NAMES}
            if said["base"] == self.only_base:
                del said["base"]
            if place <= self.kept or any(said.values()):
                yield place

    def _clean_line(self, place: int) -> None:
        lacks = {
            "recipe": "The colourway is missing: choose it. If it is none of yours, "
            "put their words into the last field and leave this line empty.",
            "base": "The base is missing: choose the yarn.",
            "skeins": "How many skeins is missing: type a number.",
        }
        for name, sentence in lacks.items():
            field = f"{name}_{place}"
            if field not in self.errors and self.cleaned_data.get(field) in {None, ""}:
                self.add_error(field, sentence)

    def _line(self, place: int) -> LineWish:
        sent = {name: self.cleaned_data[f"{name}_{place}"] for name in _NAMES}
        line = LineWish(
            recipe_id=sent["recipe"],
            base_id=sent["base"],
            skeins=sent["skeins"],
            skein_g=sent["skein_g"],
            as_said=sent["said"],
        )
        is_dropped = bool(self.cleaned_data.get(f"drop_{place}"))
        return replace(line, is_dropped=is_dropped)


class PromiseForm(StudioForm):
    """The day that is told to whoever ordered; empty takes it back."""

    promised_on = forms.DateField(
        label="Another day", required=False, widget=DayInput()
    )


class ShareForm(StudioForm):
    """So many skeins of a lot for a line; none lets it go."""

    number = forms.CharField(max_length=16, widget=forms.HiddenInput)
    skeins = forms.IntegerField(label="Skeins", widget=NumberInput())


class ParForm(StudioForm):
    """How many skeins the shelf should hold of a colourway on a base."""

    recipe_1 = forms.TypedChoiceField(label="Colourway", coerce=int)
    base_1 = forms.TypedChoiceField(label="Base", coerce=int)
    skeins_1 = forms.IntegerField(
        label="Skeins",
        widget=NumberInput(),
        help_text="0 takes the level away.",
    )
    skein_g_1 = AmountField(
        unit="g",
        read=some_mass,
        label="Grams a skein",
        required=False,
        help_text="Empty: as the base has it.",
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        self.fields["recipe_1"].choices = _recipe_choices(None)  # type: ignore[attr-defined]
        self.fields["base_1"].choices = _base_choices(None)  # type: ignore[attr-defined]


def initial_of(order: OrderNow) -> dict[str, Any]:
    """Return an order as its form shows it."""
    said: dict[str, Any] = {
        "rows": len(order.lines),
        "seen": order.seen,
        "for_whom": order.for_whom,
        "due_on": order.due_on,
        "notes": order.notes,
    }
    for place, line in enumerate(order.lines, start=1):
        said |= {
            f"recipe_{place}": line.recipe_id,
            f"base_{place}": line.base_id,
            f"skeins_{place}": line.skeins,
            f"skein_g_{place}": line.skein_g,
            f"said_{place}": line.as_said,
            f"drop_{place}": line.is_dropped,
        }
    return said


def _line_fields(
    place: int, recipe: list[tuple[str, str]], base: list[tuple[str, str]]
) -> dict[str, forms.Field]:
    return {
        f"recipe_{place}": forms.TypedChoiceField(
            label="Colourway", choices=recipe, coerce=int, required=False
        ),
        f"base_{place}": forms.TypedChoiceField(
            label="Base", choices=base, coerce=int, required=False
        ),
        f"skeins_{place}": forms.IntegerField(
            label="Skeins", required=False, widget=NumberInput()
        ),
        f"skein_g_{place}": AmountField(
            unit="g", read=some_mass, label="Grams a skein", required=False
        ),
        f"said_{place}": forms.CharField(
            label="In their own words", max_length=300, required=False
        ),
    }


def _recipe_choices(before: OrderNow | None) -> list[tuple[str, str]]:
    known = {
        str(each.id): each.name + ("" if each.newest.is_complete else ", incomplete")
        for each in recipes()
    }
    lines = () if before is None else before.lines
    old = {str(line.recipe_id): f"{line.recipe_name}, retired" for line in lines}
    return [("", "Choose a colourway"), *(old | known).items()]


def _base_choices(before: OrderNow | None) -> list[tuple[str, str]]:
    known = {str(each.id): each.words for each in bases_in_use()}
    lines = () if before is None else before.lines
    old = {str(line.base_id): line.base_name for line in lines}
    return [("", "Choose a base"), *(old | known).items()]


def _row_count(typed: object, *, least: int) -> int:
    text = str(typed or "")
    count = int(text) if text.isascii() and text.isdecimal() and len(text) < 4 else 0
    return min(max(count, least), max(least, MOST_ROWS))
