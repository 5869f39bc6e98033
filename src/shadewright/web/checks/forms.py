"""What is asked for a dry check, a standard, and the studio's own limits."""

from collections.abc import Mapping
from typing import Any

from django import forms

from shadewright.core.quality import Band, Formula, Tolerances
from shadewright.core.quantities import require_between
from shadewright.core.quantities.reading import Asked, written
from shadewright.web.amounts import AmountField
from shadewright.web.forms import DayInput, DeedForm, StudioForm, WholeNumberInput
from shadewright.web.swatches.read_form import ReadForm
from shadewright.workflows.judging.deciding import Choice
from shadewright.workflows.judging.snips import USUAL_MIN
from shadewright.workflows.judging.standards import Piece
from shadewright.workflows.judging.tolerances import StudioTolerances
from shadewright.workflows.lots import MOST_SKEINS


def _distance(text: str, *, name: str, default_unit: str) -> float:
    """Return a distance of two colours."""
    asked = Asked(name=name, example="a number alone, such as 1.5")
    found = written(text, asked=asked)
    if found.unit:
        raise asked.refusal(text)
    del default_unit  # printed beside the field, never typed
    return require_between(found.number, least=0.0, most=50.0, unit="", name=name)


def _distance_field(
    label: str, *, required: bool = True, help_text: str = ""
) -> AmountField:
    return AmountField(
        unit="ΔE", read=_distance, label=label, required=required, help_text=help_text
    )


class CheckForm(ReadForm):
    """Spots of a lot, one a line, an empty line before the next skein."""

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=initial)
        texts = self.fields["texts"]
        texts.label = "Spots"
        texts.help_text = (
            "One a line: L, a, b from a meter like 50, 12.5, −8, or a colour like "
            "#a0522d. An empty line begins the next skein. Six spots on three skeins "
            "tell much more than one."
        )
        texts.widget.attrs |= {"rows": 6, "data-typed": "lines"}
        self.speak_plainly()

    @property
    def skeins(self) -> tuple[int, ...]:
        """The skein of each spot; an empty line begins the next."""
        found, skein, was_empty = [], 1, False
        for line in (self.cleaned_data.get("texts") or "").strip().splitlines():
            if line.strip():
                skein += was_empty
                found.append(skein)
            was_empty = not line.strip()
        return tuple(found)


class DecideForm(DeedForm):
    """What is decided of a lot, in one tap."""

    choice = forms.ChoiceField(choices=[(each, each) for each in Choice])


class SnipForm(DeedForm):
    """How long a snip dries."""

    minutes = forms.IntegerField(
        label="Minutes to dry",
        initial=int(USUAL_MIN),
        min_value=1,
        max_value=1440,
        widget=WholeNumberInput(),
    )


class LotStandardForm(DeedForm):
    """A lot that becomes the standard."""

    where = forms.CharField(
        label="Where the piece lives",
        max_length=120,
        required=False,
        help_text="Dark and dry, like “Standards, tin 3”.",
    )
    why = forms.CharField(label="Why", max_length=200, required=False)

    @property
    def piece(self) -> Piece:
        """What was typed."""
        return Piece(where=self.cleaned_data["where"], why=self.cleaned_data["why"])


class PieceForm(ReadForm):
    """A piece that is no lot here becomes the standard."""

    where = forms.CharField(
        label="Where the piece lives", max_length=120, required=False
    )
    made_on = forms.DateField(label="Made on", required=False, widget=DayInput)
    why = forms.CharField(label="Why", max_length=200, required=False)

    @property
    def piece(self) -> Piece:
        """What was typed of the piece."""
        sent = self.cleaned_data
        return Piece(where=sent["where"], made_on=sent["made_on"], why=sent["why"])


class ToneForm(StudioForm):
    """How uneven a colourway is wanted."""

    least = _distance_field("Uneven by at least", required=False)
    most = _distance_field(
        "And at most",
        required=False,
        help_text="Mean distance of spots from their mean. Both empty: level yarn.",
    )

    @property
    def band(self) -> Band | None:
        """What was typed; None for level yarn."""
        least, most = self.cleaned_data["least"], self.cleaned_data["most"]
        if least is None and most is None:
            return None
        return Band(least=least or 0.0, most=50.0 if most is None else most)


class TolerancesForm(StudioForm):
    """How far a lot may be off."""

    formula = forms.ChoiceField(
        choices=[(each, each) for each in Formula],
        widget=forms.RadioSelect,
        help_text="CMC(2:1) is the textile trade’s; CIEDE2000 the newer one.",
    )
    match = _distance_field("It matches up to")
    alternate = _distance_field("Alternate skeins up to")
    new_lot = _distance_field(
        "A lot of its own up to", help_text="Beyond: correct it, or sell it as one-off."
    )

    @property
    def said(self) -> StudioTolerances:
        """What was typed."""
        sent = self.cleaned_data
        return StudioTolerances(
            formula=Formula(sent["formula"]),
            steps=Tolerances(
                match=sent["match"],
                alternate=sent["alternate"],
                new_lot=sent["new_lot"],
            ),
        )


class WantedForm(StudioForm):
    """How many skeins somebody asks for."""

    skeins = forms.IntegerField(
        label="Skeins that must go together",
        min_value=1,
        max_value=MOST_SKEINS,
        widget=WholeNumberInput(),
    )
