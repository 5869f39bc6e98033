"""A colour as a form asks for it: a picker and, beside it, the same in words.

The two are kept in step by ``colour_fields.js``. Without a script a picker that was
moved off its grey counts where nothing is typed.
"""

from dataclasses import dataclass

from django import forms
from django.forms import BoundField

from shadewright.workflows.shades.ways_to_read import Way, last_way, ways_to_read

GREY = "#a6a6a6"
"""What a picker stands at before anybody has picked: the booth’s own grey."""


@dataclass(frozen=True, kw_only=True)
class ColourCell:
    """The two fields of one colour."""

    pick: BoundField
    typed: BoundField
    what: str

    @property
    def label(self) -> str:
        """What stands above the two."""
        return str(self.typed.label)


def pick_field(what: str) -> forms.CharField:
    """Return the browser’s own colour picker; ``what`` names the colour."""
    attrs = {"type": "color", "aria-label": f"Pick {what}", "data-pick": ""}
    return forms.CharField(
        required=False, initial=GREY, widget=forms.TextInput(attrs=attrs)
    )


def typed_field(label: str) -> forms.CharField:
    """Return the field where a colour is typed: a screen’s code, or Lab."""
    attrs = {
        "autocomplete": "off",
        "autocapitalize": "off",
        "spellcheck": "false",
        "data-typed": "",
    }
    return forms.CharField(
        label=label, required=False, max_length=60, widget=forms.TextInput(attrs=attrs)
    )


def said_colour(*, typed: str, picked: str) -> str:
    """Return what was said of a colour; a picker at its grey says nothing."""
    was_picked = picked.casefold() not in {"", GREY}
    return typed or (picked if was_picked else "")


def way_field(label: str) -> forms.ChoiceField:
    """Ask how the colours were come by; the way taken last is chosen."""
    return forms.ChoiceField(
        label=label,
        choices=[(way.key, way.words) for way in ways_to_read()],
        initial=last_way().key,
        widget=forms.RadioSelect,
    )


def way_of(key: str) -> Way:
    """Return the way that a form sent."""
    return next(way for way in ways_to_read() if way.key == key)
