"""How a colour was come by, and what that is worth to a fit."""

from typing import Final

from shadewright.core.colour.spectra import Light
from shadewright.core.mixing import Evidence, Reading
from shadewright.core.mixing.swatches import LIGHTS
from shadewright.records.models.swatches import (
    ColourReading,
    MeterLight,
    MeterObserver,
    ReadBy,
)

__all__ = ["SPREADS", "TEACHES_AS", "Labs", "ReadBy", "reading_of"]

Labs = dict[str, tuple[float, float, float]]

SPREADS: Final = {
    ReadBy.EYE: 6.0,
    ReadBy.PHOTO: 4.0,
    ReadBy.PHOTO_CARD: 2.0,
    ReadBy.METER: 0.3,
    ReadBy.LIGHTS: 0.3,
    ReadBy.SPECTRUM: 0.3,
}
"""How far one reading is usually off, as a CIELAB distance (common practice). [1]"""

TEACHES_AS: Final = {
    ReadBy.CHART: Evidence.SCREEN,
    ReadBy.EYE: Evidence.SCREEN,
    ReadBy.PHOTO: Evidence.SCREEN,
    ReadBy.PHOTO_CARD: Evidence.SCREEN,
    ReadBy.METER: Evidence.LAB,
    ReadBy.LIGHTS: Evidence.THREE_LIGHTS,
    ReadBy.SPECTRUM: Evidence.SPECTRUM,
}


def reading_of(row: ColourReading) -> Reading:
    """Return a colour that was read as the fit takes it."""
    kind = TEACHES_AS[ReadBy(row.read_by)]
    return Reading(
        evidence=kind,
        values=_values(kind, row),
        repeat=row.repeat,
        sd=row.sd if row.sd is not None else SPREADS.get(ReadBy(row.read_by)),
        is_carried=_is_carried(row),
    )


def _is_carried(row: ColourReading) -> bool:
    """Whether its meter reckons for another light or eye than D65 and 10°."""
    meter = row.meter
    usual = MeterLight.D65, MeterObserver.TEN
    return meter is not None and (meter.light, meter.observer) != usual


def _values(kind: Evidence, row: ColourReading) -> tuple[float, ...]:
    if kind is Evidence.SPECTRUM:
        return tuple(row.spectrum)
    lights = LIGHTS if kind is Evidence.THREE_LIGHTS else (Light.D65,)
    return tuple(part for light in lights for part in row.labs[str(light)])
