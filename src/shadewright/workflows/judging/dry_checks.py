"""The dry check: a lot held against its standard, and what is decided of it.

Each line that was typed is a spot. What was read stands as the lot's own colour too,
so that it can teach; both are one deed and are taken back as one. Nothing passes wet:
a wet colour is kept, and gets no verdict.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from uuid import UUID

from django.db import transaction

from shadewright.core.colour import Lab, Light, averaged, colour_scatter
from shadewright.core.quality import (
    Band,
    Decision,
    Evenness,
    Formula,
    could_be,
    dry_check,
)
from shadewright.core.quality import DryCheck as Judged
from shadewright.errors import ConflictError, MissingError
from shadewright.records import judging_reads, lot_reads
from shadewright.records.models import ColourReading, DryCheck, Lot
from shadewright.records.models.swatches import ReadBy
from shadewright.records.writes import keep_line
from shadewright.workflows.judging.snips import require_dry
from shadewright.workflows.judging.standards import (
    StandardNow,
    judged_as,
    shaped_standard,
    standard_of,
)
from shadewright.workflows.judging.tolerances import StudioTolerances, tolerances_now
from shadewright.workflows.judging.tone_bands import tone_band
from shadewright.workflows.judging.worth import u_of
from shadewright.workflows.shades.reading_swatches import read_bath
from shadewright.workflows.shades.readings import (
    NewReading,
    ReadWords,
    reading_from,
)
from shadewright.workflows.shades.spectra import labs_of_spectrum
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.undo import may_undo

__all__ = [
    "CheckNow",
    "Decision",
    "Evenness",
    "Formula",
    "Spot",
    "checks_of",
    "keep_check",
    "last_check",
]

LEVEL = Band()
"""What a colourway is held against for which no band was said."""


@dataclass(frozen=True, kw_only=True)
class Spot:
    """One spot of one skein, in daylight."""

    skein: int
    lab: Lab


@dataclass(frozen=True, kw_only=True)
class CheckNow:
    """A check that stands.

    ``u`` is the standard uncertainty of the difference; ``could_be`` are the decisions
    among which nobody can tell. Without a standard, or where it was taken back, there
    is no difference.
    """

    lot: str
    at: datetime
    by: str
    read_by: ReadBy
    meter: str
    lab: Lab
    u_lab: float | None
    spots: tuple[Spot, ...]
    standard: StandardNow | None
    formula: Formula
    words: str
    difference: float | None
    u: float | None
    unevenness: float | None
    evenness: Evenness | None
    band: Band | None
    verdict: Decision | None
    could_be: tuple[Decision, ...]
    deed: UUID
    may_undo: bool

    @property
    def skeins(self) -> int:
        """How many skeins were read."""
        return len({each.skein for each in self.spots})


def checks_of(number: str) -> tuple[CheckNow, ...]:
    """Return the checks of a lot that stand, the newest first."""
    lot = lot_reads.lot_row(number)
    rows = judging_reads.standing_checks().filter(lot=lot).order_by("-id")
    band = tone_band(judged_as(lot.bath).recipe_id)
    now = tolerances_now()
    return tuple(_shaped(row, band, now) for row in rows)


def last_check(number: str) -> CheckNow | None:
    """Return the newest check of a lot that stands."""
    return next(iter(checks_of(number)), None)


@transaction.atomic
def keep_check(
    number: str, *, read: ReadWords, skeins: Sequence[int], stamp: Stamp
) -> CheckNow | None:
    """Keep what was read of a lot and its verdict; None where it was read wet.

    ``skeins`` tells of each line to which skein it belongs.
    """
    lot = lot_reads.locked_lot_row(number)
    if not is_written(stamp.deed):
        _require_checkable(lot)
        if not read.is_wet:
            require_dry(number, stamp.at)
        read_bath(number, words=read, stamp=stamp)
        if not read.is_wet:
            _write(lot, read, skeins, stamp)
    return None if read.is_wet else last_check(number)


def _require_checkable(lot: Lot) -> None:
    if not lot.lines.all():
        raise ConflictError(why=f"Lot {lot.number} was taken back.")
    if lot.bath.is_swatch:
        raise ConflictError(
            why=f"{lot.number} is a swatch; it has no standard.",
            advice="Read its colour instead.",
        )


def _write(lot: Lot, read: ReadWords, skeins: Sequence[int], stamp: Stamp) -> None:
    new = reading_from(read)
    spots = _spots(read, new, skeins)
    labs = [each.lab for each in spots]
    what, now = judged_as(lot.bath), tolerances_now()
    standard = standard_of(recipe_id=what.recipe_id, base_id=what.base_id)
    reading = ColourReading.objects.filter(deed=stamp.deed).first()
    u_read = None if reading is None else u_of(reading)
    judged = _judged(labs, u_read, standard, now, tone_band(what.recipe_id))
    mean = averaged(labs)
    row = DryCheck(
        lot=lot,
        standard_id=None if standard is None else standard.id,
        reading=reading,
        read_by=new.read_by,
        meter_id=new.meter_id,
        spots=[{"skein": each.skein, "lab": list(each.lab)} for each in spots],
        colour_l=mean.mean.L,
        colour_a=mean.mean.a,
        colour_b=mean.mean.b,
        inside_de=None if mean.sd is None else colour_scatter(labs).mean,
        formula=now.formula,
        de=None if judged is None else judged.difference,
        de_u=None if judged is None else judged.spread,
        words="" if judged is None else judged.words[:160],
        verdict="" if judged is None else judged.decision,
        method=now.words,
    )
    keep_line(row, stamp)


def _judged(
    labs: Sequence[Lab],
    u_read: float | None,
    standard: StandardNow | None,
    now: StudioTolerances,
    band: Band | None,
) -> Judged | None:
    if standard is None or standard.lab is None:
        return None
    if u_read is None or standard.u is None:
        raise MissingError(
            name="How far such a colour may be off",
            advice="Nobody knows how far off a maker’s chart is: read the yarn itself.",
            argument="way",
        )
    return dry_check(
        labs,
        standard=standard.lab,
        tolerances=now.steps,
        band=band or LEVEL,
        formula=now.formula,
        u_read=u_read,
        u_standard=standard.u,
    )


def _spots(read: ReadWords, new: NewReading, skeins: Sequence[int]) -> tuple[Spot, ...]:
    """Return every reading by itself, as it would be kept alone."""
    if new.spectrum:
        labs = [_of_spectrum(each["spectrum"]) for each in new.each]
    else:
        lines = [line for text in read.texts for line in text.splitlines()]
        alone = replace(read, further={})
        labs = [
            reading_from(replace(alone, texts=(line,))).lab
            for line in lines
            if line.strip()
        ]
    known = skeins if len(skeins) == len(labs) else [1] * len(labs)
    return tuple(
        Spot(skein=skein, lab=lab) for skein, lab in zip(known, labs, strict=True)
    )


def _of_spectrum(values: object) -> Lab:
    return Lab(*labs_of_spectrum(values)[Light.D65])  # type: ignore[arg-type]


def _shaped(row: DryCheck, band: Band | None, now: StudioTolerances) -> CheckNow:
    lab = Lab(row.colour_l, row.colour_a, row.colour_b)
    held = row.standard
    is_held = held is not None and held.is_standing
    standard = shaped_standard(held) if held is not None and is_held else None
    inside = row.inside_de
    return CheckNow(
        lot=row.lot.number,
        at=row.at,
        by="" if row.by is None else row.by.name,
        read_by=ReadBy(row.read_by),
        meter="" if row.meter is None else row.meter.name,
        lab=lab,
        u_lab=None if row.reading is None else u_of(row.reading),
        spots=tuple(Spot(skein=x["skein"], lab=Lab(*x["lab"])) for x in row.spots),
        standard=standard,
        formula=Formula(row.formula),
        words=row.words if is_held else "",
        difference=row.de if is_held else None,
        u=row.de_u if is_held else None,
        unevenness=inside,
        evenness=None if inside is None else (band or LEVEL).judged(inside),
        band=band,
        verdict=Decision(row.verdict) if row.verdict and is_held else None,
        could_be=_could_be(row, lab, standard, now),
        deed=row.deed,
        may_undo=may_undo(row),
    )


def _could_be(
    row: DryCheck, lab: Lab, standard: StandardNow | None, now: StudioTolerances
) -> tuple[Decision, ...]:
    is_open = row.verdict == Decision.CANNOT_TELL
    if not is_open or row.de is None or standard is None or standard.lab is None:
        return ()
    return could_be(
        difference=row.de,
        spread=row.de_u or 0.0,
        is_paler=lab.L > standard.lab.L,
        tolerances=now.steps,
    )
