"""A colour that was read: what was typed, the mean of it, and what it is worth.

Several readings are several lines; their mean is taken in CIELAB (core’s
``averaged``). Whatever they were typed as, what is kept is Lab for 10°, D65 always
among it, beside each single reading in the light and the eye of its meter.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import hypot, sqrt

from django.db import transaction

from shadewright.core.colour import Averaged, Lab, Light, averaged
from shadewright.core.mixing import Swatch as Taught
from shadewright.core.mixing import checked_swatch
from shadewright.core.mixing.swatches import LIGHTS
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.exchange.typed_spectrum import typed_spectra
from shadewright.records import shade_reads
from shadewright.records.models import ColourReading
from shadewright.records.models.swatches import ReadBy
from shadewright.records.writes import keep_line
from shadewright.workflows.shades.kinds import SPREADS, Labs, reading_of
from shadewright.workflows.shades.meters import MeterNow, meter
from shadewright.workflows.shades.reading_lines import lab_lines, screen_lines
from shadewright.workflows.shades.spectra import labs_of_spectrum
from shadewright.workflows.stamps import Stamp

MOST_READINGS = 20
_BY_METER = {ReadBy.METER, ReadBy.LIGHTS, ReadBy.SPECTRUM}
_MOST_TYPED = 200

LabsRead = dict[Light, list[Lab]]
"""Single readings as a meter gave them, by the light that they are kept as."""


@dataclass(frozen=True, kw_only=True)
class ReadWords:
    """A colour as somebody typed it; a text may hold several readings, one a line.

    ``further`` is what a meter gave under further lights, by the light’s name;
    ``spectrum_text`` a spectrum, pasted or out of a file, and then nothing else
    counts. ``meter_id`` is None where nobody said which meter, or none was used.
    """

    read_by: ReadBy
    texts: tuple[str, ...] = ()
    meter_id: int | None = None
    further: Mapping[str, str] = field(default_factory=dict)
    spectrum_text: str = ""
    is_wet: bool = False
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class NewReading:
    """A reading that can be kept; see ``ColourReading`` for its parts.

    ``sd`` by √repeat is the standard error of what is kept. It holds what more
    readings cannot lessen: a guess at the screen, or a step from another light.
    """

    read_by: ReadBy
    labs: Labs
    spectrum: tuple[float, ...] = ()
    each: tuple[dict[str, object], ...] = ()
    repeat: int = 1
    sd: float | None = None
    as_typed: str = ""
    meter_id: int | None = None
    is_wet: bool = False
    note: str = ""

    @property
    def lab(self) -> Lab:
        """The colour in daylight, D65/10°."""
        return Lab(*self.labs[Light.D65])


def reading_from(words: ReadWords) -> NewReading:
    """Return the reading that was typed, or refuse it in one sentence."""
    if words.spectrum_text.strip() or words.read_by is ReadBy.SPECTRUM:
        found = _of_spectra(words)
    elif words.read_by in _BY_METER:
        found = _of_meter(words)
    else:
        found = _of_screen(words)
    return checked_reading(found)


def checked_reading(new: NewReading) -> NewReading:
    """Return a reading that a fit can take, or refuse it."""
    taught = Taught(number=0, base="-", doses=(), reading=reading_of(row_of(new)))
    try:
        checked_swatch(taught)
    except OutOfRangeError as error:
        spectrum = new.read_by is ReadBy.SPECTRUM
        error.argument = "spectrum_text" if spectrum else "texts"
        raise
    return new


def keep_reading(*, swatch_id: int, words: ReadWords, stamp: Stamp) -> int:
    """Keep a colour of a swatch and return its number; the same deed keeps it once."""
    return keep_new_reading(swatch_id=swatch_id, new=reading_from(words), stamp=stamp)


@transaction.atomic
def keep_new_reading(*, swatch_id: int, new: NewReading, stamp: Stamp) -> int:
    """Keep a reading of a swatch likewise."""
    shade_reads.locked_swatch(swatch_id)
    kept = ColourReading.objects.filter(deed=stamp.deed, swatch_id=swatch_id).first()
    if kept is not None:
        return kept.pk
    row = row_of(new)
    row.swatch_id = swatch_id
    keep_line(row, stamp)
    return row.pk


def row_of(new: NewReading) -> ColourReading:
    """Return a reading as a row that is not kept yet."""
    return ColourReading(
        read_by=new.read_by,
        meter_id=new.meter_id,
        labs={light: list(lab) for light, lab in new.labs.items()},
        spectrum=list(new.spectrum),
        each=list(new.each),
        repeat=new.repeat,
        sd=new.sd,
        is_wet=new.is_wet,
        as_typed=new.as_typed,
        note=new.note,
    )


def _of_spectra(words: ReadWords) -> NewReading:
    if not words.spectrum_text.strip():
        raise MissingError(
            name="The spectrum",
            advice="Paste what the meter gives, 400 to 700 nm.",
            argument="spectrum_text",
        )
    spectra = typed_spectra(words.spectrum_text, argument="spectrum_text")
    _require_few(spectra, "spectrum_text")
    mean = tuple(sum(band) / len(spectra) for band in zip(*spectra, strict=True))
    labs = [Lab(*labs_of_spectrum(each)[Light.D65]) for each in spectra]
    known = None if words.meter_id is None else meter(words.meter_id)
    return NewReading(
        read_by=ReadBy.SPECTRUM,
        labs=labs_of_spectrum(mean),
        spectrum=mean,
        each=tuple({"spectrum": list(each)} for each in spectra),
        repeat=len(spectra),
        sd=_scatter(averaged(labs), known),
        as_typed="spectrum",
        meter_id=words.meter_id,
        is_wet=words.is_wet,
        note=words.note,
    )


def _of_meter(words: ReadWords) -> NewReading:
    known = None if words.meter_id is None else meter(words.meter_id)
    read: LabsRead = {Light.D65: lab_lines(words.texts, argument="texts")}
    for light in LIGHTS[1:]:
        text = words.further.get(light, "")
        if text.strip():
            read[light] = lab_lines((text,), argument=f"further_{light}")
    _require_few(read[Light.D65], "texts")
    return replace(
        reading_of_labs(read, known),
        as_typed=_typed(words.texts),
        is_wet=words.is_wet,
        note=words.note,
    )


def reading_of_labs(read: LabsRead, known: MeterNow | None) -> NewReading:
    """Return what a meter gave in the light and the eye of its own as it is kept."""
    means = {light: averaged(labs) for light, labs in read.items()}
    daylight = means[Light.D65]
    return NewReading(
        read_by=ReadBy.LIGHTS if len(read) == len(LIGHTS) else ReadBy.METER,
        labs={light: _kept(x.mean, light, known) for light, x in means.items()},
        each=tuple(
            _single(lab, light, known) for light, labs in read.items() for lab in labs
        ),
        repeat=daylight.count,
        sd=_meter_sd(daylight, known),
        meter_id=None if known is None else known.id,
    )


def _of_screen(words: ReadWords) -> NewReading:
    found = screen_lines(words.texts, argument="texts")
    _require_few(found, "texts")
    mean = averaged([each.lab for each in found])
    return NewReading(
        read_by=words.read_by,
        labs={Light.D65: mean.mean},
        each=tuple(each.single for each in found),
        repeat=mean.count,
        sd=_screen_sd(mean, words.read_by),
        as_typed=_typed(words.texts),
        is_wet=words.is_wet,
        note=words.note,
    )


def _require_few(found: Sequence[object], argument: str) -> None:
    if len(found) > MOST_READINGS:
        raise OutOfRangeError(
            name="The readings of one colour",
            given=f"{len(found)}",
            allowed=f"at most {MOST_READINGS}",
            advice="Keep the first of them.",
            argument=argument,
        )


def _kept(lab: Lab, light: Light, known: MeterNow | None) -> Lab:
    return lab if known is None else known.kept(lab, light=known.light_of(light))


def _single(lab: Lab, light: Light, known: MeterNow | None) -> dict[str, object]:
    """Return one reading in the light and the eye of its meter."""
    under = light if known is None else known.light_of(light)
    eye = 10 if known is None else int(known.observer)
    return {"light": str(under), "observer": eye, "lab": list(lab)}


def _scatter(found: Averaged, known: MeterNow | None) -> float | None:
    """Return the larger of what the readings show and what the meter is known for."""
    spreads = [found.sd, None if known is None else known.spread]
    return max((each for each in spreads if each), default=None)


def _meter_sd(found: Averaged, known: MeterNow | None) -> float | None:
    scatter = _scatter(found, known)
    off = 0.0 if known is None else known.off(found.mean)
    if not off:
        return scatter
    return hypot(scatter or SPREADS[ReadBy.METER], off * sqrt(found.count))


def _screen_sd(found: Averaged, read_by: ReadBy) -> float | None:
    """Return what averaging leaves of a guess; of a chart nobody can tell."""
    usual = SPREADS.get(read_by)
    if usual is None or found.sd is None:
        return None
    return hypot(found.sd, usual * sqrt(found.count))


def _typed(texts: Sequence[str]) -> str:
    lines = [line.strip() for text in texts for line in text.splitlines()]
    return "; ".join(filter(None, lines))[:_MOST_TYPED]
