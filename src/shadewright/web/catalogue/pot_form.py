"""The form of a pot."""

from typing import ClassVar

from django import forms

from shadewright.records.models import Pot
from shadewright.web.amounts import kilograms_field, litres_field
from shadewright.web.catalogue.item_form import ItemForm


class PotForm(ItemForm):
    """A pot or a jar that yarn is dyed in."""

    volume_l = litres_field(
        label="Holds, filled to the brim",
        help_text="A bath is planned with a tenth to spare.",
    )
    mass_kg = kilograms_field(
        label="Weight, empty",
        required=False,
        help_text="It takes heat too, and counts when the pot is lifted hot.",
    )

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "material"),
        ("volume_l", "mass_kg"),
        ("notes",),
    )

    class Meta:
        model = Pot
        fields = ("name", "material", "volume_l", "mass_kg", "notes")
        labels = {"name": "Your name for it"}
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}
