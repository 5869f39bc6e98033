"""The rows of acids and helpers in a recipe: what, how much, and when it goes in."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.web.amounts import AmountField, temperature_field
from shadewright.web.recipes.amounts import plain
from shadewright.web.recipes.curve_form import CurveForm
from shadewright.workflows.choices import helpers_in_use
from shadewright.workflows.recipe_shapes import (
    AmountUnit,
    HelperLine,
    RecipeText,
    When,
)


@dataclass(frozen=True, kw_only=True)
class HelperRow:
    """The fields of one acid or helper."""

    what: BoundField
    amount: BoundField
    unit: BoundField
    when: BoundField
    at: BoundField


class HelpersForm(CurveForm):
    """The helpers of a version; rows that stay empty are passed over.

    ``count`` is how many rows the dyes have.
    """

    count = 0

    @property
    def _helper_numbers(self) -> range:
        """One row fewer than for dyes: a bath has fewer helpers."""
        return range(1, self.count)

    @property
    def helper_rows(self) -> tuple[HelperRow, ...]:
        """The rows of acids and helpers."""
        return tuple(
            HelperRow(
                what=self[f"helper_{n}"],
                amount=self[f"amount_{n}"],
                unit=self[f"unit_{n}"],
                when=self[f"when_{n}"],
                at=self[f"at_{n}"],
            )
            for n in self._helper_numbers
        )

    def add_helper_fields(self, before: RecipeText | None) -> None:
        """Add the rows, with what is in use and what the version before took."""
        known = _helper_choices(before)
        for number in self._helper_numbers:
            self.fields |= _helper_fields(number, known)

    def clean_helpers(self) -> None:
        """See that each row is whole."""
        for number in self._helper_numbers:
            self._clean_helper(number)

    def sent_in(self, name: str, number: int) -> Any:  # ruff: ignore[any-type]
        """Return what was sent in a field of a row."""
        return self.cleaned_data.get(f"{name}_{number}")

    def helpers(self) -> tuple[HelperLine, ...]:
        """Return what the rows say."""
        return tuple(self._helpers())

    def _helpers(self) -> Iterator[HelperLine]:
        for number in self._helper_numbers:
            if what := self.sent_in("helper", number):
                yield HelperLine(
                    auxiliary_id=what,
                    amount=self.sent_in("amount", number),
                    unit=AmountUnit(
                        self.sent_in("unit", number) or AmountUnit.ON_FIBRE
                    ),
                    when=self._when(number),
                    at_c=self._at_c(number),
                )

    def _when(self, number: int) -> When:
        return When(self.sent_in("when", number) or When.AFTER_DYE)

    def _at_c(self, number: int) -> float | None:
        is_on_the_way = self._when(number) is When.ON_THE_WAY
        return self.sent_in("at", number) if is_on_the_way else None

    def _clean_helper(self, number: int) -> None:
        what, amount = self.sent_in("helper", number), self.sent_in("amount", number)
        name = f"amount_{number}"
        if what and amount is None and name not in self.errors:
            self.add_error(name, "The amount is missing.")
        if amount is not None and not what:
            self.add_error(f"helper_{number}", "Choose what this amount is of.")
        if what:
            self._clean_on_the_way(number)

    def _clean_on_the_way(self, number: int) -> None:
        name, at_c = f"at_{number}", self.sent_in("at", number)
        if self._when(number) is not When.ON_THE_WAY or name in self.errors:
            return
        if at_c is None:
            self.add_error(name, "Type at what temperature it goes in, such as 60 °C.")
            return
        start_c, top_c = map(self.cleaned_data.get, ("start_c", "top_c"))
        if (start_c is not None and at_c < start_c) or (
            top_c is not None and at_c > top_c
        ):
            self.add_error(name, "On the way up is between start and top.")


def helpers_initial(helpers: Iterable[HelperLine]) -> dict[str, Any]:
    """Return helpers as their rows show them."""
    said: dict[str, Any] = {}
    for number, helper in enumerate(helpers, start=1):
        said[f"helper_{number}"] = helper.auxiliary_id
        said[f"amount_{number}"] = helper.amount
        said[f"unit_{number}"] = helper.unit.value
        said[f"when_{number}"] = helper.when.value
        said[f"at_{number}"] = helper.at_c
    return said


def _helper_fields(number: int, known: list[tuple[str, str]]) -> dict[str, forms.Field]:
    return {
        f"helper_{number}": forms.TypedChoiceField(
            label=f"Acid or helper {number}", choices=known, coerce=int, required=False
        ),
        f"amount_{number}": AmountField(
            unit="", read=plain, label=f"Amount {number}", required=False
        ),
        f"unit_{number}": forms.ChoiceField(
            label=f"Counted {number}", choices=AmountUnit.choices, required=False
        ),
        f"when_{number}": forms.ChoiceField(
            label=f"Goes in {number}",
            choices=When.choices,
            initial=When.AFTER_DYE.value,
            required=False,
        ),
        f"at_{number}": temperature_field(
            label=f"On the way up at {number}", required=False
        ),
    }


def _helper_choices(before: RecipeText | None) -> list[tuple[str, str]]:
    known = {str(each.id): each.words for each in helpers_in_use()}
    old = () if before is None else before.helpers
    known |= {str(each.auxiliary_id): each.name for each in old}
    return [("", "None"), *known.items()]
