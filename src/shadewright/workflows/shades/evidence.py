"""Which swatches teach, as core takes them."""

from collections.abc import Sequence
from collections.abc import Set as AbstractSet

from shadewright.core.mixing import Swatch as Taught
from shadewright.core.mixing import checked_swatch
from shadewright.records import shade_reads
from shadewright.records.models import Swatch
from shadewright.workflows.shades.kinds import reading_of
from shadewright.workflows.shades.swatches import (
    Standing,
    SwatchNow,
    shaped_swatch,
)


def evidence() -> tuple[Taught, ...]:
    """Return what a fit rests on, the oldest first; its number is the swatch’s."""
    found = []
    for row in shade_reads.swatch_rows().order_by("id"):
        now = shaped_swatch(row)
        if now.is_evidence:
            found.append(checked_swatch(_taught(row, now)))
    return tuple(found)


def trusted_swatches() -> tuple[int, ...]:
    """Return the swatches that somebody looked at again and vouches for."""
    rows = map(shaped_swatch, shade_reads.swatch_rows())
    return tuple(now.id for now in rows if now.standing is Standing.TRUSTED)


def day_of(now: SwatchNow) -> str:
    """Return the day on which a swatch was dyed as a palette names it."""
    return "" if now.dyed_on is None else now.dyed_on.isoformat()


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
            "dose_error": each.dose_error,
            "is_trusted": each.number in trusted,
        }
        for each in taught
    ]


def _taught(row: Swatch, now: SwatchNow) -> Taught:
    reading = next(x for x in row.readings.all() if x.pk == _reading_id(now))
    return Taught(
        number=now.id,
        base=now.base_name,
        doses=now.doses,
        reading=reading_of(reading),
        session=day_of(now),
    )


def _reading_id(now: SwatchNow) -> int:
    return 0 if now.reading is None else now.reading.id
