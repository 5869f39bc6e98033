"""Heat for water, yarn and pot; and the heat that leaves with the steam."""

from dataclasses import dataclass
from itertools import pairwise

from shadewright.core.quantities import (
    amount_text,
    require_above_zero,
    require_between,
    require_mass,
    require_volume,
    water_density_g_per_ml,
)
from shadewright.core.tables.heat import (
    BOILING_AWAY_KJ_PER_KG,
    KJ_PER_KWH,
    VESSEL_CP,
    WATER_CP,
    WOOL_CP,
    Material,
)
from shadewright.errors import OutOfRangeError

_MOST_VESSEL_KG = 1000.0


@dataclass(frozen=True, kw_only=True)
class Load:
    """What is heated: all the liquor [mL], the dry yarn [g] and the pot [kg].

    A pot whose weight nobody knows weighs 0 here.
    """

    water_ml: float
    fibre_g: float = 0.0
    vessel_kg: float = 0.0
    material: Material = Material.STAINLESS

    @property
    def mass_kg(self) -> float:
        """What would have to be lifted: liquor, yarn and pot [kg]."""
        return self.water_ml / 1000 + self.fibre_g / 1000 + self.vessel_kg


def water_heat_kj_per_kg(*, start_c: float, top_c: float) -> float:
    """Return the heat that warms a kilogram of water.

    q = ∫ c_p dT, by straight lines between the table's values     (1)

    Parameters
    ----------
    start_c : float
        Temperature at the start, from 0 to 100. [°C]
    top_c : float
        Temperature at the end, from 0 to 100. [°C]

    Returns
    -------
    float
        Heat, q; below zero where the water cools. [kJ/kg]

    Raises
    ------
    OutOfRangeError
        If a temperature is not that of liquid water.

    References
    ----------
    .. [crc2016] section 6, properties of water (older editions)

    Examples
    --------
    >>> round(water_heat_kj_per_kg(start_c=20.0, top_c=95.0), 1)
    314.0
    """
    start = _liquid(start_c, name="The start", argument="start_c")
    top = _liquid(top_c, name="The top", argument="top_c")
    return _from_zero(top) - _from_zero(start)


def heat_kwh(*, load: Load, start_c: float, top_c: float) -> float:
    """Return the heat that brings water, yarn and pot to a temperature.

    E = (V ρ q + (m_f c_f + m_v c_v)(T_2 − T_1))/3600              (2)

    Parameters
    ----------
    load : Load
        Water at the start [mL], yarn [g], pot [kg] and what it is made of. [-]
    start_c : float
        Temperature at the start, T_1. [°C]
    top_c : float
        Temperature at the end, T_2; not below the start. [°C]

    Returns
    -------
    float
        Heat into the pot, E. [kWh]

    Raises
    ------
    OutOfRangeError
        If the bath has no water, a weight is out of range, a temperature is not
        that of liquid water, or the end lies below the start.

    Notes
    -----
    What the wall and the surface lose on the way is not in it.

    References
    ----------
    .. [kell1975] equation 16, for ρ at the start (from memory)

    Examples
    --------
    >>> load = Load(water_ml=4000.0, fibre_g=100.0, vessel_kg=2.0)
    >>> round(heat_kwh(load=load, start_c=20.0, top_c=95.0), 3)
    0.372
    """
    _check_load(load)
    per_kg = water_heat_kj_per_kg(start_c=start_c, top_c=top_c)
    if top_c < start_c:
        raise OutOfRangeError(
            name="The top",
            given=amount_text(top_c, "°C"),
            allowed=f"at least the start, {amount_text(start_c, '°C')}",
            argument="top_c",
        )
    water_kg = load.water_ml * water_density_g_per_ml(temperature_c=start_c) / 1000
    solids_kj_per_k = (
        load.fibre_g / 1000 * WOOL_CP + load.vessel_kg * VESSEL_CP[load.material]
    )
    heat_kj = water_kg * per_kg + solids_kj_per_k * (top_c - start_c)
    return heat_kj / KJ_PER_KWH


def evaporation_kwh(*, water_ml: float) -> float:
    """Return the heat that leaves with water which boils away.

    E = V ρ L/3600                                                 (3)

    Parameters
    ----------
    water_ml : float
        Water that is gone, measured cold; zero or more. [mL]

    Returns
    -------
    float
        Heat that the source gave for it, E. [kWh]

    Raises
    ------
    OutOfRangeError
        If the volume is below zero or above 1000 l.

    Notes
    -----
    At 100 °C, 2256.5 kJ/kg (from memory); below the boil a part in twenty more.

    Examples
    --------
    >>> round(evaporation_kwh(water_ml=500.0), 3)
    0.313
    """
    lost_ml = require_between(
        water_ml,
        least=0.0,
        most=1_000_000.0,
        unit="ml",
        name="Water boiled away",
        argument="water_ml",
    )
    lost_kg = lost_ml * water_density_g_per_ml(temperature_c=20.0) / 1000
    return lost_kg * BOILING_AWAY_KJ_PER_KG / KJ_PER_KWH


def _check_load(load: Load) -> None:
    require_volume(load.water_ml, name="Water", argument="water_ml")
    if load.fibre_g:
        require_mass(load.fibre_g, name="Weight of fibre", argument="fibre_g")
    if load.vessel_kg:
        require_above_zero(
            load.vessel_kg,
            most=_MOST_VESSEL_KG,
            unit="kg",
            name="Weight of the vessel",
            argument="vessel_kg",
        )


def _liquid(value_c: float, *, name: str, argument: str) -> float:
    return require_between(
        value_c, least=0.0, most=100.0, unit="°C", name=name, argument=argument
    )


def _from_zero(temperature_c: float) -> float:
    """Return the heat from 0 °C up, the area under straight lines [kJ/kg]."""
    heat = 0.0
    for (low, cp_low), (high, cp_high) in pairwise(WATER_CP):
        if temperature_c <= low:
            break
        reached = min(temperature_c, high)
        cp = cp_low + (cp_high - cp_low) * (reached - low) / (high - low)
        heat += (reached - low) * (cp_low + cp) / 2
    return heat
