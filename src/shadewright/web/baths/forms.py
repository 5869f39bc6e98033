"""What is asked to plan a bath, to change its bottle, to give it up."""

from collections.abc import Mapping
from contextlib import suppress
from typing import Any

from django import forms

from shadewright.errors import NotFoundError
from shadewright.web.amounts import mass_field, ratio_field
from shadewright.web.asking import number_said
from shadewright.web.baths.dosing import said_dosing, scale_choices, way_choices
from shadewright.web.forms import DayInput, DeedForm, NumberInput
from shadewright.web.purposes import purpose_field
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.choices import (
    bases_in_use,
    lots_in_use,
    pots_in_use,
    sources_in_use,
)
from shadewright.workflows.heating import source_of
from shadewright.workflows.recipes import recipes, version
from shadewright.workflows.tools_at_hand import at_hand
from shadewright.workflows.waters import waters


class PlanForm(DeedForm):
    """Which recipe on which yarn, in which pot, on which day."""

    version = forms.TypedChoiceField(label="Recipe", coerce=int)
    base = forms.TypedChoiceField(label="Base", coerce=int)
    mill_lot = forms.TypedChoiceField(label="Mill lot", coerce=int, required=False)
    fibre_g = mass_field(
        label="Weight of the dry yarn",
        help_text="What the scale says, not what the band says.",
    )
    skeins = forms.IntegerField(label="Skeins", required=False, widget=NumberInput())
    is_swatch = forms.BooleanField(label="A swatch, 5 to 20 g", required=False)
    purpose = purpose_field(as_recipe=True)
    pot = forms.TypedChoiceField(label="Pot", coerce=int, required=False)
    source = forms.TypedChoiceField(label="On", coerce=int, required=False)
    water = forms.TypedChoiceField(label="Water", coerce=int, required=False)
    liquor_ratio = ratio_field(
        label="Liquor ratio", help_text="Empty: as the recipe says."
    )
    yarn_scale = forms.TypedChoiceField(
        label="Yarn weighed on", coerce=int, required=False
    )
    dosing = forms.ChoiceField(label="Doses", required=False)
    wet_yarn_g = mass_field(
        label="Wet yarn",
        required=False,
        help_text="With the water it was soaked in: that water is counted.",
    )
    dyed_on = forms.DateField(label="Day", widget=DayInput())
    notes = forms.CharField(
        max_length=2000, required=False, widget=forms.Textarea(attrs={"rows": 2})
    )
    instead_of = forms.CharField(
        max_length=16, required=False, widget=forms.HiddenInput
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        said = data if data is not None else initial or {}
        self._offer(
            "version", "Choose a recipe", _versions(number_said(said, "version"))
        )
        bases = [(str(each.id), each.words) for each in bases_in_use()]
        self._offer("base", "Choose a base", bases)
        lots = _lots(number_said(said, "base"))
        self._offer("mill_lot", "Not known", lots)
        pots = [(str(each.id), each.words) for each in pots_in_use()]
        self._offer("pot", "Not chosen yet", pots)
        sources = [(str(each.id), each.words) for each in sources_in_use()]
        self._offer("source", _last_time(number_said(said, "pot")), sources)
        filled = [(str(each.id), each.words) for each in waters()]
        self._offer("water", "Not known", filled)
        tools = at_hand()
        self.fields["yarn_scale"].choices = scale_choices(tools)  # type: ignore[attr-defined]
        self.fields["dosing"].choices = way_choices(tools)  # type: ignore[attr-defined]

    @property
    def has_lots(self) -> bool:
        """Whether there is a delivery to choose."""
        return len(self.fields["mill_lot"].choices) > 1  # type: ignore[attr-defined]

    @property
    def has_sources(self) -> bool:
        """Whether there is a burner to choose."""
        return len(self.fields["source"].choices) > 1  # type: ignore[attr-defined]

    def wish(self) -> BathWish:
        """Return what the form says."""
        sent = self.cleaned_data
        return BathWish(
            version_id=sent["version"],
            base_id=sent["base"],
            fibre_g=sent["fibre_g"],
            dyed_on=sent["dyed_on"],
            mill_lot_id=sent["mill_lot"] or None,
            pot_id=sent["pot"] or None,
            source_id=sent["source"] or None,
            water_id=sent["water"] or None,
            wet_yarn_g=sent["wet_yarn_g"],
            skeins=sent["skeins"],
            liquor_ratio=sent["liquor_ratio"],
            is_swatch=sent["is_swatch"],
            purpose=sent["purpose"],
            notes=sent["notes"],
            dosing=said_dosing(sent, self.data),
        )

    def _offer(self, name: str, none: str, known: list[tuple[str, str]]) -> None:
        self.fields[name].choices = [("", none), *known]  # type: ignore[attr-defined]


class BottleForm(DeedForm):
    """Another bottle for a dose that is not poured yet."""

    bottle = forms.ChoiceField(label="Bottle", widget=forms.RadioSelect)

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        bottles: list[tuple[str, str]],
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        self.fields["bottle"].choices = bottles  # type: ignore[attr-defined]


class GiveUpForm(DeedForm):
    """Why a bath ends without a lot."""

    why = forms.CharField(label="Why", max_length=200, required=False)


def _versions(asked: int | None) -> list[tuple[str, str]]:
    """Return the newest complete versions, and the one that is asked for."""
    newest = [each.newest for each in recipes()]
    known = {v.id: v for v in newest if v.is_complete}
    if asked is not None and asked not in known:
        with suppress(NotFoundError):  # the field then says that it is not offered
            known[asked] = version(asked)
    return [(str(v.id), f"{v.recipe_name}, version {v.number}") for v in known.values()]


def _lots(base: int | None) -> list[tuple[str, str]]:
    every = lots_in_use()
    return [
        (str(each.id), each.words)
        for each in every
        if base is None or each.base_id == base
    ]


def _last_time(pot: int | None) -> str:
    """Return what is chosen where nothing is: what the pot stood on the last time."""
    source = source_of(source_id=None, pot_id=pot)
    return "As last time with this pot" if source is None else f"Last: {source.name}"
