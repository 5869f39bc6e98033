"""Quantities: numbers with units, as a dyer writes and reads them.

A weight on a card may read ``5.2 g``, ``5,2g`` or ``0.18 oz``; inside the
handbook it is a plain number whose unit stands at the end of its name, as in
``powder_g``. This chapter is the door between the two.

- *Reading.* ``mass_g``, ``volume_ml``, ``percent``, ``temperature_c``,
  ``power_kw``, ``liquor_ratio_ml_per_g``, ``measuring_tool`` and ``balance``
  take a text and answer in grams, millilitres, %, °C or kW, or refuse it in one
  sentence.
- *Writing.* ``number_text`` and ``amount_text`` give a person few digits and no
  noise; ``rounded_to_step`` gives what a scale can show.
- *Turning over.* ``temperature_f``, ``temperature_from_fahrenheit_c`` and
  ``water_density_g_per_ml``.
- *Comparing.* ``is_more``, blind to the noise in the last digits.
- *Guarding.* ``require_above_zero``, ``require_between`` and their kin say what
  a number may be, in the same words in every chapter.

Sources: NIST SP 811 for units [thompson2008]_, the UK regulations for imperial
measures [ukunits1995]_, Kell for water [kell1975]_.
"""

from shadewright.core.quantities.amounts import mass_g, percent, volume_ml
from shadewright.core.quantities.comparing import is_more
from shadewright.core.quantities.guards import (
    MOST_MASS_G,
    MOST_POWDER_STRENGTH_PERCENT,
    MOST_STRENGTH_PERCENT,
    MOST_VOLUME_ML,
    require_mass,
    require_powder_strength,
    require_strength,
    require_volume,
)
from shadewright.core.quantities.ranges import require_above_zero, require_between
from shadewright.core.quantities.ratios import liquor_ratio_ml_per_g
from shadewright.core.quantities.temperature import (
    temperature_f,
    temperature_from_fahrenheit_c,
    water_density_g_per_ml,
)
from shadewright.core.quantities.tools import (
    Balance,
    MeasuringTool,
    balance,
    measuring_tool,
    rounded_to_step,
)
from shadewright.core.quantities.warmth import power_kw, temperature_c
from shadewright.core.quantities.writing import (
    NO_BREAK,
    amount_text,
    counted,
    number_text,
)

__all__ = [
    "MOST_MASS_G",
    "MOST_POWDER_STRENGTH_PERCENT",
    "MOST_STRENGTH_PERCENT",
    "MOST_VOLUME_ML",
    "NO_BREAK",
    "Balance",
    "MeasuringTool",
    "amount_text",
    "balance",
    "counted",
    "is_more",
    "liquor_ratio_ml_per_g",
    "mass_g",
    "measuring_tool",
    "number_text",
    "percent",
    "power_kw",
    "require_above_zero",
    "require_between",
    "require_mass",
    "require_powder_strength",
    "require_strength",
    "require_volume",
    "rounded_to_step",
    "temperature_c",
    "temperature_f",
    "temperature_from_fahrenheit_c",
    "volume_ml",
    "water_density_g_per_ml",
]
