"""Reflectance spectra by name, and the rows of a file that were none."""

from dataclasses import dataclass

from shadewright.exchange.rows import RowProblem


@dataclass(frozen=True, kw_only=True)
class Spectrum:
    """A spectrum: its name, its line in the file, and 31 fractions, 400 to 700 nm."""

    name: str
    line: int
    values: tuple[float, ...]


@dataclass(frozen=True, kw_only=True)
class ReadSpectra:
    """The spectra that could be read, in order, and the rows that could not."""

    spectra: tuple[Spectrum, ...]
    rejected: tuple[RowProblem, ...]

    @property
    def by_name(self) -> dict[str, Spectrum]:
        """Each spectrum by its name; of two with one name, the first."""
        return {each.name: each for each in reversed(self.spectra)}
