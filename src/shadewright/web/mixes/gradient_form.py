"""What a row of equal steps is asked by: its yarn, its two ends, how many steps."""

from collections.abc import Mapping, Sequence
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.core.quantities import percent
from shadewright.web.amounts import AmountField, mass_field, share_field
from shadewright.web.forms import StudioForm
from shadewright.web.mixes.asking import allowed_depth
from shadewright.workflows.choices import Choice
from shadewright.workflows.shades.gradients import LEAST_STEPS, MOST_STEPS, GradientWish
from shadewright.workflows.shades.swatches import DyeDoses

ROWS = 4
ENDS = ("first", "last")
_CHOICES = [(str(count), str(count)) for count in range(LEAST_STEPS, MOST_STEPS + 1)]


def _choice(label: str) -> forms.TypedChoiceField:
    return forms.TypedChoiceField(
        label=label, coerce=int, empty_value=None, required=False
    )


class GradientForm(StudioForm):
    """Two mixes of up to four dyes; without the second the first grows paler."""

    base = forms.TypedChoiceField(label="Base", coerce=int)
    steps = forms.TypedChoiceField(label="Steps", coerce=int, choices=_CHOICES)
    yarn = mass_field(label="Dry yarn of each skein")
    palest = share_field(
        label="The palest, of the deepest",
        required=False,
        help_text="Without a second mix; 0 is bare yarn.",
    )
    first_recipe = _choice("Take it from")
    last_recipe = _choice("Take it from")

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        bases: Sequence[Choice],
        dyes: Sequence[Choice],
        recipes: Sequence[Choice],
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        self._offer("base", bases)
        for end in ENDS:
            self._offer(f"{end}_recipe", recipes, none="the dyes below")
            for place in _places():
                self.fields[f"{end}_{place}"] = _choice(f"Dye {place}")
                self._offer(f"{end}_{place}", dyes, none="no dye")
                self.fields[f"{end}_{place}_depth"] = _depth_field(place)
        self.speak_plainly()

    def clean(self) -> dict[str, Any]:
        """Refuse a dye that stands twice, or a depth without its dye."""
        sent = super().clean() or {}
        for end in ENDS:
            named: set[int] = set()
            for place in _places():
                self._check_row(f"{end}_{place}", sent, named)
        return sent

    def doses(self, end: str) -> DyeDoses:
        """Return the mix of one end, as it was typed."""
        sent = self.cleaned_data
        rows = ((sent[f"{end}_{n}"], sent[f"{end}_{n}_depth"]) for n in _places())
        return tuple((dye, depth) for dye, depth in rows if dye and depth)

    def recipe(self, end: str) -> int | None:
        """Return the version that an end is taken from, if one was chosen."""
        found: int | None = self.cleaned_data[f"{end}_recipe"]
        return found

    @property
    def first_rows(self) -> tuple[tuple[BoundField, BoundField], ...]:
        """The fields of the first mix, a dye and its depth a row."""
        return self._rows("first")

    @property
    def last_rows(self) -> tuple[tuple[BoundField, BoundField], ...]:
        """The fields of the second mix."""
        return self._rows("last")

    def _rows(self, end: str) -> tuple[tuple[BoundField, BoundField], ...]:
        names = [f"{end}_{place}" for place in _places()]
        return tuple((self[name], self[f"{name}_depth"]) for name in names)

    def _offer(self, name: str, choices: Sequence[Choice], *, none: str = "") -> None:
        field = self.fields[name]
        if isinstance(field, forms.ChoiceField):
            first = [("", none)] if none else []
            field.choices = [*first, *((each.id, each.words) for each in choices)]

    def _check_row(self, name: str, sent: dict[str, Any], named: set[int]) -> None:
        dye, depth = sent.get(name), sent.get(f"{name}_depth")
        if dye is not None and dye in named:
            self.add_error(name, "This dye stands there twice; add the two depths.")
        if depth and dye is None and name not in self.errors:
            self.add_error(name, "Choose the dye of this depth.")
        if dye is not None:
            named.add(dye)


def initial_of(wish: GradientWish, *, yarn_g: float) -> dict[str, Any]:
    """Return what stands in the form for a row that is asked for."""
    found: dict[str, Any] = {
        "base": wish.base_id,
        "steps": wish.steps,
        "yarn": yarn_g,
        "palest": 100 * wish.palest_share,
    }
    for end, doses in zip(ENDS, (wish.first, wish.last), strict=True):
        for place, (dye, depth) in enumerate(doses[:ROWS], start=1):
            found |= {f"{end}_{place}": dye, f"{end}_{place}_depth": depth}
    return found


def _places() -> range:
    return range(1, ROWS + 1)


def _depth_field(place: int) -> AmountField:
    return AmountField(
        unit="%", read=_depth, label=f"Depth of dye {place}", required=False
    )


def _depth(text: str, *, name: str, default_unit: str) -> float:
    return percent(text, name=name, default_unit=default_unit, guard=allowed_depth)
