"""A Typst template and its data to the bytes of an accessible PDF.

Nothing that a person typed ever becomes Typst source: templates are files of
this package, and what they show is handed over as JSON. The same template,
data and date give the same bytes. Only the fonts of this package and those
inside the typesetter are used, so that every computer prints the same sheet.
"""

import datetime as dt
import json
import unicodedata
from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import typst

_FOLDER = Path(__file__).parent
_NO_SIGN = "□"
_MM_PER_INCH = 25.4
_BREAKS = frozenset({"Cc", "Zl", "Zp"})
_STEERING = frozenset({"Cf", "Cs", "Co", "Cn"})
_PLAIN = frozenset(map(chr, (*range(0x20, 0x7F), *range(0xA0, 0x180)))) - {"\xad"}


def typeset(template: str, *, data: Mapping[str, object], on: dt.date) -> bytes:
    """Return the PDF/UA-1 that a template makes of the data, dated ``on``."""
    return pdf_of(_source(template), data=json.dumps(_printable_in(data)), on=on)


def first_page_png(
    template: str, *, data: Mapping[str, object], width_mm: float, width_px: int = 800
) -> bytes:
    """Return the first page that a template makes of the data, as a picture."""
    inputs = {"data": json.dumps(_printable_in(data))}
    made: Any = _compiler(_source(template), inputs).compile(
        format="png", ppi=width_px / width_mm * _MM_PER_INCH
    )
    return bytes(made[0] if isinstance(made, list) else made)


def printable(text: str) -> str:
    """Return the text as the fonts can show it: one line, no steering signs.

    A character that no font here can draw is shown as an empty square.
    """
    shown = _one_line(unicodedata.normalize("NFC", text))
    if _PLAIN.issuperset(shown) or _has_glyphs(shown):
        return shown
    drawn = "".join(c if c in _PLAIN or _has_glyphs(c) else _NO_SIGN for c in shown)
    if _has_glyphs(drawn):
        return drawn
    return "".join(c if c in _PLAIN else _NO_SIGN for c in shown)


def _one_line(text: str) -> str:
    kinds = ((sign, unicodedata.category(sign)) for sign in text)
    kept = [(sign, kind) for sign, kind in kinds if kind not in _STEERING]
    spaced = "".join(" " if kind in _BREAKS else sign for sign, kind in kept)
    return " ".join(part for part in spaced.split(" ") if part)


def _printable_in(value: object) -> object:
    """Return the value with every text in it made printable."""
    match value:
        case str():
            return printable(value)
        case Mapping():
            return {key: _printable_in(part) for key, part in value.items()}
        case Sequence():
            return [_printable_in(part) for part in value]
    return value


@lru_cache(maxsize=4096)
def _has_glyphs(text: str) -> bool:
    """Ask the typesetter whether its fonts have a sign for every character."""
    source = '#import "page.typ": page-of\n#page-of((title: "?"), sys.inputs.data)'
    try:
        pdf_of(source, data=text, on=dt.date(2000, 1, 1))
    except typst.TypstError as refusal:
        if "could not be displayed" in refusal.message:
            return False
        raise
    return True


def pdf_of(source: str, *, data: str, on: dt.date) -> bytes:
    """Return the PDF of a source in this package's folder; a warning stops it."""
    noon = dt.datetime.combine(on, dt.time(12), dt.UTC)
    made: Any
    made, warnings = _compiler(source, {"data": data}).compile_with_warnings(
        format="pdf", pdf_standards=["ua-1"], timestamp=noon
    )
    for warning in warnings:
        raise warning
    return bytes(made)


def _source(template: str) -> str:
    return f'#import "{template}": document\n#document(json(bytes(sys.inputs.data)))'


def _compiler(source: str, inputs: dict[str, str]) -> typst.Compiler:
    return typst.Compiler(
        source.encode(), root=_FOLDER, font_paths=_fonts(), sys_inputs=inputs
    )


@cache
def _fonts() -> typst.Fonts:
    return typst.Fonts(include_system_fonts=False, font_paths=[_FOLDER / "fonts"])
