"""The form of a meter for colour: asked once, and then known at every reading."""

from typing import Any, ClassVar

from django import forms

from shadewright.core.quantities import require_above_zero
from shadewright.core.quantities.reading import Asked, written
from shadewright.errors import InputError
from shadewright.records.models import Meter
from shadewright.web.amounts import AmountField
from shadewright.web.catalogue.item_form import ItemForm
from shadewright.web.evidence.background import refit_soon
from shadewright.workflows.shades.meter_changes import keep_meter
from shadewright.workflows.shades.meter_spreads import spread_of_spot
from shadewright.workflows.stamps import Stamp

_MOST_SPREAD = 5.0

_CHOOSE = (
    "What the meter is set to: it stands in its menu, or beside its Lab, like D50/2°. "
    "If it can be set, set it to D65 and 10°: yarn is judged that way."
)
_PRINT = (
    "Common in print. Its Lab is carried to D65 and 10° and is less sure for it, the "
    "more so the more vivid the colour."
)
_WRONG = "Change it here: what it read is carried anew from what was typed."
_SET_ANEW = (
    "Add it as a meter of its own and retire this one: what was read before stays as "
    "it is."
)


def lab_spread(text: str, *, name: str, default_unit: str = "ΔE") -> float:
    """Return a spread as a distance in Lab, above none and at most 5."""
    asked = Asked(name=name, example="a number, like 0.2")
    found = written(text, asked=asked)
    if found.unit:
        raise asked.refusal(text)
    return require_above_zero(
        found.number, most=_MOST_SPREAD, unit=default_unit, name=name
    )


class MeterForm(ItemForm):
    """A meter for colour."""

    spread = AmountField(
        unit="ΔE",
        read=lab_spread,
        label="Spread of one reading",
        required=False,
        help_text="Its standard deviation as a distance in Lab. Its sheet says less "
        "than yarn does: better give the readings of one spot below.",
    )
    spot = forms.CharField(
        label="Or one spot, read ten times",
        required=False,
        max_length=2000,
        widget=forms.Textarea(attrs={"rows": 3, "autocomplete": "off"}),
        help_text="Lift the meter off the yarn between. L, a, b, one reading a line.",
    )

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "geometry"),
        ("light", "observer"),
        ("spread", "spot"),
        ("notes",),
    )
    side_title = "Which light and which eye"
    side: ClassVar[tuple[tuple[str, str], ...]] = (
        ("What to choose", _CHOOSE),
        ("D50, or 2°", _PRINT),
        ("It was written down wrongly", _WRONG),
        ("It was set to another from today on", _SET_ANEW),
    )

    class Meta:
        model = Meter
        fields = ("name", "light", "observer", "geometry", "spread", "notes")
        labels = {
            "name": "Your name for it",
            "light": "Light",
            "observer": "Field of view",
        }
        help_texts = {
            "geometry": "As on its sheet, like d/8 or 45/0.",
            "light": "The daylight that it reckons Lab for.",
            "observer": "10° is usual for yarn, 2° in print and on screens.",
        }
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}

    def clean(self) -> dict[str, Any]:
        """Take the spread from the readings of one spot, where they are given."""
        sent: dict[str, Any] = super().clean() or {}
        if sent.get("spot", "").strip():
            try:
                sent["spread"] = spread_of_spot(sent["spot"])
            except InputError as error:
                self.refuse(error)
        return sent

    def keep(self, stamp: Stamp) -> str:
        """Keep the meter, and carry anew what it read where its light changed."""
        found = keep_meter(self.instance, stamp)
        if found.carried:
            refit_soon(why=f"{self.instance} reckons for another light")
        return found.words
