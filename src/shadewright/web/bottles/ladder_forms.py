"""What a strength test asks: beside which bottle, and what the skein looks like."""

from collections.abc import Iterator, Mapping
from typing import Any

from django import forms

from shadewright.core.baths.ladder import RUNGS_PERCENT
from shadewright.core.quantities import amount_text
from shadewright.web.forms import DeedForm, StudioForm
from shadewright.workflows.shelf import ShelfBottle

_PALER, _DEEPER = "paler", "deeper"
_BOUNDS = {
    _PALER: "Paler than the whole ladder is no strength, only a bound. Pour the bottle "
    "away, or keep it for play.",
    _DEEPER: "Deeper than the whole ladder: water has gone, or the label is wrong. "
    "Weigh the bottle or read its level, then test it again.",
}


class FreshForm(StudioForm):
    """Which fresh bottle it is dyed beside."""

    fresh = forms.ChoiceField(label="Beside")

    def __init__(self, *, code: str, bottles: tuple[ShelfBottle, ...]) -> None:
        super().__init__(initial={"fresh": code})
        field = self.fields["fresh"]
        assert isinstance(field, forms.ChoiceField)  # ruff: ignore[assert] - typed
        field.choices = [(each.code, _named(each)) for each in bottles]


class ReadingForm(DeedForm):
    """What the old stock's skein looks like beside the ladder."""

    reading = forms.ChoiceField(label="It looks like", widget=forms.RadioSelect)
    note = forms.CharField(label="Note", max_length=200, required=False)

    def __init__(self, data: Mapping[str, Any] | None = None) -> None:
        super().__init__(data)
        field = self.fields["reading"]
        assert isinstance(field, forms.ChoiceField)  # ruff: ignore[assert] - typed
        field.choices = list(_readings())

    def clean_reading(self) -> tuple[float, float]:
        """Return the rungs on either side; refuse what is only a bound."""
        said = str(self.cleaned_data["reading"])
        if said in _BOUNDS:
            raise forms.ValidationError(_BOUNDS[said])
        low, _, high = said.partition("-")
        return float(low), float(high or low)


def _readings() -> Iterator[tuple[str, str]]:
    yield _PALER, f"Paler than {RUNGS_PERCENT[0]:.0f} %"
    for place, share in enumerate(RUNGS_PERCENT):
        yield f"{share:.0f}", f"{share:.0f} %"
        if place + 1 < len(RUNGS_PERCENT):
            higher = RUNGS_PERCENT[place + 1]
            yield (
                f"{share:.0f}-{higher:.0f}",
                f"Between {share:.0f} and {higher:.0f} %",
            )
    yield _DEEPER, f"Deeper than {RUNGS_PERCENT[-1]:.0f} %"


def _named(bottle: ShelfBottle) -> str:
    strength = amount_text(bottle.strength_percent, "%")
    return f"{bottle.code}, {strength}, {bottle.evidence}"
