"""The forms of bases, mill lots, acids and helpers."""

from typing import Any, ClassVar

from django import forms

from shadewright.core.tables.acids import ACIDS
from shadewright.records.models import Auxiliary, Base, MillLot
from shadewright.records.models.catalogue import AuxiliaryKind
from shadewright.web.amounts import (
    PriceField,
    mass_field,
    metres_field,
    per_100_ml_field,
    share_field,
)
from shadewright.web.catalogue.item_form import ItemForm, RowForm
from shadewright.web.days import PastDayField

_NOTES = {"notes": forms.Textarea(attrs={"rows": 2})}


class YarnForm(ItemForm):
    """A bare yarn."""

    undyeable_percent = share_field(
        label="Fibre that takes no acid dye",
        required=False,
        help_text="Its share of the weight, like polyester or cotton in a blend.",
    )
    skein_g = mass_field(label="One skein", required=False)
    metres_per_100_g = metres_field(label="Length of 100 g", required=False)
    price_per_kg = PriceField(
        label="Price of 1 kg", help_text="Bare, as it came: for the cost of a lot."
    )

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "fibres"),
        ("undyeable_percent", "is_superwash"),
        ("skein_g", "metres_per_100_g"),
        ("price_per_kg",),
        ("notes",),
    )

    def clean_undyeable_percent(self) -> float:
        """Take an empty field for none: pure wool has no such fibre."""
        return self.cleaned_data["undyeable_percent"] or 0.0

    class Meta:
        model = Base
        fields = (
            "name",
            "fibres",
            "is_superwash",
            "undyeable_percent",
            "skein_g",
            "metres_per_100_g",
            "price_per_kg",
            "notes",
        )
        labels = {"name": "Your name for it"}
        help_texts = {"fibres": "Like 80 % wool, 20 % nylon."}
        widgets = _NOTES


class MillLotForm(RowForm):
    """One delivery of a base."""

    received_on = PastDayField(label="Received on")
    received_g = mass_field(label="Weight", required=False)

    key = "lot"
    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("lot", "received_on"),
        ("received_g",),
        ("notes",),
    )

    class Meta:
        model = MillLot
        fields = ("lot", "received_on", "received_g", "notes")
        labels = {"lot": "Mill lot"}
        help_texts = {"lot": "As on the band or the sack: lots differ in how they dye."}
        widgets = _NOTES

    def clean_lot(self) -> str:
        """Tidy the lot, and refuse one that this base has already."""
        lot = " ".join(self.cleaned_data["lot"].split())
        others = MillLot.objects.exclude(pk=self.instance.pk)
        twin = others.filter(base_id=self.instance.base_id, lot__iexact=lot).first()
        return self.require_free(lot, twin, f"This base has a lot “{lot}” already.")


class AcidForm(ItemForm):
    """An acid, a salt or another helper in the bath."""

    strength_g_per_100_ml = per_100_ml_field(
        label="Strength of the liquid",
        required=False,
        help_text="As on its bottle. A powder has none.",
    )
    price_per_kg = PriceField(label="Price of 1 kg")

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "kind"),
        ("is_liquid",),
        ("strength_g_per_100_ml", "price_per_kg"),
        ("hazard_words",),
        ("data_sheet_link",),
        ("notes",),
    )
    suggestions = tuple(
        acid.name.capitalize() for acid in ACIDS.values() if acid.is_offered
    )

    class Meta:
        model = Auxiliary
        fields = (
            "name",
            "kind",
            "is_liquid",
            "strength_g_per_100_ml",
            "price_per_kg",
            "hazard_words",
            "data_sheet_link",
            "notes",
        )
        labels = {
            "kind": "What it is for",
            "is_liquid": "It is a liquid",
            "data_sheet_link": "Safety data sheet as a link",
        }
        widgets = {
            **_NOTES,
            "name": forms.TextInput(attrs={"list": "offered", "autocomplete": "off"}),
        }

    def clean(self) -> dict[str, Any]:
        """See that a liquid acid has a strength, and that a powder has none."""
        sent = super().clean() or self.cleaned_data
        strength, is_liquid = sent.get("strength_g_per_100_ml"), sent["is_liquid"]
        is_acid = sent.get("kind") == AuxiliaryKind.ACID
        faults = {
            (
                True,
                True,
                False,
            ): "The strength is missing: an acid that is a liquid has "
            "one on its bottle; household vinegar has about 5 g in 100 ml.",
            (
                False,
                is_acid,
                True,
            ): "A powder has no strength in 100 ml: empty this, or "
            "tick that it is a liquid.",
        }
        said = faults.get((is_liquid, is_acid, strength is not None))
        if said and "strength_g_per_100_ml" not in self.errors:
            self.add_error("strength_g_per_100_ml", said)
        return sent
