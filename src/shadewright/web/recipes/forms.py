"""What is asked for a recipe: rows of dyes and helpers, and how it is dyed."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.web.amounts import AmountField, ratio_field
from shadewright.web.forms import StudioForm
from shadewright.web.purposes import purpose_field
from shadewright.web.recipes.amounts import depth
from shadewright.web.recipes.curve_form import HEAT, stops_initial
from shadewright.web.recipes.helper_form import HelpersForm, helpers_initial
from shadewright.workflows.dyes import dyes
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText

LEAST_ROWS, MORE_ROWS, MOST_ROWS = 4, 3, 24
_AMOUNTS = ("liquor_ratio", *HEAT)
_WORDS = ("ties", "stirring", "look_at_15", "notes", "as_written", "why_changed")
_SAID = ("purpose", *_AMOUNTS, *_WORDS)


@dataclass(frozen=True, kw_only=True)
class DoseRow:
    """The fields of one dye."""

    dye: BoundField
    depth: BoundField
    words: BoundField


class NameForm(StudioForm):
    """Another name for a recipe."""

    name = forms.CharField(label="Name", max_length=60)


class VersionForm(HelpersForm):
    """All that a version says; rows that stay empty are passed over."""

    rows = forms.IntegerField(widget=forms.HiddenInput, required=False)
    liquor_ratio = ratio_field(
        label="Liquor ratio", help_text="30 or 1:30: ml of bath to a gram of yarn."
    )
    purpose = purpose_field()
    ties = forms.CharField(
        max_length=200,
        required=False,
        help_text="How many, how tight, where: it moves the colour.",
    )
    stirring = forms.CharField(max_length=200, required=False)
    look_at_15 = forms.CharField(
        label="Look at 15 minutes",
        max_length=200,
        required=False,
        help_text="What yarn and bath should look like by then.",
    )
    notes = forms.CharField(
        max_length=4000, required=False, widget=forms.Textarea(attrs={"rows": 3})
    )
    as_written = forms.CharField(
        label="As it was written",
        max_length=4000,
        required=False,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="An old recipe word for word: 3 tsp of my blue, a glug of vinegar.",
    )
    why_changed = forms.CharField(
        label="Why it is changed", max_length=300, required=False
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
        before: RecipeText | None = None,
    ) -> None:
        said = data if data is not None else initial or {}
        self.count = _row_count(said.get("rows"))
        super().__init__(data, initial={"rows": self.count, **(initial or {})})
        known = _dye_choices(before)
        for number in self._dose_numbers:
            self.fields |= _dose_fields(number, known)
        self.add_helper_fields(before)
        self.speak_plainly()

    @property
    def _dose_numbers(self) -> range:
        return range(1, self.count + 1)

    @property
    def dose_rows(self) -> tuple[DoseRow, ...]:
        """The rows of the dyes."""
        return tuple(
            DoseRow(
                dye=self[f"dye_{n}"], depth=self[f"depth_{n}"], words=self[f"words_{n}"]
            )
            for n in self._dose_numbers
        )

    def clean(self) -> dict[str, Any]:
        """See that each row is whole, and that something is said at all."""
        sent = super().clean() or self.cleaned_data
        seen: set[int] = set()
        for number in self._dose_numbers:
            self._clean_dose(number, seen)
        self.clean_helpers()
        is_bare = not any(sent.get(f"words_{n}") for n in self._dose_numbers)
        if not seen and is_bare and not sent.get("as_written") and not self.errors:
            self.add_error(
                "dye_1",
                "The dye is missing. Choose at least one, or write the old recipe "
                "down as it is.",
            )
        return sent

    def text(self) -> RecipeText:
        """Return what the form says."""
        sent = self.cleaned_data
        said = {name: sent[name] for name in _SAID}
        doses = tuple(self._doses())
        return RecipeText(
            doses=doses, helpers=self.helpers(), stops=self.stops(), **said
        )

    def _clean_dose(self, number: int, seen: set[int]) -> None:
        dye, words = self.sent_in("dye", number), self.sent_in("words", number)
        is_asked = f"depth_{number}" not in self.errors and not words
        has_depth = self.sent_in("depth", number) is not None
        if dye and not has_depth and is_asked:
            self.add_error(
                f"depth_{number}",
                "The depth is missing: type it in %, or write in words what is known.",
            )
        if not dye and has_depth and is_asked:
            self.add_error(f"dye_{number}", "The dye is missing: choose it.")
        if dye and dye in seen:
            self.add_error(
                f"dye_{number}",
                "This dye stands above already: add the two depths there.",
            )
        if dye:
            seen.add(dye)

    def _doses(self) -> Iterator[DoseLine]:
        names = {dye.id: dye.name for dye in dyes()}
        for number in self._dose_numbers:
            dye, words = self.sent_in("dye", number), self.sent_in("words", number)
            if dye or words:
                yield DoseLine(
                    dye_id=dye or None,
                    dye_name=names.get(dye, ""),
                    depth_percent=self.sent_in("depth", number),
                    as_written=words,
                )


class RecipeForm(VersionForm):
    """A new recipe: its name and its first version."""

    name = forms.CharField(label="Name", max_length=60)
    field_order = ("name",)


def initial_of(text: RecipeText) -> dict[str, Any]:
    """Return a version as its form shows it, with a row or two to spare."""
    rows = max(LEAST_ROWS, len(text.doses) + 1, len(text.helpers) + 2)
    said: dict[str, Any] = {"rows": rows}
    said |= {name: getattr(text, name) for name in _SAID} | stops_initial(text.stops)
    for number, dose in enumerate(text.doses, start=1):
        said[f"dye_{number}"] = dose.dye_id or ""
        said[f"depth_{number}"] = dose.depth_percent
        said[f"words_{number}"] = dose.as_written
    said |= helpers_initial(text.helpers)
    return said | {"why_changed": ""}


def _row_count(typed: object) -> int:
    text = str(typed or "")
    count = int(text) if text.isascii() and text.isdecimal() and len(text) < 4 else 0
    return min(max(count, LEAST_ROWS), MOST_ROWS)


def _dose_fields(number: int, known: list[tuple[str, str]]) -> dict[str, forms.Field]:
    return {
        f"dye_{number}": forms.TypedChoiceField(
            label=f"Dye {number}", choices=known, coerce=int, required=False
        ),
        f"depth_{number}": AmountField(
            unit="%", read=depth, label=f"Depth {number}", required=False
        ),
        f"words_{number}": forms.CharField(
            label=f"Or in words {number}", max_length=120, required=False
        ),
    }


def _dye_choices(before: RecipeText | None) -> list[tuple[str, str]]:
    known = {str(dye.id): dye.name for dye in dyes()}
    old = () if before is None else before.doses
    known |= {str(dose.dye_id): dose.dye_name for dose in old if dose.dye_id}
    return [("", "Choose a dye"), *known.items()]
