"""Swatches out of a file: read line by line, looked at, kept in one deed.

A table has its doses in it, as ``exchange.swatch_file`` reads it. A file of spectra has
samples with names and no doses: somebody types them beside each.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from shadewright.core.mixing import Evidence
from shadewright.core.mixing import Swatch as Taught
from shadewright.errors import InputError, OutOfRangeError, UnreadableError
from shadewright.exchange.rows import RowProblem
from shadewright.exchange.swatch_file import read_swatches
from shadewright.exchange.table_lines import TableLines, table_lines
from shadewright.exchange.table_text import (
    with_commas,
    with_fractions,
    with_plain_head,
)
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.kinds import SPREADS
from shadewright.workflows.shades.readings import NewReading, checked_reading
from shadewright.workflows.shades.spectra import labs_of_spectrum
from shadewright.workflows.shades.swatches import Doses, swatches_now
from shadewright.workflows.stamps import past_date

MOST_BYTES = 5_000_000
_MOST_SESSION = 60
_MOST_NOTE = 300
_LIGHTS = ("D65", "A", "FL11")

FROM_SCREEN = (ReadBy.EYE, ReadBy.PHOTO, ReadBy.PHOTO_CARD, ReadBy.CHART)
"""How a colour that a file gives as hex may have been come by."""

Key = tuple[str, Doses, tuple[float, ...]]


@dataclass(frozen=True, kw_only=True)
class FileLine:
    """A good line; ``is_known`` where the studio has the very same already."""

    line: int
    base: str
    doses: Doses
    new: NewReading
    label: str = ""
    dyed_on: date | None = None
    session: str = ""
    note: str = ""
    is_known: bool = False


@dataclass(frozen=True, kw_only=True)
class ReadFile:
    """The lines of a file, good and bad; ``table`` is the text that they stand in."""

    lines: tuple[FileLine, ...]
    bad: tuple[RowProblem, ...]
    table: TableLines


def is_table(text: str) -> bool:
    """Tell whether a text is a table of swatches, or is meant as one."""
    columns = table_lines(_plain(text).partition("\n")[0]).columns
    has_lab = {"L", "a", "b"} <= set(columns)
    return has_lab or "doses" in columns or "hex" in columns


def _plain(text: str) -> str:
    return with_plain_head(with_commas(text))


def require_small(text: str, *, argument: str) -> str:
    """Return a text, or refuse one that is too large."""
    size = len(text.encode())
    if size > MOST_BYTES:
        raise OutOfRangeError(
            name="The file",
            given=f"{size / 1e6:.1f} MB",
            allowed=f"at most {MOST_BYTES / 1e6:g} MB",
            advice="Cut it in two.",
            argument=argument,
        )
    return text


def read_file(text: str, *, hex_by: ReadBy = ReadBy.EYE) -> ReadFile:
    """Return the swatches of a table line by line; a bad line stops no other."""
    plain = with_fractions(_plain(text))
    try:
        read, table = read_swatches(plain), table_lines(plain)
    except UnreadableError as error:
        error.argument = "text"
        raise
    bad, good = list(read.rejected), []
    for swatch in read.swatches:
        try:
            good.append(_line(swatch, table, hex_by))
        except InputError as error:
            bad.append(RowProblem(line=swatch.number, why=str(error).rstrip(".")))
    return ReadFile(
        lines=marked(good),
        bad=tuple(sorted(bad, key=lambda each: each.line)),
        table=table,
    )


def marked(lines: Iterable[FileLine]) -> tuple[FileLine, ...]:
    """Return lines, with a mark where the studio has the very same swatch already."""
    known = {
        same_swatch_key(each.base_name, each.doses, each.reading.lab)
        for each in swatches_now()
        if each.reading is not None
    }
    return tuple(
        replace(
            line, is_known=same_swatch_key(line.base, line.doses, line.new.lab) in known
        )
        for line in lines
    )


def same_swatch_key(base: str, doses: Doses, lab: Iterable[float]) -> Key:
    """Return what two entries of the very same swatch share."""
    named = sorted((dye.casefold(), round(depth, 6)) for dye, depth in doses)
    return base.casefold(), tuple(named), tuple(round(part, 2) for part in lab)


def _line(swatch: Taught, table: TableLines, hex_by: ReadBy) -> FileLine:
    line = swatch.number
    session, said = swatch.session, table.cell(line, "date")
    note = table.cell(line, "note")
    day = _day(said) if said else _day_in(session)
    return FileLine(
        line=line,
        base=swatch.base,
        doses=swatch.doses,
        new=checked_reading(_reading(swatch, hex_by)),
        dyed_on=past_date(day, name="The date", argument="date"),
        session="" if day else session[:_MOST_SESSION],
        note=note[:_MOST_NOTE],
    )


def _day(text: str) -> date:
    found = _day_in(text)
    if found is None:
        raise UnreadableError(
            name=f"The date “{text[:20]}”",
            why="It is no day.",
            advice="Write it like 2026-05-31.",
        )
    return found


def _day_in(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _reading(swatch: Taught, hex_by: ReadBy) -> NewReading:
    reading = swatch.reading
    new = NewReading(
        read_by=_read_by(reading.evidence, reading.sd, hex_by),
        labs=_labs(reading.values),
        repeat=reading.repeat,
        sd=reading.sd,
        note=f"From a file, line {swatch.number}.",
    )
    if reading.evidence is not Evidence.SPECTRUM:
        return new
    return replace(new, labs=labs_of_spectrum(reading.values), spectrum=reading.values)


def _labs(values: tuple[float, ...]) -> dict[str, tuple[float, float, float]]:
    threes = zip(values[::3], values[1::3], values[2::3], strict=False)
    return dict(zip(_LIGHTS, threes, strict=False))


def _read_by(evidence: Evidence, sd: float | None, hex_by: ReadBy) -> ReadBy:
    """Return how a colour was come by; its spread tells a photo from an eye."""
    match evidence:
        case Evidence.SPECTRUM:
            return ReadBy.SPECTRUM
        case Evidence.THREE_LIGHTS:
            return ReadBy.LIGHTS
        case Evidence.LAB:
            return ReadBy.METER
    usual: Mapping[float, ReadBy] = {SPREADS[x]: x for x in FROM_SCREEN if x in SPREADS}
    return hex_by if sd is None else usual.get(sd, hex_by)
