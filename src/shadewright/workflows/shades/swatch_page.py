"""One swatch in full: every reading of it, and what was foretold."""

from dataclasses import dataclass
from uuid import UUID

from django.utils import timezone

from shadewright.core.colour import (
    Lab,
    OddReading,
    averaged,
    ciede2000,
    difference_words,
    odd_reading,
)
from shadewright.core.mixing import Evidence, Mix, told_mixes
from shadewright.records import shade_reads
from shadewright.records.models import ColourReading, Prediction
from shadewright.workflows.shades.palettes import PaletteNow, palette_now
from shadewright.workflows.shades.swatches import (
    ReadColour,
    SwatchNow,
    shaped_reading,
)
from shadewright.workflows.stamps import today

_OURS = "D65/10°"


@dataclass(frozen=True, kw_only=True)
class ReadingLine:
    """A reading in the swatch’s ledger; one that was taken back stays there.

    ``typed_for`` is the light and the eye that it was typed for where those are not
    D65/10°. ``sd`` is how its single readings scatter, as a CIELAB distance, None
    where there is one alone; ``odd`` the one that lies far from the others.
    """

    reading: ReadColour
    as_typed: str
    typed_for: str
    sd: float | None
    odd: OddReading | None
    is_undone: bool
    may_undo: bool
    deed: UUID


@dataclass(frozen=True, kw_only=True)
class Foretold:
    """What the palette says of a swatch.

    ``difference`` is CIEDE2000 from there to what was read, None where nothing was,
    and ``words`` the same in words. ``is_before`` tells that it was said before the
    swatch was dyed, ``is_learned`` that the palette learned from the swatch itself;
    ``left_out`` is then how far the others alone would have been off, if known.
    """

    lab: Lab
    expected: float
    within_90: float
    evidence: Evidence
    difference: float | None
    words: str
    is_before: bool
    is_learned: bool
    left_out: float | None


def reading_lines(swatch_id: int) -> tuple[ReadingLine, ...]:
    """Return every reading of a swatch, the newest first."""
    row = shade_reads.swatch_row(swatch_id)
    lines = [_line(each) for each in row.readings.all() if each.undoes_id is None]
    return tuple(reversed(lines))


def foretold_of(swatch: SwatchNow) -> Foretold | None:
    """Return what was foretold before it was dyed, else what the palette says now."""
    row = Prediction.objects.filter(bath__number=swatch.bath_number).first()
    if row is not None:
        return _before(row, swatch)
    now = palette_now()
    return None if now is None else _by_palette(now, swatch)


def _line(row: ColourReading) -> ReadingLine:
    is_undone = hasattr(row, "undone_by")
    is_of_today = timezone.localdate(row.written_at) == today()
    light, single = _singles(row)
    return ReadingLine(
        reading=shaped_reading(row),
        as_typed=row.as_typed,
        typed_for="" if light == _OURS else light,
        sd=averaged(single).sd if single else None,
        odd=odd_reading(single),
        is_undone=is_undone,
        may_undo=is_of_today and not is_undone,
        deed=row.deed,
    )


def _singles(row: ColourReading) -> tuple[str, list[Lab]]:
    """Return the single readings under the first light, and what they are for."""
    read = [
        (f"{each['light']}/{each['observer']}°", Lab(*each["lab"]))
        for each in row.each
        if "lab" in each
    ]
    first = read[0][0] if read else _OURS
    return first, [lab for light, lab in read if light == first]


def _before(row: Prediction, swatch: SwatchNow) -> Foretold:
    lab = Lab(row.colour_l, row.colour_a, row.colour_b)
    return Foretold(
        lab=lab,
        expected=row.expected,
        within_90=row.within_90,
        evidence=Evidence(row.evidence),
        difference=_apart(swatch, lab),
        words=_said(swatch, lab),
        is_before=True,
        is_learned=False,
        left_out=None,
    )


def _by_palette(now: PaletteNow, swatch: SwatchNow) -> Foretold | None:
    names = now.palette.names
    knows = swatch.base_name in names.bases
    if not knows or any(dye not in names.dyes for dye, _depth in swatch.doses):
        return None
    told = told_mixes(
        [Mix(base=swatch.base_name, doses=swatch.doses)], palette=now.palette
    )
    lab = Lab(*map(float, told.lab[0]))
    return Foretold(
        lab=lab,
        expected=float(told.expected[0]),
        within_90=float(told.de_90[0]),
        evidence=told.evidence[0],
        difference=_apart(swatch, lab),
        words=_said(swatch, lab),
        is_before=False,
        is_learned=swatch.id in now.used,
        left_out=now.left_out.get(swatch.id),
    )


def _said(swatch: SwatchNow, lab: Lab) -> str:
    return "" if swatch.reading is None else difference_words(lab, swatch.reading.lab)


def _apart(swatch: SwatchNow, lab: Lab) -> float | None:
    return None if swatch.reading is None else ciede2000(lab, swatch.reading.lab)
