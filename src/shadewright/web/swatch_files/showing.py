"""A file’s lines as its page shows them."""

from collections.abc import Iterator

from shadewright.web.colours import ColourShown, read_colour
from shadewright.web.swatch_files.forms import LinesForm, name_key
from shadewright.web.swatch_files.found import Found
from shadewright.web.swatch_files.pages import (
    BadRow,
    GoodRow,
    LinesPage,
    NameRow,
    SampleRow,
)
from shadewright.web.swatches.words import CRUMBS, kind_chip
from shadewright.workflows.bases import bases
from shadewright.workflows.shades.entering_swatches import doses_label
from shadewright.workflows.shades.readings import NewReading
from shadewright.workflows.shades.swatch_files import FileLine

MOST_DRAWN = 1000
_MOST_WORDS = 80


def lines_page(form: LinesForm, found: Found) -> LinesPage:
    """Return the page of a file’s lines."""
    fresh = [line for line in found.lines if not line.is_known]
    return LinesPage(
        title="What stands in the file",
        fact=_fact(found, len(fresh)),
        crumbs=CRUMBS,
        form=form,
        bad=tuple(_bad(found)),
        bad_not_drawn=_not_drawn(len(found.bad), "are to mend too"),
        bad_title=f"{_lines(len(found.bad))} to mend",
        can_mend=bool(found.to_mend),
        good=tuple(map(_good, found.lines[:MOST_DRAWN])),
        good_title=f"{_lines(len(found.lines))} that can be kept",
        not_drawn=_not_drawn(len(found.lines), "are good too"),
        names=tuple(_names(form)),
        samples=tuple(_samples(form, found)),
        yarn=(form["base"], form["fibres"]) if found.samples else (),
        base_names=tuple(base.name for base in bases()),
        key=_key(found, len(fresh)),
    )


def _fact(found: Found, fresh: int) -> str:
    if found.samples:
        return "Samples have no doses: type them, or leave a sample empty to skip it."
    if not found.lines and not found.bad:
        return "Below its first row stands no line."
    known = len(found.lines) - fresh
    if not known:
        return "Nothing is kept yet."
    what = "it is" if known == 1 else "they are"
    return f"{_lines(known)} stand here already; {what} left out."


def _key(found: Found, fresh: int) -> str:
    if found.samples:
        return "Keep the samples with doses"
    if not fresh:
        return ""
    return "Keep 1 swatch" if fresh == 1 else f"Keep {fresh} swatches"


def _lines(count: int) -> str:
    return "1 line" if count == 1 else f"{count} lines"


def _not_drawn(count: int, what: str) -> str:
    more = count - MOST_DRAWN
    if more <= 0:
        return ""
    return f"The first {MOST_DRAWN} are shown; {_lines(more)} more {what}."


def _bad(found: Found) -> Iterator[BadRow]:
    for each in found.bad[:MOST_DRAWN]:
        words = "" if found.table is None else found.table.words(each.line)
        why = f"{each.why[:1].upper()}{each.why[1:]}."
        yield BadRow(line=each.line, words=words[:_MOST_WORDS], why=why)


def _good(line: FileLine) -> GoodRow:
    return GoodRow(
        line=line.line,
        base=line.base,
        doses=doses_label(line.doses),
        seen=_seen(line.new),
        kind=kind_chip(line.new.read_by),
        dyed_on=line.dyed_on,
        is_known=line.is_known,
    )


def _names(form: LinesForm) -> Iterator[NameRow]:
    for name in form.names.bases:
        fibres = form[name_key("fibres", name)]
        yield NameRow(meant=form[name_key("base", name)], fibres=fibres)
    for name in form.names.dyes:
        yield NameRow(meant=form[name_key("dye", name)], fibres=None)


def _samples(form: LinesForm, found: Found) -> Iterator[SampleRow]:
    for each in found.samples:
        yield SampleRow(seen=_seen(each.new), doses=form[each.key])


def _seen(new: NewReading) -> ColourShown:
    return read_colour(new.lab, new.read_by, sd=new.sd, repeat=new.repeat)
