"""Samples of a file of spectra: they have names, and doses once somebody types them."""

from collections.abc import Mapping
from dataclasses import dataclass

from shadewright.errors import InputError, OutOfRangeError, UnreadableError
from shadewright.exchange.dose_text import doses_in_name, doses_of_words
from shadewright.exchange.rows import RowProblem
from shadewright.exchange.spectra import Spectrum
from shadewright.exchange.spectrum_file import told_apart_spectra
from shadewright.exchange.table_text import with_commas
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.readings import NewReading, checked_reading
from shadewright.workflows.shades.spectra import labs_of_spectrum
from shadewright.workflows.shades.swatch_files import FileLine

MOST_SAMPLES = 200
_LONGEST_LABEL = 60


@dataclass(frozen=True, kw_only=True)
class Sample:
    """A sample; ``key`` is its own in the file, ``guess`` the doses its name tells."""

    key: str
    name: str
    line: int
    new: NewReading
    guess: str


@dataclass(frozen=True, kw_only=True)
class ReadSamples:
    """The samples of a file, and the lines that were none."""

    samples: tuple[Sample, ...]
    bad: tuple[RowProblem, ...]


def read_samples(text: str) -> ReadSamples:
    """Return the spectra of a text with their names; a bad line stops no other."""
    try:
        read = told_apart_spectra(with_commas(text))
    except UnreadableError as error:
        error.argument = "text"
        raise
    if len(read.spectra) > MOST_SAMPLES:
        raise OutOfRangeError(
            name="A file of spectra",
            given=f"{len(read.spectra)} samples",
            allowed=f"of at most {MOST_SAMPLES} samples",
            advice="Cut it in two, or make a table with base and doses of it.",
            argument="text",
        )
    bad, samples = list(read.rejected), []
    for place, each in enumerate(read.spectra):
        try:
            samples.append(_sample(place, each))
        except InputError as error:
            why = f"{each.name}: {str(error).rstrip('.')}"
            bad.append(RowProblem(line=each.line, why=why))
    return ReadSamples(samples=tuple(samples), bad=tuple(bad))


def lines_of_samples(
    samples: tuple[Sample, ...], *, base: str, doses: Mapping[str, str]
) -> list[FileLine]:
    """Return the samples whose doses were typed; the others are left out."""
    return [
        FileLine(
            line=each.line,
            base=base,
            doses=doses_of_words(doses[each.key], argument=each.key),
            new=each.new,
            label=each.name[:_LONGEST_LABEL],
        )
        for each in samples
        if doses.get(each.key, "").strip()
    ]


def _sample(place: int, spectrum: Spectrum) -> Sample:
    new = NewReading(
        read_by=ReadBy.SPECTRUM,
        labs=labs_of_spectrum(spectrum.values),
        spectrum=spectrum.values,
        each=({"spectrum": list(spectrum.values)},),
        as_typed="spectrum",
        note=f"From a file, sample {spectrum.name}."[:300],
    )
    return Sample(
        key=f"doses-{place}",
        name=spectrum.name,
        line=spectrum.line,
        new=checked_reading(new),
        guess=doses_in_name(spectrum.name),
    )
