"""A field for the tool that something was measured with; it may stay unsaid."""

from django import forms

from shadewright.workflows.stock_tools import scales, ware
from shadewright.workflows.tools import ToolNow

NOT_SAID = ("", "Not said")


def tool_field(*, label: str) -> forms.TypedChoiceField:
    """Return a field whose answer is a tool's number, or None."""
    return forms.TypedChoiceField(
        label=label, coerce=int, empty_value=None, required=False
    )


def offer(form: forms.BaseForm, name: str, choices: list[tuple[str, str]]) -> None:
    """Set what a field offers, beside 'not said'."""
    field = form.fields[name]
    assert isinstance(field, forms.ChoiceField)  # ruff: ignore[assert] - typed
    field.choices = [NOT_SAID, *choices]


def offer_usual(
    form: forms.BaseForm,
    name: str,
    choices: list[tuple[str, str]],
    usual: ToolNow | None,
) -> None:
    """Offer tools, the usual one chosen; what is left unsaid is the usual one."""
    offer(form, name, choices)
    if usual is not None:
        field = form.fields[name]
        assert isinstance(field, forms.ChoiceField)  # ruff: ignore[assert] - typed
        field.choices = [("", f"As usual: {usual.name}"), *choices]
        field.initial = usual.id


def scale_choices() -> list[tuple[str, str]]:
    """Return the scales."""
    return [(str(tool.id), tool.name) for tool in scales()]


def ware_choices() -> list[tuple[str, str]]:
    """Return what holds a volume."""
    return [(str(tool.id), tool.name) for tool in ware()]


def by_weight_choices() -> list[tuple[str, str]]:
    """Return the scales as what a volume can be weighed on."""
    return [(key, f"By weight, on {name}") for key, name in scale_choices()]
