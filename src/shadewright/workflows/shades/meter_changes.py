"""A meter whose light was written down wrongly: what it read is carried anew.

A reading keeps what was typed in the light and the eye that the meter was said to
have. Where that was wrong the same numbers are carried from the right ones and kept as
new readings, which hold from then on; the old ones stay in the book. A meter that was
set to another light from some day on is another meter.
"""

from dataclasses import dataclass, replace

from django.db import transaction
from django.db.models import QuerySet

from shadewright.core.colour import Lab, Light
from shadewright.errors import OutOfRangeError
from shadewright.records import shade_reads
from shadewright.records.models import ColourReading, Meter
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.shades.meters import MeterNow, shaped_meter
from shadewright.workflows.shades.readings import (
    LabsRead,
    NewReading,
    checked_reading,
    keep_new_reading,
    reading_of_labs,
)
from shadewright.workflows.shades.swatches import swatches_now
from shadewright.workflows.stamps import Stamp

_BY_LAB = {ReadBy.METER, ReadBy.LIGHTS}
_NOTE = "Carried anew: the meter’s light or eye was written down wrongly."


@dataclass(frozen=True, kw_only=True)
class MeterKept:
    """How many colours were carried anew, and how many could not be."""

    carried: int = 0
    left: int = 0

    @property
    def words(self) -> str:
        """What was done, as the end of a sentence, or nothing."""
        if not self.carried and not self.left:
            return ""
        one = "1 colour was" if self.carried == 1 else f"{self.carried} colours were"
        said = f"; {one} carried anew"
        if self.left:
            said += f", {self.left} could not be: what was typed was not kept"
        return said


@transaction.atomic
def keep_meter(row: Meter, stamp: Stamp) -> MeterKept:
    """Keep a new or an edited meter; carry anew what it read, if that changes it."""
    before = shade_reads.meter_rows().filter(pk=row.pk).first()
    keep_item(row, stamp)
    if before is None or _setting(before) == _setting(row):
        return MeterKept()
    return _carry_anew(shaped_meter(row), stamp)


def _setting(row: Meter) -> tuple[str, str]:
    return str(row.light), str(row.observer)


def _carry_anew(meter: MeterNow, stamp: Stamp) -> MeterKept:
    carried, left = 0, 0
    for row in _held_by(meter):
        new = _anew(row, meter)
        if new is None:
            left += 1
            continue
        then = replace(stamp, at=row.at)
        keep_new_reading(swatch_id=row.swatch_id, new=new, stamp=then)
        carried += 1
    return MeterKept(carried=carried, left=left)


def _held_by(meter: MeterNow) -> QuerySet[ColourReading]:
    """Return the readings that hold of a swatch, and are this meter’s Lab."""
    held = [each.reading.id for each in swatches_now() if each.reading is not None]
    return ColourReading.objects.filter(
        pk__in=held, meter_id=meter.id, read_by__in=_BY_LAB
    )


def _anew(row: ColourReading, meter: MeterNow) -> NewReading | None:
    read = _labs_of(row)
    if Light.D65 not in read:
        return None
    new = replace(reading_of_labs(read, meter), as_typed=row.as_typed, note=_NOTE)
    try:
        return checked_reading(new)
    except OutOfRangeError:
        return None


def _labs_of(row: ColourReading) -> LabsRead:
    """Return the single readings as they were typed, by the light they are kept as."""
    found: LabsRead = {}
    for each in row.each:
        light = Light(each["light"])
        kept = Light.D65 if light is Light.D50 else light
        found.setdefault(kept, []).append(Lab(*each["lab"]))
    return found
