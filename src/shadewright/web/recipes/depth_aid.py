"""Millilitres of a stock on some yarn: the depth that this is.

Spoons are never turned into grams: a spoon holds a different weight of each
powder, and of one powder on different days.
"""

from collections.abc import Mapping
from typing import Any

from django import forms

from shadewright.core.baths import depth_given_percent
from shadewright.core.quantities import amount_text
from shadewright.web.amounts import mass_field, strength_field, volume_field
from shadewright.web.forms import StudioForm
from shadewright.workflows.shelf import ShelfBottle, shelf

_OTHER = ("", "a stock that is no longer there")


class AidForm(StudioForm):
    """How much of which stock went on how much yarn."""

    aid_bottle = forms.ChoiceField(label="From bottle", required=False)
    aid_percent = strength_field(
        label="Or from a stock of",
        required=False,
        help_text="The strength that it had, if the bottle is gone.",
    )
    aid_ml = volume_field(label="Poured")
    aid_yarn_g = mass_field(label="On dry yarn")

    def __init__(self, data: Mapping[str, Any] | None = None) -> None:
        super().__init__(data)
        self._bottles = {each.code: each for each in shelf()}
        known = [(each.code, _words(each)) for each in self._bottles.values()]
        self.fields["aid_bottle"].choices = [_OTHER, *known]  # type: ignore[attr-defined]

    @property
    def bottle(self) -> ShelfBottle | None:
        """The bottle that was chosen, if any."""
        return self._bottles.get(self.cleaned_data.get("aid_bottle", ""))

    def clean(self) -> dict[str, Any]:
        """See that the strength is known from one side or the other."""
        sent = super().clean() or self.cleaned_data
        is_unknown = self.bottle is None and sent.get("aid_percent") is None
        if is_unknown and "aid_percent" not in self.errors:
            self.add_error(
                "aid_percent",
                "The strength is missing: choose the bottle, or type what it was.",
            )
        return sent

    def depth_percent(self) -> float:
        """Return the depth that this much stock gave."""
        sent = self.cleaned_data
        bottle = self.bottle
        percent = sent["aid_percent"] if bottle is None else bottle.strength_percent
        return depth_given_percent(
            stock_ml=sent["aid_ml"],
            strength_percent=percent,
            fibre_mass_g=sent["aid_yarn_g"],
        )


def put_in(
    typed: dict[str, Any], depth: float, bottle: ShelfBottle | None, *, rows: int
) -> str:
    """Put a depth in the first row that waits for one; say which row that is."""
    words = f"That is a depth of {amount_text(depth, '%')}."
    dye = "" if bottle is None else str(bottle.dye_id)
    place = _waiting_row(typed, dye, rows)
    if place is None:
        return f"{words} Every row has a depth already: type it where it belongs."
    typed[f"depth_{place}"] = f"{depth:.6g}"
    typed[f"dye_{place}"] = typed.get(f"dye_{place}") or dye
    return f"{words} It now stands in row {place} above; keep it or change it."


def _waiting_row(typed: Mapping[str, Any], dye: str, rows: int) -> int | None:
    """Return the first row without a depth, one of this dye before the others."""
    waiting = [n for n in range(1, rows + 1) if not typed.get(f"depth_{n}")]
    same = [n for n in waiting if dye and typed.get(f"dye_{n}") == dye]
    free = [n for n in waiting if not dye or not typed.get(f"dye_{n}")]
    return next(iter([*same, *free]), None)


def _words(bottle: ShelfBottle) -> str:
    strength = amount_text(bottle.strength_percent, "%")
    return f"{bottle.code}: {bottle.dye_name}, {strength}"
