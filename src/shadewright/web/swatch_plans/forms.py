"""What is asked to plan a set of swatches, kind by kind."""

from collections.abc import Mapping
from typing import Any, ClassVar

from django import forms
from django.core.exceptions import ValidationError

from shadewright.core.mixing.laying_out import MOST_PARTS, MOST_RUNGS
from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.amounts import ratio_field, share_field
from shadewright.web.forms import DayInput, DeedForm, NumberInput
from shadewright.web.mix_text import mix_of
from shadewright.web.targets import target_told
from shadewright.workflows.choices import bases_in_use
from shadewright.workflows.dyes import dyes
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.plan_practice import practices_to_follow
from shadewright.workflows.shades.plan_wishes import (
    JAR_RATIO,
    MOST_SWATCHES,
    YARN_G,
    PlanKind,
    PlanWish,
    dye_names,
)
from shadewright.workflows.shades.wanted import wanted_colours

_YARN = [(f"{each:g}", amount_text(each, "g")) for each in YARN_G]


class SetForm(DeedForm):
    """What every kind of set asks."""

    asked: ClassVar[tuple[str, ...]] = ()

    kind = forms.ChoiceField(choices=PlanKind.choices, widget=forms.HiddenInput)
    base = forms.TypedChoiceField(label="Base", coerce=int)
    yarn_g = forms.TypedChoiceField(
        label="Yarn of each swatch", choices=_YARN, coerce=float
    )
    dyed_on = forms.DateField(label="Day", widget=DayInput())
    like = forms.TypedChoiceField(
        label="Acid and heat", coerce=int, required=False, empty_value=None
    )
    liquor_ratio = ratio_field(
        label="Liquor ratio",
        help_text=f"Empty: 1:{JAR_RATIO:g}, as jars usually want (50 to 100).",
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        bases = [(each.id, each.words) for each in bases_in_use()]
        self._offer("base", "Choose a base", bases)
        known = [
            (each.id, f"As in {each.recipe_name}, version {each.number}")
            for each in practices_to_follow()
        ]
        self._offer("like", "As usual here", known)

    @property
    def asks(self) -> list[forms.BoundField]:
        """The fields of this kind of set, in order."""
        return [self[name] for name in self.asked]

    def wish(self) -> PlanWish:
        """Return what the form says."""
        sent = self.cleaned_data
        return PlanWish(
            kind=PlanKind(sent["kind"]),
            base_id=sent["base"],
            dyed_on=sent["dyed_on"],
            yarn_g=sent["yarn_g"],
            liquor_ratio=sent["liquor_ratio"] or JAR_RATIO,
            like_id=sent["like"],
            **self.of_this_kind(),
        )

    @property
    def recipe(self) -> str:
        """The recipe that a set is laid around, in words; empty for other sets."""
        return ""

    def of_this_kind(self) -> dict[str, Any]:
        """Return what only this kind of set says."""
        raise NotImplementedError

    def _offer(self, name: str, empty: str, choices: list[tuple[int, str]]) -> None:
        field = self.fields[name]
        offered = [("", empty), *((str(key), words) for key, words in choices)]
        field.choices = offered  # type: ignore[attr-defined]


class DyesForm(SetForm):
    """A set of dyes that somebody ticks."""

    dyes = forms.TypedMultipleChoiceField(
        label="Dyes", coerce=int, widget=forms.CheckboxSelectMultiple
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        self.fields["dyes"].choices = _dyes()  # type: ignore[attr-defined]


class LadderForm(DyesForm):
    """Depths of single dyes, each half of the one before."""

    asked = ("dyes", "top_percent", "rungs")

    top_percent = share_field(label="Deepest")
    rungs = forms.IntegerField(
        label="Rungs", min_value=1, max_value=MOST_RUNGS, widget=NumberInput()
    )

    def of_this_kind(self) -> dict[str, Any]:
        """Return dyes, depth and rungs."""
        sent = self.cleaned_data
        return {
            "dye_ids": tuple(sent["dyes"]),
            "top_percent": sent["top_percent"],
            "rungs": sent["rungs"],
        }


class MixesForm(DyesForm):
    """Two dyes or three in parts."""

    asked = ("dyes", "total_percent", "parts")

    dyes = forms.TypedMultipleChoiceField(
        label="Two dyes or three", coerce=int, widget=forms.CheckboxSelectMultiple
    )
    total_percent = share_field(label="Depth together")
    parts = forms.IntegerField(
        label="Parts", min_value=1, max_value=MOST_PARTS, widget=NumberInput()
    )

    def of_this_kind(self) -> dict[str, Any]:
        """Return dyes, depth and parts."""
        sent = self.cleaned_data
        return {
            "dye_ids": tuple(sent["dyes"]),
            "total_percent": sent["total_percent"],
            "parts": sent["parts"],
        }


class TowardsForm(SetForm):
    """A set that may be for a colour: one that is kept, or one that was looked for.

    ``target`` carries the latter as an address does; it is kept with the set.
    """

    nobody: ClassVar[str] = "Not said"

    target = forms.CharField(max_length=2000, required=False, widget=forms.HiddenInput)

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        self.looked_for = target_told(str(self["target"].value() or ""))
        if self.looked_for is None:
            nobody = self.nobody
        else:
            nobody = f"{self.looked_for.name}, kept with the set"
        self._offer("wanted", nobody, _wanted())

    def for_colour(self) -> dict[str, Any]:
        """Return the colour that the set is for, if it is for one."""
        chosen = self.cleaned_data["wanted"]
        target = None if chosen is not None else self.looked_for
        return {"wanted_id": chosen, "target": target}


class NextForm(TowardsForm):
    """The swatches that would help the palette most."""

    asked = ("count", "wanted")
    nobody = "All colours alike"

    count = forms.IntegerField(
        label="Swatches", min_value=1, max_value=MOST_SWATCHES, widget=NumberInput()
    )
    wanted = forms.TypedChoiceField(
        label="Towards a colour", coerce=int, required=False, empty_value=None
    )

    def of_this_kind(self) -> dict[str, Any]:
        """Return how many, and towards which colour."""
        return {"count": self.cleaned_data["count"], **self.for_colour()}


class BracketForm(TowardsForm):
    """Three trials around a recipe that is given."""

    asked = ("wanted",)

    mix = forms.CharField(max_length=200, widget=forms.HiddenInput)
    wanted = forms.TypedChoiceField(
        label="For the colour", coerce=int, required=False, empty_value=None
    )

    def clean_mix(self) -> object:
        """Return the recipe’s dyes with their depths."""
        try:
            return mix_of(self.cleaned_data["mix"])
        except StudioError as error:
            raise ValidationError(error.sentence) from error

    @property
    def recipe(self) -> str:
        """The recipe, dye by dye."""
        doses = getattr(self, "cleaned_data", {}).get("mix") or ()
        names = dye_names([dye for dye, _depth in doses])
        known = [(names[dye], depth) for dye, depth in doses if dye in names]
        return mix_words(known) if known else ""

    def of_this_kind(self) -> dict[str, Any]:
        """Return the recipe, and the colour that it is for."""
        return {"mix": self.cleaned_data["mix"], **self.for_colour()}


FORMS: dict[PlanKind, type[SetForm]] = {
    PlanKind.LADDER: LadderForm,
    PlanKind.MIXES: MixesForm,
    PlanKind.NEXT: NextForm,
    PlanKind.BRACKET: BracketForm,
}
BEGUN: dict[PlanKind, dict[str, str]] = {
    PlanKind.LADDER: {"top_percent": "2", "rungs": "4"},
    PlanKind.MIXES: {"total_percent": "1", "parts": "4"},
    PlanKind.NEXT: {"count": "4"},
    PlanKind.BRACKET: {},
}
"""What each kind begins with."""


def _wanted() -> list[tuple[int, str]]:
    return [(int(each.key), each.name) for each in wanted_colours()]


def _dyes() -> list[tuple[int, str]]:
    return [(each.id, each.name) for each in dyes()]
