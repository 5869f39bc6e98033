"""Which swatches teach, as core takes them."""

from collections.abc import Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from math import sqrt

from shadewright.core.mixing import Swatch as Taught
from shadewright.core.mixing import checked_swatch
from shadewright.core.mixing.swatches import DOSE_ERROR, MOST_DOSE_ERROR
from shadewright.core.uncertainty import Value
from shadewright.records import shade_reads
from shadewright.records.models import Swatch
from shadewright.workflows.depths import values_in
from shadewright.workflows.poured import PouredBath
from shadewright.workflows.shades.kinds import reading_of
from shadewright.workflows.shades.swatches import (
    Standing,
    SwatchNow,
    poured_of,
    shaped_swatch,
)

_DIGITS = 4
"""A spread in more digits is noise, and would make a palette look out of date."""


@dataclass(frozen=True, kw_only=True)
class Teaching:
    """What a fit rests on; ``trusted`` are those that somebody vouches for."""

    taught: tuple[Taught, ...]
    trusted: frozenset[int]


def teaching() -> Teaching:
    """Return what a fit rests on, the oldest first; its number is the swatch’s."""
    rows = list(shade_reads.swatch_rows().order_by("id"))
    poured = poured_of(rows)
    pairs = [(row, shaped_swatch(row, poured)) for row in rows]
    return Teaching(
        taught=tuple(
            checked_swatch(_taught(row, now, poured))
            for row, now in pairs
            if now.is_evidence
        ),
        trusted=frozenset(
            now.id for _row, now in pairs if now.standing is Standing.TRUSTED
        ),
    )


def evidence() -> tuple[Taught, ...]:
    """Return the swatches that teach."""
    return teaching().taught


def day_of(now: SwatchNow) -> str:
    """Return the dyeing of a swatch as a palette names it: its day, else its name."""
    return now.session if now.dyed_on is None else now.dyed_on.isoformat()


def as_kept(
    taught: Sequence[Taught], *, trusted: AbstractSet[int] = frozenset()
) -> list[dict[str, object]]:
    """Return what a fit was given as plain values, to be kept with it."""
    return [
        {
            "swatch": each.number,
            "base": each.base,
            "doses": [list(dose) for dose in each.doses],
            "session": each.session,
            "evidence": str(each.reading.evidence),
            "values": list(each.reading.values),
            "repeat": each.reading.repeat,
            "sd": each.reading.sd,
            "is_carried": each.reading.is_carried,
            "dose_error": each.dose_error,
            "is_trusted": each.number in trusted,
        }
        for each in taught
    ]


def dose_error_of(depths: Sequence[Value]) -> float | None:
    """Return how unsure the doses of a bath are as one number, relative.

    A dye moves the colour by about as much as there is of it, so each spread counts
    by the square of its depth. Not below what is usual: moisture in the yarn and dye
    left in the bath are in no budget of a syringe. None where no spread is known.
    """
    known = [each for each in depths if each.terms and each.value > 0.0]
    if not known:
        return None
    whole = sqrt(sum(each.value**2 for each in known))
    mean = sqrt(sum(each.u**2 for each in known)) / whole
    return round(min(max(mean, DOSE_ERROR), MOST_DOSE_ERROR), _DIGITS)


def _taught(row: Swatch, now: SwatchNow, poured: Mapping[int, PouredBath]) -> Taught:
    reading = next(x for x in row.readings.all() if x.pk == _reading_id(now))
    bath = row.bath
    return Taught(
        number=now.id,
        base=now.base_name,
        doses=now.doses,
        reading=reading_of(reading),
        session=day_of(now),
        dose_error=None
        if bath is None
        else dose_error_of(values_in(bath, poured[bath.pk])),
    )


def _reading_id(now: SwatchNow) -> int:
    return 0 if now.reading is None else now.reading.id
