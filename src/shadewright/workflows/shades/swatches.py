"""Swatches as frozen values: what was dyed, what was read, what was said of it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from shadewright.core.colour import Lab
from shadewright.records import shade_reads
from shadewright.records.models import Bath, ColourReading, Swatch
from shadewright.records.models.swatches import EvidenceAct, EvidenceLine, ReadBy
from shadewright.workflows.depths import doses_in
from shadewright.workflows.poured import PouredBath, poured_baths

Doses = tuple[tuple[str, float], ...]
"""Dyes by name with their depths. [%]"""

DyeDoses = tuple[tuple[int, float], ...]
"""Dyes by their number with their depths. [%]"""


class Standing(StrEnum):
    """Whether a swatch teaches."""

    COUNTS = "counts"
    TRUSTED = "trusted"
    SET_ASIDE = "set aside"
    OFFERED = "offered"
    WET = "wet"
    UNREAD = "unread"


@dataclass(frozen=True, kw_only=True)
class ReadColour:
    """A colour as it was read: Lab in daylight (D65/10°), and how it was come by."""

    id: int
    read_by: ReadBy
    lab: Lab
    labs: dict[str, tuple[float, float, float]]
    spectrum: tuple[float, ...]
    repeat: int
    sd: float | None
    is_wet: bool
    meter: str
    at: datetime
    by: str


@dataclass(frozen=True, kw_only=True)
class SwatchNow:
    """A swatch as it stands; ``reading`` is the newest dry one that was not undone.

    ``doses`` are those that went in; ``is_lot`` tells that it is an end of a lot;
    ``judged_at`` and ``judged_by`` when and by whom it was last judged as evidence.
    """

    id: int
    label: str
    base_id: int
    base_name: str
    doses: Doses
    dyed_on: date | None
    session: str
    bath_number: str
    is_lot: bool
    plan_id: int | None
    reading: ReadColour | None
    standing: Standing
    judged_at: datetime | None
    judged_by: str
    note: str

    @property
    def is_evidence(self) -> bool:
        """Whether it teaches."""
        return self.standing in {Standing.COUNTS, Standing.TRUSTED}


def swatches_now() -> tuple[SwatchNow, ...]:
    """Return every swatch, the newest first."""
    rows = list(shade_reads.swatch_rows())
    poured = poured_of(rows)
    return tuple(shaped_swatch(row, poured) for row in rows)


def swatches_of_plan(recipe_id: int) -> tuple[SwatchNow, ...]:
    """Return the swatches of a set that were read or looked at already."""
    rows = list(shade_reads.swatch_rows().filter(bath__version__recipe=recipe_id))
    poured = poured_of(rows)
    return tuple(shaped_swatch(row, poured) for row in rows)


def swatch_now(swatch_id: int) -> SwatchNow:
    """Return one swatch."""
    row = shade_reads.swatch_row(swatch_id)
    return shaped_swatch(row, poured_of([row]))


def poured_of(rows: Sequence[Swatch]) -> Mapping[int, PouredBath]:
    """Return what went into the baths of some swatches, by the baths’ row numbers."""
    return poured_baths([row.bath for row in rows if row.bath is not None])


def shaped_swatch(
    row: Swatch, poured: Mapping[int, PouredBath] | None = None
) -> SwatchNow:
    """Return a row as frozen values; of many, ask once what went into their baths."""
    bath = row.bath
    is_lot = bath is not None and not bath.is_swatch
    standing_readings = [
        each
        for each in row.readings.all()
        if each.undoes_id is None and not hasattr(each, "undone_by")
    ]
    dry = [each for each in standing_readings if not each.is_wet]
    said = said_of(row)
    return SwatchNow(
        id=row.pk,
        label=row.label,
        base_id=row.base_id,
        base_name=row.base.name,
        doses=_doses(row, poured_of([row]) if poured is None else poured),
        dyed_on=row.dyed_on,
        session=row.session,
        bath_number="" if bath is None else bath.number,
        is_lot=is_lot,
        plan_id=None if bath is None else _plan_id(bath),
        reading=shaped_reading(dry[-1]) if dry else None,
        standing=_standing(row, standing_readings, dry, is_lot=is_lot),
        judged_at=None if said is None else said.at,
        judged_by="" if said is None or said.by is None else said.by.name,
        note=row.note,
    )


def shaped_reading(row: ColourReading) -> ReadColour:
    """Return a reading as frozen values."""
    return ReadColour(
        id=row.pk,
        read_by=ReadBy(row.read_by),
        lab=Lab(*row.labs["D65"]),
        labs={light: tuple(lab) for light, lab in row.labs.items()},
        spectrum=tuple(row.spectrum),
        repeat=row.repeat,
        sd=row.sd,
        is_wet=row.is_wet,
        meter="" if row.meter is None else row.meter.name,
        at=row.at,
        by="" if row.by is None else row.by.name,
    )


def said_of(row: Swatch) -> EvidenceLine | None:
    """Return the newest word on a swatch that was not taken back."""
    said = [
        each
        for each in row.evidence_lines.all()
        if each.undoes_id is None and not hasattr(each, "undone_by")
    ]
    return said[-1] if said else None


def _standing(
    row: Swatch,
    readings: list[ColourReading],
    dry: list[ColourReading],
    *,
    is_lot: bool,
) -> Standing:
    if not dry:
        return Standing.WET if readings else Standing.UNREAD
    said = said_of(row)
    if said is not None:
        return {
            EvidenceAct.COUNTS: Standing.COUNTS,
            EvidenceAct.TRUSTED: Standing.TRUSTED,
            EvidenceAct.SET_ASIDE: Standing.SET_ASIDE,
        }[EvidenceAct(said.act)]
    return Standing.OFFERED if is_lot else Standing.COUNTS


def _doses(row: Swatch, poured: Mapping[int, PouredBath]) -> Doses:
    if row.bath is not None:
        return doses_in(row.bath, poured[row.bath.pk])
    return tuple((x.dye.name, x.depth_percent) for x in row.doses.all())


def _plan_id(bath: Bath) -> int | None:
    plan = getattr(bath.version.recipe, "swatch_plan", None)
    return None if plan is None else plan.pk
