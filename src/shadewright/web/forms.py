"""What every form shares: plain sentences by the field, and what was typed kept.

A view binds the form, calls its workflow and hands a refusal back to it::

    form = DrawForm(request.POST)
    if form.is_valid():
        try:
            draw(...)
        except InputError as error:
            form.refuse(error)
        else:
            return redirect(...)
    return show(request, DrawPage(form=form, ...), status=422)
"""

from typing import Any
from uuid import uuid4

from django import forms

from shadewright.errors import StudioError


class PlainForm(forms.BaseForm):
    """Speaks our sentences; also mixes into a ModelForm.

    The browser's own balloons are off (``novalidate`` on the form tag), so that
    each fault stays on the page beside its field.
    """

    use_required_attribute = False

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        self.speak_plainly()

    def speak_plainly(self) -> None:
        """Give every field our sentences; call again after adding fields."""
        for name, field in self.fields.items():
            label = str(field.label or name.capitalize())
            field.error_messages |= _sentences(label) | _of_its_kind(field, label)

    def refuse(self, error: StudioError) -> None:
        """Put a refusal by the field that it names, or at the head of the form."""
        name = error.argument if error.argument in self.fields else None
        self.add_error(name, error.sentence)


class StudioForm(PlainForm, forms.Form):
    """A form of a workflow."""


class DeedForm(StudioForm):
    """A form that writes in a ledger; sent twice, it is written once."""

    deed = forms.UUIDField(widget=forms.HiddenInput, initial=uuid4)


class NumberInput(forms.TextInput):
    """A text field with the number keys; takes a decimal comma and a unit."""

    def __init__(self) -> None:
        super().__init__(attrs={"inputmode": "decimal", "autocomplete": "off"})


class WholeNumberInput(forms.TextInput):
    """A text field with the keys of digits."""

    def __init__(self) -> None:
        super().__init__(attrs={"inputmode": "numeric", "autocomplete": "off"})


class DayInput(forms.DateInput):
    """The browser's own calendar."""

    input_type = "date"

    def __init__(self) -> None:
        super().__init__(format="%Y-%m-%d")


def _sentences(label: str) -> dict[str, str]:
    filled = label.replace("%", "%%")  # Django fills numbers in with %
    return {
        "required": f"{label} is missing.",
        "invalid": f"{label} cannot be read as it was typed.",
        "invalid_choice": f"{label} must be one of those offered.",
        "null_characters_not_allowed": f"{label} holds a sign that no one can read.",
        "max_length": (
            f"{filled} may have up to %(limit_value)d characters; "
            "this has %(show_value)d."
        ),
    }


def _of_its_kind(field: forms.Field, label: str) -> dict[str, str]:
    if isinstance(field, forms.MultipleChoiceField):
        return {"required": f"{label}: choose one at least."}
    if type(field) is not forms.IntegerField:  # to Django any number is one
        return {}
    filled = label.replace("%", "%%")
    return {
        "invalid": f"{label} must be a whole number.",
        "min_value": f"{filled} must be at least %(limit_value)d; got %(show_value)d.",
        "max_value": f"{filled} must be at most %(limit_value)d; got %(show_value)d.",
    }
