"""What is asked to take one acid for another."""

from typing import Any, cast

from django import forms

from shadewright.errors import InputError
from shadewright.web.amounts import per_100_ml_field, some_mass, some_volume
from shadewright.web.forms import NumberInput, StudioForm
from shadewright.workflows.acid_for_acid import (
    BASES_PH,
    HANDY_PH,
    AcidForAcid,
    citric_for,
    vinegar_for,
)

VINEGAR, CITRIC, CRYSTALS = "vinegar", "citric", "citric-mono"
HAVE = (
    (VINEGAR, "Vinegar"),
    (CITRIC, "Citric acid, anhydrous"),
    (CRYSTALS, "Citric acid, monohydrate"),
)


def basis_words(by_ph: float | None) -> str:
    """Return what counts: all the acid, or what is given up by a pH."""
    if by_ph is None:
        return "all the acid in it"
    return f"acid given up by pH {by_ph:g}"


_BASES = tuple((str(by_ph), basis_words(by_ph)) for by_ph in BASES_PH)


class AcidForAcidForm(StudioForm):
    """How much of which acid, and on which basis another is set against it."""

    have = forms.ChoiceField(label="Instead of", choices=HAVE, initial=VINEGAR)
    amount = forms.CharField(
        label="Amount",
        max_length=40,
        initial="100",
        widget=NumberInput(),
        help_text="Vinegar in ml, citric acid in g.",
    )
    strength = per_100_ml_field(
        label="Strength of the vinegar", help_text="As on its bottle."
    )
    basis = forms.ChoiceField(
        label="What counts", choices=_BASES, initial=str(HANDY_PH)
    )

    @property
    def by_ph(self) -> float | None:
        """The basis that was chosen."""
        chosen = self.cleaned_data["basis"]
        return next(by_ph for by_ph in BASES_PH if str(by_ph) == chosen)

    def clean(self) -> dict[str, Any]:
        """Read the amount in the unit of its acid."""
        sent = super().clean() or self.cleaned_data
        read = some_volume if sent.get("have") == VINEGAR else some_mass
        if sent.get("amount") and sent.get("have"):
            try:
                sent["amount"] = read(sent["amount"], name="Amount")
            except InputError as error:
                self.add_error("amount", error.sentence)
        return sent

    def answer(self) -> AcidForAcid:
        """Return what stands for it."""
        sent = self.cleaned_data
        amount = cast("float", sent["amount"])
        if sent["have"] == VINEGAR:
            return vinegar_for(volume_ml=amount, strength_g_per_100ml=sent["strength"])
        return citric_for(mass_g=amount, is_monohydrate=sent["have"] == CRYSTALS)
