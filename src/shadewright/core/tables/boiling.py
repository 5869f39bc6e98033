"""The air's pressure by altitude, and the temperature at which water boils in it.

The standard atmosphere [usatmosphere1976]_ (that of ISO 2533 and ICAO up to
32 km; from memory) falls by 6.5 K a kilometre from 15 °C and 101.325 kPa. The
coefficients of water's saturation line are those of [iapws1997]_, table 34,
recalled and compared with two programs that print them.
"""

from typing import Final

SEA_LEVEL_KPA: Final = 101.325
SEA_LEVEL_K: Final = 288.15
LAPSE_K_PER_M: Final = 0.0065
PRESSURE_POWER: Final = 9.80665 * 0.0289644 / (8.31432 * 0.0065)  # g M / (R L)

IF97_N: Final = (
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3,
)
KELVIN: Final = 273.15
