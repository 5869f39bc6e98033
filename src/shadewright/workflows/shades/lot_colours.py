"""The colours of many lots at once: each the newest that was read dry.

The mean of a dry check comes first, then what was read of an end of the lot, then what
was noted on its page.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import sqrt

from shadewright.core.colour import Lab
from shadewright.records import judging_reads
from shadewright.records.models import DryCheck, Lot
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.kinds import SPREADS
from shadewright.workflows.shades.offering import noted_lot
from shadewright.workflows.shades.swatches import shaped_reading

BY_METER = frozenset({ReadBy.METER, ReadBy.LIGHTS, ReadBy.SPECTRUM})
"""Ways of reading that see a difference of one lot to the next."""


@dataclass(frozen=True, kw_only=True)
class LotColour:
    """A lot’s colour in daylight; ``u`` is its standard uncertainty along any line."""

    lab: Lab
    read_by: ReadBy
    u: float | None

    @property
    def is_by_meter(self) -> bool:
        """Whether a meter read it."""
        return self.read_by in BY_METER


def lot_colours(lots: Sequence[Lot]) -> Mapping[int, LotColour]:
    """Return the colours of lots by their row numbers; of some there is none."""
    found = {lot.pk: each for lot in lots if (each := _noted(lot)) is not None}
    found |= _read(lots)
    checks = judging_reads.standing_checks().filter(lot__in=lots)
    return found | {row.lot_id: _checked(row) for row in checks}


def _read(lots: Sequence[Lot]) -> dict[int, LotColour]:
    lot_of = {lot.bath_id: lot.pk for lot in lots}
    found = {}
    for row in judging_reads.dry_readings(lots):
        read = shaped_reading(row)
        u = _along(SPREADS.get(read.read_by) if read.sd is None else read.sd)
        mean_u = None if u is None else u / sqrt(read.repeat)
        colour = LotColour(lab=read.lab, read_by=read.read_by, u=mean_u)
        found[lot_of[row.swatch.bath_id or 0]] = colour
    return found


def _checked(row: DryCheck) -> LotColour:
    lab = Lab(row.colour_l, row.colour_a, row.colour_b)
    read_by = ReadBy(row.read_by)
    u = _along(SPREADS.get(read_by)) if row.de_u is None else row.de_u
    return LotColour(lab=lab, read_by=read_by, u=u)


def _noted(lot: Lot) -> LotColour | None:
    noted = noted_lot(lot)
    if noted is None:
        return None
    u = _along(SPREADS.get(noted.read_by))
    return LotColour(lab=noted.lab, read_by=noted.read_by, u=u)


def _along(sd: float | None) -> float | None:
    """Return the spread along one line, of one that is a CIELAB distance."""
    return None if sd is None else sd / sqrt(3.0)
