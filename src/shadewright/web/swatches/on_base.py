"""What swatches were dyed on, as a form asks for it: a base, by its name."""

from typing import Any

from django import forms

from shadewright.web.forms import DeedForm
from shadewright.workflows.bases import bases, named_base


class OnBaseForm(DeedForm):
    """A base; one that is new says what it is made of."""

    base = forms.CharField(
        label="Base",
        max_length=60,
        widget=forms.TextInput(attrs={"list": "known-bases", "autocomplete": "off"}),
    )
    fibres = forms.CharField(
        label="What it is made of",
        max_length=120,
        required=False,
        help_text="For a yarn that is new here, like 75 % wool, 25 % nylon.",
        widget=forms.TextInput(attrs={"list": "usual-fibres", "autocomplete": "off"}),
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        self.fields["fibres"].required = not bases()

    def clean(self) -> dict[str, Any]:
        """See that a new base says what it is made of."""
        sent = super().clean() or self.cleaned_data
        if sent.get("base") and not sent.get("fibres") and not named_base(sent["base"]):
            self.add_error(
                "fibres",
                "This yarn is new here: say what it is made of, like 100 % wool.",
            )
        return sent
