"""Heating: how much heat a bath takes, how long that lasts, and by what curve.

A pot on a plate is a sum of three things that grow warm: water, yarn and the
pot itself. The source gives its power, of which a share arrives. The share is
a guess until one heat-up of this pot on this source has been timed.

======  ==============================================  ==========
symbol  meaning                                         unit
======  ==============================================  ==========
E       heat into the pot                               kWh
Q       the same                                        kJ
c_p     specific heat                                   kJ/(kg K)
P       power of the source                             kW
η       share of it that reaches the pot                1
t       time                                            min
T       temperature                                     °C
p       pressure of the air                             kPa
h       altitude                                        m
======  ==============================================  ==========

1. ``energy``      heat for water, yarn and pot; heat that leaves with the steam
2. ``pace``        minutes, the fastest rise, and whether a recipe's rise is kept
3. ``boiling``     the boiling point by altitude, and tops that it forbids
4. ``programmes``  curves that a recipe may begin from, by dye and fibre
5. ``learning``    what timed heat-ups teach about a pot on its source
6. ``sums``        all of it together

Sources: [crc2016]_ for water's heat, [kell1975]_ for its density,
[iapws1997]_ and [usatmosphere1976]_ for its boiling point, [energystar2021]_
for the shares. Heat lost through the pot's wall is left out of the sum; it
hides in the share, and a timed heat-up has it in.
"""

from shadewright.core.baths.curves import Curve, CurvePoint, Leg, curve_points
from shadewright.core.baths.heating.boiling import (
    air_pressure_kpa,
    boiling_at_pressure_c,
    boiling_caution,
    boiling_point_c,
)
from shadewright.core.baths.heating.energy import (
    Load,
    evaporation_kwh,
    heat_kwh,
    water_heat_kj_per_kg,
)
from shadewright.core.baths.heating.learning import (
    HeatUp,
    LearnedShare,
    MinutesRange,
    guessed_minutes,
    is_held_back,
    learned_share,
    predicted_minutes,
)
from shadewright.core.baths.heating.pace import (
    Pace,
    RisePace,
    fastest_rise_c_per_min,
    heating_minutes,
    rise_pace,
)
from shadewright.core.baths.heating.programmes import PROGRAMMES, StartProgramme
from shadewright.core.baths.heating.sums import HeatSum, HeatWanted, heat_sum

__all__ = [
    "PROGRAMMES",
    "Curve",
    "CurvePoint",
    "HeatSum",
    "HeatUp",
    "HeatWanted",
    "LearnedShare",
    "Leg",
    "Load",
    "MinutesRange",
    "Pace",
    "RisePace",
    "StartProgramme",
    "air_pressure_kpa",
    "boiling_at_pressure_c",
    "boiling_caution",
    "boiling_point_c",
    "curve_points",
    "evaporation_kwh",
    "fastest_rise_c_per_min",
    "guessed_minutes",
    "heat_kwh",
    "heat_sum",
    "heating_minutes",
    "is_held_back",
    "learned_share",
    "predicted_minutes",
    "rise_pace",
    "water_heat_kj_per_kg",
]
