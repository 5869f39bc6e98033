"""All of it together: heat, minutes, the fastest rise, and what to mind."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.core.baths.heating.boiling import (
    NEAR_C,
    boiling_point_c,
    place_words,
)
from shadewright.core.baths.heating.energy import Load, evaporation_kwh, heat_kwh
from shadewright.core.baths.heating.pace import (
    fastest_rise_c_per_min,
    heating_minutes,
    share_of,
)
from shadewright.core.baths.programme import HEAVY_KG, HOT_BATH, HOT_LIFT
from shadewright.core.quantities import amount_text, require_between
from shadewright.core.tables.heat import Source
from shadewright.errors import OutOfRangeError

_LOST_ML = 100.0
_LONGEST_MIN = 1e6


@dataclass(frozen=True, kw_only=True)
class HeatWanted:
    """A load to be heated [°C], on a source of a power [kW], at an altitude [m]."""

    load: Load
    start_c: float
    top_c: float
    power_kw: float
    source: Source
    altitude_m: float = 0.0


@dataclass(frozen=True, kw_only=True)
class HeatSum:
    """What a heating takes, by the usual share of its source."""

    energy_kwh: float
    input_kwh: float
    minutes: float
    fastest_rise_c_per_min: float
    share: float
    boils_at_c: float
    warnings: tuple[str, ...]


def heat_sum(*, wanted: HeatWanted) -> HeatSum:
    """Return what it takes to bring a bath to a temperature.

    E_in = E/η                                                     (10)

    Parameters
    ----------
    wanted : HeatWanted
        Load [mL, g, kg], temperatures [°C], power [kW], source, altitude [m]. [-]

    Returns
    -------
    HeatSum
        Heat into the pot and from the source [kWh], time [min], fastest rise
        [°C/min], boiling point [°C], and what to mind. [-]

    Raises
    ------
    OutOfRangeError
        If the aim is not above the start, lies above the boiling point, an amount
        is out of range, it takes above a million minutes, or the source is a
        steamer.

    References
    ----------
    .. [energystar2021] shares of gas, resistance and induction

    Examples
    --------
    >>> load = Load(water_ml=4000.0, fibre_g=100.0, vessel_kg=2.0)
    >>> found = heat_sum(
    ...     wanted=HeatWanted(
    ...         load=load,
    ...         start_c=20.0,
    ...         top_c=95.0,
    ...         power_kw=1.8,
    ...         source=Source.INDUCTION,
    ...     )
    ... )
    >>> round(found.energy_kwh, 3), round(found.minutes, 1)
    (0.372, 14.6)
    """
    boils_c = boiling_point_c(altitude_m=wanted.altitude_m)
    _check_aim(wanted, boils_c)
    top_c = min(wanted.top_c, 100.0)
    energy = heat_kwh(load=wanted.load, start_c=wanted.start_c, top_c=top_c)
    share = share_of(wanted.source).usual
    minutes = require_between(
        heating_minutes(energy_kwh=energy, power_kw=wanted.power_kw, share=share),
        least=0.0,
        most=_LONGEST_MIN,
        unit="min",
        name="Time to the top",
        argument="power_kw",
    )
    return HeatSum(
        energy_kwh=energy,
        input_kwh=energy / share,
        minutes=minutes,
        fastest_rise_c_per_min=fastest_rise_c_per_min(
            start_c=wanted.start_c, top_c=top_c, minutes=minutes
        ),
        share=share,
        boils_at_c=boils_c,
        warnings=tuple(_warnings(wanted, share)),
    )


def _check_aim(wanted: HeatWanted, boils_c: float) -> None:
    aim = amount_text(wanted.top_c, "°C")
    if wanted.top_c > boils_c + NEAR_C:
        raise OutOfRangeError(
            name="The aim",
            given=aim,
            allowed=f"at most {amount_text(boils_c, '°C')}, where water boils "
            f"{place_words(wanted.altitude_m)}",
            argument="top_c",
        )
    if not wanted.top_c > wanted.start_c:
        raise OutOfRangeError(
            name="The aim",
            given=aim,
            allowed=f"above the start, {amount_text(wanted.start_c, '°C')}",
            argument="top_c",
        )


def _warnings(wanted: HeatWanted, share: float) -> Iterator[str]:
    lost = heating_minutes(
        energy_kwh=evaporation_kwh(water_ml=_LOST_ML),
        power_kw=wanted.power_kw,
        share=share,
    )
    part = amount_text(100 * share, "%")
    yield (
        f"That {part} of the power reaches the pot is a guess, and what it loses on "
        "the way is left out: time one heat-up with this pot."
    )
    yield (
        f"Keep the lid on: each {amount_text(_LOST_ML, 'ml')} that steams away takes "
        f"{amount_text(lost, 'min')} more."
    )
    yield HOT_BATH
    if wanted.load.mass_kg > HEAVY_KG:
        yield HOT_LIFT
