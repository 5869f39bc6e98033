"""What stands in a file: lines of a table, or samples of spectra."""

from collections.abc import Mapping
from dataclasses import dataclass

from shadewright.errors import UnreadableError
from shadewright.exchange.rows import RowProblem
from shadewright.exchange.spectrum_file import is_spectra
from shadewright.exchange.table_lines import TableLines, lines_to_mend
from shadewright.exchange.table_text import with_commas
from shadewright.workflows.shades.kinds import ReadBy
from shadewright.workflows.shades.swatch_files import (
    FileLine,
    is_table,
    marked,
    read_file,
)
from shadewright.workflows.shades.swatch_samples import (
    Sample,
    lines_of_samples,
    read_samples,
)


@dataclass(frozen=True, kw_only=True)
class Found:
    """Good lines of a table, or samples whose doses are asked; and the bad lines."""

    lines: tuple[FileLine, ...] = ()
    samples: tuple[Sample, ...] = ()
    bad: tuple[RowProblem, ...] = ()
    table: TableLines | None = None

    @property
    def to_mend(self) -> str:
        """The bad lines of a table as a table of their own; else nothing."""
        if self.table is None or not self.bad:
            return ""
        return lines_to_mend(self.table, self.bad)


def found_in(text: str, *, hex_by: ReadBy) -> Found:
    """Return what stands in a text, or refuse it."""
    if is_table(text):
        read = read_file(text, hex_by=hex_by)
        return Found(lines=read.lines, bad=read.bad, table=read.table)
    if not is_spectra(with_commas(text)):
        raise UnreadableError(
            name="The file",
            why="It is neither a table of swatches nor one of spectra.",
            advice="Begin with a row like base,doses,L,a,b, or name,R400,R410 … R700.",
            argument="text",
        )
    samples = read_samples(text)
    return Found(samples=samples.samples, bad=samples.bad)


def lines_of(found: Found, typed: Mapping[str, str]) -> tuple[FileLine, ...]:
    """Return the lines that are new; of samples those whose doses were typed."""
    if not found.samples:
        return tuple(each for each in found.lines if not each.is_known)
    base = " ".join(typed.get("base", "").split())
    doses = {each.key: typed.get(each.key, each.guess) for each in found.samples}
    lines = marked(lines_of_samples(found.samples, base=base, doses=doses))
    return tuple(each for each in lines if not each.is_known)
