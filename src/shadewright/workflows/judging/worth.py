"""What a reading is worth when two colours are held against each other."""

from math import sqrt

from shadewright.records.models import ColourReading
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.kinds import SPREADS


def u_of(row: ColourReading) -> float | None:
    """Return the standard uncertainty of a reading as a CIELAB distance.

    Two spots that happen to agree make no meter better than it is known to be; None
    where nobody knows what such a reading is worth.
    """
    known = None if row.meter is None else row.meter.spread
    least = SPREADS.get(ReadBy(row.read_by)) if known is None else known
    spreads = [each for each in (row.sd, least) if each is not None]
    return max(spreads) / sqrt(row.repeat) if spreads else None
