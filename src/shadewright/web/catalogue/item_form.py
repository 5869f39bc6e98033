"""What every form of the catalogue shares: tidy names, each used once."""

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, ClassVar

from django import forms
from django.db import models

from shadewright.records.models.catalogue import CatalogueItem
from shadewright.web.forms import PlainForm
from shadewright.workflows.catalogue import keep_item, plain_values
from shadewright.workflows.stamps import Stamp

if TYPE_CHECKING:
    ModelForm = forms.ModelForm[Any]
else:
    ModelForm = forms.ModelForm

_LINK = "The link must be a whole address that begins with https:// or http://."

_NONE = "Choose one"


class RowForm(PlainForm, ModelForm):
    """A form of one row; ``rows`` says which fields stand side by side."""

    rows: ClassVar[tuple[tuple[str, ...], ...]] = ()
    side_title: ClassVar[str] = ""
    side: ClassVar[tuple[tuple[str, str], ...]] = ()
    suggestions: ClassVar[tuple[str, ...]] = ()
    key: ClassVar[str] = "name"

    twin: models.Model | None = None
    """The row that has the name already, where that is the fault."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        if link := self.fields.get("data_sheet_link"):
            link.error_messages["invalid"] = _LINK
        for field in self.fields.values():
            if isinstance(field, forms.TypedChoiceField):
                offered: Any = field.choices
                field.choices = [(key, said if key else _NONE) for key, said in offered]

    @property
    def groups(self) -> Iterator[list[forms.BoundField]]:
        """The fields as they stand on the page, a line at a time."""
        lines = ([self[n] for n in names if n in self.fields] for names in self.rows)
        return (line for line in lines if line)

    @property
    def said_before(self) -> models.Model | None:
        """The row that this very form has made already, if it was sent twice."""
        if self.twin is None or set(self.errors) != {self.key}:
            return None
        sent, kept = plain_values(self.instance), plain_values(self.twin)
        names = (set(self.fields) & set(sent)) - {"data_sheet_file", self.key}
        is_same = self.data[self.key].split() == str(kept[self.key]).split() and all(
            sent[name] == kept[name] for name in names
        )
        return self.twin if is_same else None

    def require_free(self, name: str, twin: models.Model | None, said: str) -> str:
        """Return the name if no other row has it, else put the fault by the field."""
        self.twin = twin
        if twin is not None:
            raise forms.ValidationError(said)
        return name


class ItemForm(RowForm):
    """A form of something in the catalogue, under a name of its own."""

    def keep(self, stamp: Stamp) -> str:
        """Keep what the form holds; say what else came of it, or nothing."""
        keep_item(self.instance, stamp)
        return ""

    def clean_name(self) -> str:
        """Tidy the name, and refuse one that is taken, by the retired too."""
        name = " ".join(self.cleaned_data["name"].split())
        model: type[Any] = type(self.instance)
        others = model.objects.exclude(pk=self.instance.pk)
        twin: CatalogueItem | None = others.filter(name__iexact=name).first()
        return self.require_free(name, twin, _taken_words(name, twin))


def _taken_words(name: str, twin: CatalogueItem | None) -> str:
    if twin is not None and twin.is_retired:
        return f"“{name}” is among the retired; bring it back instead."
    return f"There is a “{name}” already."
