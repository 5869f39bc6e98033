"""What is asked for a search: the colour, the yarn, and what a recipe may hold."""

from collections.abc import Mapping
from typing import Any

from django import forms
from django.forms import BoundField
from django.http import QueryDict

from shadewright.core.colour import Light
from shadewright.core.mixing import Palette
from shadewright.errors import MissingError, StudioError
from shadewright.exchange.typed_spectrum import typed_spectra
from shadewright.web.forms import NumberInput, StudioForm
from shadewright.web.matching.asking import Asked, asked_of, query_of
from shadewright.web.swatches.colour_fields import pick_field, said_colour, typed_field
from shadewright.workflows.shades.mixing_page import palette_bases, palette_dyes
from shadewright.workflows.shades.saving import likes
from shadewright.workflows.shades.wanted import (
    CameFrom,
    read_swatches,
    wanted_colours,
)

_LIGHTS = (
    (str(Light.A), "Lamp (A)"),
    (str(Light.LED_B3), "LED (LED-B3)"),
    (str(Light.FL11), "Tube (FL11)"),
)
_WAYS = (
    (CameFrom.COLOUR, "Picked or typed"),
    (CameFrom.WANTED, "A wanted colour that is kept"),
    (CameFrom.SWATCH, "A swatch of ours"),
    (CameFrom.LOT, "A lot"),
    (CameFrom.SPECTRUM, "A spectrum"),
)
_ROLES = (("", "May be in it"), ("with", "Must be in it"), ("without", "Left out"))
_TYPED = ("name", "base", "grams", "tolerance", "most", "depth", "like", "version")
_MARKS = ("shelf", "nometal")


class FindForm(StudioForm):
    """A search; sent by GET, so that its address says all of it."""

    by = forms.ChoiceField(
        label="Colour comes from", choices=_WAYS, widget=forms.RadioSelect
    )
    pick = pick_field("the wanted colour")
    colour = typed_field("Colour: #556f4a, or L, a, b (D65, 10°)")
    name = forms.CharField(label="Its name", max_length=60, required=False)
    wanted = forms.ChoiceField(label="Wanted colour", required=False)
    swatch = forms.ChoiceField(label="Swatch", required=False)
    lot = forms.CharField(label="Number of the lot", max_length=16, required=False)
    spectrum = forms.CharField(
        label="Spectrum",
        required=False,
        max_length=20_000,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="31 reflectances from 400 to 700 nm, or what the meter’s file holds.",
    )
    base = forms.ChoiceField(label="On")
    grams = forms.CharField(
        label="Batch", max_length=12, required=False, widget=NumberInput()
    )
    tolerance = forms.CharField(
        label="Tolerance (ΔE)", max_length=6, required=False, widget=NumberInput()
    )
    light = forms.MultipleChoiceField(
        label="Judge a spectrum under daylight and",
        choices=_LIGHTS,
        required=False,
        widget=forms.CheckboxSelectMultiple,
    )
    most = forms.ChoiceField(
        label="Dyes at most", choices=[(n, n) for n in "1234"], required=False
    )
    depth = forms.CharField(
        label="All dyes together at most",
        max_length=8,
        required=False,
        widget=NumberInput(),
    )
    shelf = forms.BooleanField(label="Only what is on the shelf", required=False)
    nometal = forms.BooleanField(label="Without metal-complex dyes", required=False)
    like = forms.ChoiceField(label="Acid and heat of a saved recipe", required=False)
    version = forms.CharField(required=False, widget=forms.HiddenInput)

    def __init__(
        self,
        palette: Palette,
        data: QueryDict | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=initial)
        self._palette = palette
        self.asked: Asked | None = None
        kept = wanted_colours()
        self._offer("wanted", [(each.key, each.name) for each in kept])
        self._offer("swatch", read_swatches())
        self._bases = {base.id: base.words for base in palette_bases(palette)}
        self._offer("base", list(self._bases.items()))
        self._offer("like", [("", "As dyed last on this yarn"), *likes()])
        for dye in palette_dyes(palette):
            self.fields[f"dye_{dye.id}"] = forms.ChoiceField(
                label=dye.words, choices=_ROLES, required=False
            )
        self.speak_plainly()

    @property
    def dye_rows(self) -> tuple[BoundField, ...]:
        """The dyes, each with what it may be in a recipe."""
        return tuple(self[name] for name in self.fields if name.startswith("dye_"))

    def base_words(self, base_id: int) -> str:
        """Return the name of a base that can be chosen; nothing for another."""
        return self._bases.get(base_id, "")

    @property
    def has_filters(self) -> bool:
        """Whether anything is asked of the dyes that is not as usual."""
        names = ("shelf", "nometal", "like", *(row.name for row in self.dye_rows))
        said = [self[name].value() for name in names]
        return any(said) or self["most"].value() not in {None, "4", ""}

    def clean(self) -> dict[str, Any]:
        """Read the whole wish; what cannot be meant stands by its field."""
        sent = super().clean() or self.cleaned_data
        if self.errors:
            return sent
        try:
            self.asked = asked_of(self._as_address(sent), self._palette)
            if self.asked is None:
                raise MissingError(
                    name="The colour",
                    advice="Pick or type it, or choose one.",
                    argument=sent["by"],
                )
        except StudioError as error:
            self.refuse(error)
        return sent

    def _as_address(self, sent: Mapping[str, Any]) -> QueryDict:
        address = QueryDict(mutable=True)
        address[sent["by"]] = self._colour(sent)
        for key in _TYPED:
            address[key] = str(sent[key])
        for key in _MARKS:
            if sent[key]:
                address[key] = "on"
        address.setlist("light", sent["light"])
        for role in ("with", "without"):
            rows = (row.name for row in self.dye_rows if sent[row.name] == role)
            address[role] = ",".join(name.removeprefix("dye_") for name in rows)
        return address

    def _colour(self, sent: Mapping[str, Any]) -> str:
        if sent["by"] == CameFrom.COLOUR:
            return said_colour(typed=sent["colour"], picked=sent["pick"])
        if sent["by"] == CameFrom.SPECTRUM and sent["spectrum"].strip():
            first = typed_spectra(sent["spectrum"])[0]
            return ",".join(f"{part:.4g}" for part in first)
        return str(sent[sent["by"]])

    def _offer(self, name: str, choices: list[tuple[Any, str]]) -> None:
        field = self.fields[name]
        assert isinstance(field, forms.ChoiceField)  # ruff: ignore[assert]
        field.choices = choices if field.required else [("", "Choose one"), *choices]


def initial_of(asked: Asked) -> dict[str, Any]:
    """Return a wish as its form shows it."""
    query = query_of(asked)
    wish = asked.wish
    said: dict[str, Any] = {"by": wish.wanted.came_from, "most": str(wish.most_dyes)}
    said |= {
        key: value for key, value in query.items() if key not in {"with", "without"}
    }
    said |= {
        "grams": f"{wish.batch_g:g}",
        "tolerance": f"{wish.tolerance:g}",
        "depth": f"{wish.most_depth_percent:g}",
        "light": [str(light) for light in wish.lights],
    }
    roles = {"with": wish.with_dyes, "without": wish.without_dyes}
    return said | {f"dye_{dye}": role for role, dyes in roles.items() for dye in dyes}
