"""The form of a file: its text stays in it from page to page."""

from collections.abc import Iterator, Mapping
from typing import Any
from zlib import crc32

from django import forms

from shadewright.errors import InputError
from shadewright.web.forms import DeedForm
from shadewright.web.swatch_files.found import Found
from shadewright.web.swatch_files.text_of import text_of
from shadewright.workflows.bases import bases
from shadewright.workflows.dyes import dyes
from shadewright.workflows.shades.keeping_files import NamesSaid, NewNames
from shadewright.workflows.shades.kinds import ReadBy
from shadewright.workflows.shades.swatch_files import FROM_SCREEN, require_small

_PLAIN = {"autocomplete": "off", "autocapitalize": "off", "spellcheck": "false"}
_FIBRES = "For a new base: its fibres, like 80\u00a0% wool, 20\u00a0% nylon."
_NEW = "+"


class FileForm(DeedForm):
    """A file, or its text pasted."""

    file = forms.FileField(
        label="A file",
        required=False,
        widget=forms.FileInput(attrs={"accept": ".csv,.tsv,.txt,.cgats,text/*"}),
        help_text="CSV, or what a meter writes as CGATS text; up to 5 MB.",
        error_messages={"empty": "The file is empty."},
    )
    text = forms.CharField(
        label="Or its text, pasted",
        required=False,
        strip=False,
        widget=forms.Textarea(attrs={"rows": 6, "wrap": "off", **_PLAIN}),
        help_text="Rows out of a spreadsheet can be pasted as they are.",
    )
    hex_by = forms.ChoiceField(
        label="Where it gives colours as hex, they were",
        choices=[(each.value, each.label.capitalize()) for each in FROM_SCREEN],
        initial=ReadBy.EYE.value,
    )

    def clean(self) -> dict[str, Any]:
        """Take the text of a file that was chosen; it then stays in the form."""
        sent: dict[str, Any] = super().clean() or {}
        try:
            text = self._text(sent).replace("\r\n", "\n").replace("\r", "\n")
        except InputError as error:
            self.refuse(error)
            return sent
        sent["text"] = text.lstrip("\n")
        if not sent["text"].strip() and not self.errors:
            self.add_error("file", "Choose a file, or paste its text below.")
        return sent

    def _text(self, sent: Mapping[str, Any]) -> str:
        file = sent.get("file")
        if file is None:
            return require_small(sent.get("text") or "", argument="text")
        return text_of(file.read(), argument="file")


class LinesForm(FileForm):
    """The same, with what is asked of its lines: new names, doses of samples."""

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
        found: Found,
        names: NewNames,
    ) -> None:
        super().__init__(data, initial=initial)
        self.names = names
        self.fields["file"].help_text = "Another file instead of this text."
        if found.samples:
            self.fields |= _sample_fields(found)
        self.fields |= dict(_name_fields(names))
        self.speak_plainly()

    def said(self) -> NamesSaid:
        """Return what the new names mean."""
        sent = self.cleaned_data
        chosen = {name: sent[name_key("dye", name)] for name in self.names.dyes}
        based = {name: sent[name_key("base", name)] for name in self.names.bases}
        fibres = {name: sent[name_key("fibres", name)] for name in self.names.bases}
        if "fibres" in sent:
            fibres[sent["base"]] = sent["fibres"]
        return NamesSaid(
            dyes={name: meant for name, meant in chosen.items() if meant != _NEW},
            bases={name: meant for name, meant in based.items() if meant != _NEW},
            fibres=fibres,
        )


def name_key(what: str, name: str) -> str:
    """Return the field that asks of a name."""
    return f"{what}-{crc32(name.casefold().encode()):08x}"


def asked_keys(names: NewNames) -> list[str]:
    """Return the fields that ask what new names mean."""
    asked = [name_key("base", name) for name in names.bases]
    return asked + [name_key("dye", name) for name in names.dyes]


def _name_fields(names: NewNames) -> Iterator[tuple[str, forms.Field]]:
    for name in names.bases:
        known = [(each.name, each.name) for each in bases()]
        yield name_key("base", name), _choice(f"Base “{name}” is", known)
        yield (
            name_key("fibres", name),
            forms.CharField(
                label=f"What {name} is made of",
                required=False,
                max_length=120,
                help_text=_FIBRES,
            ),
        )
    for name in names.dyes:
        known = [(each.name, each.name) for each in dyes()]
        yield name_key("dye", name), _choice(f"Dye “{name}” is", known)


def _choice(label: str, known: list[tuple[str, str]]) -> forms.ChoiceField:
    return forms.ChoiceField(label=label, choices=[(_NEW, "New: add it"), *known])


def _sample_fields(found: Found) -> dict[str, forms.Field]:
    names = {
        "base": forms.CharField(
            label="Base of these samples",
            max_length=60,
            widget=forms.TextInput(attrs={"list": "known-bases", **_PLAIN}),
        ),
        "fibres": forms.CharField(
            label="Made of", required=False, max_length=120, help_text=_FIBRES
        ),
    }
    doses = {
        each.key: forms.CharField(
            label=f"Doses of {each.name}",
            required=False,
            max_length=300,
            initial=each.guess,
            widget=forms.TextInput(attrs=_PLAIN),
        )
        for each in found.samples
    }
    return {**names, **doses}
