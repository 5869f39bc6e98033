"""Meters for colour: the light and the eye that each reckons its Lab for."""

from dataclasses import dataclass

from shadewright.core.colour import Lab, Light, Observer, lab_of_meter, sd_of_meter
from shadewright.errors import NotFoundError
from shadewright.records import shade_reads
from shadewright.records.models import Meter


@dataclass(frozen=True, kw_only=True)
class MeterNow:
    """A meter; ``spread`` is one reading’s standard deviation, if somebody said."""

    id: int
    name: str
    light: Light
    observer: Observer
    geometry: str
    spread: float | None

    @property
    def words(self) -> str:
        """Its name, with the light and the eye where they are not the usual ones."""
        if not self.is_carried:
            return self.name
        return f"{self.name} ({self.light}/{self.observer:d}°)"

    @property
    def is_carried(self) -> bool:
        """Whether its Lab has to be carried to D65 and 10°."""
        return (self.light, self.observer) != (Light.D65, Observer.TEN_DEGREES)

    def light_of(self, light: Light) -> Light:
        """Return the light that stands behind what is kept as a light’s Lab."""
        return self.light if light is Light.D65 else light

    def kept(self, lab: Lab, *, light: Light) -> Lab:
        """Return what it read under a light of its own as it is kept."""
        return lab_of_meter(lab, light=light, observer=self.observer)

    def off(self, lab: Lab) -> float:
        """Return how far off what it read in daylight is when it is kept."""
        return sd_of_meter(lab, light=self.light, observer=self.observer)


def meters() -> tuple[MeterNow, ...]:
    """Return the meters in use, by name."""
    rows = shade_reads.meter_rows().filter(is_retired=False)
    return tuple(map(shaped_meter, rows))


def meter(meter_id: int) -> MeterNow:
    """Return one meter, in use or retired."""
    row = shade_reads.meter_rows().filter(pk=meter_id).first()
    if row is None:
        raise NotFoundError(kind="meter", key=str(meter_id), argument="meter_id")
    return shaped_meter(row)


def shaped_meter(row: Meter) -> MeterNow:
    """Return a row as frozen values."""
    return MeterNow(
        id=row.pk,
        name=row.name,
        light=Light(row.light),
        observer=Observer(int(row.observer)),
        geometry=row.geometry,
        spread=row.spread,
    )
