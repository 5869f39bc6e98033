"""Solutions: a powder jar becomes a stock bottle of known strength.

A *stock* is dye dissolved at a known strength, kept in a bottle and drawn by
the millilitre. Its *strength*, in %, is the grams of dye in 100 ml of finished
stock: made up *to* the mark, not added to 100 ml of water. One gram in 100 ml
is 1 %, and 10 g to the litre is 1 % as well. What the bottle really is, from
what was really weighed and filled, is its *true strength*.

Symbols: c strength, V volume, m powder, s strength of the powder (a jar whose
powder is weaker or stronger than the dye's standard has an s other than
100 %).

- *Making* a stock: ``stock_plan``, ``making_steps``, ``paste_water_ml``,
  ``powder_mass_g``, ``powder_on_scale``.
- *Filling*: ``cooled_strength_percent`` and ``hot_fill_warning`` for one made
  up hot, ``filled_mass_g`` for one made up on a scale.
- *Knowing* it: ``true_strength_percent``; how sure that is, ``made_strength``,
  ``weighed_volume``, ``cooled``, ``labelled_strength``; and after something came in,
  ``diluted_strength``, ``joined_strength``, ``strengthened_strength``.
- *Rescue*: ``make_up_to_ml``, ``rescue_weighed``, ``rescue_filled``,
  ``rescue_dried``; ``powder_to_strengthen_g``, ``stock_to_strengthen_ml``.
- *Mixing*: ``dilution``, ``blend``, ``merged``, and the older and wider rule
  behind them, ``mixture`` and ``first_share``.
- *Rows*: ``geometric_series_percent``, ``serial_series_percent``,
  ``strength_of_ratio_percent``, ``ratio_ml_per_g``.
- *Keeping*: what is left in a bottle from its ledger, ``bottle_state`` and
  ``running_states`` over the ``standing`` lines; how old it is, ``stock_age``;
  its short code, ``unused_code`` and ``typed_code``.

Sources: the definition of mass/volume percent; alligation and ratio strength as
taught to pharmacists [ansel2012]_; the density of water [kell1975]_; spreads by the
rules of [jcgm100]_. Paste, hot water and cooling are common practice.
"""

from shadewright.core.solutions.age import AgeClass, StockAge, stock_age
from shadewright.core.solutions.alligation import Portion, first_share, mixture
from shadewright.core.solutions.codes import (
    CODE_DIGITS,
    CODE_LETTERS,
    typed_code,
    unused_code,
)
from shadewright.core.solutions.dilution import Blend, Dilution, blend, dilution, merged
from shadewright.core.solutions.filling import (
    cooled_strength_percent,
    filled_mass_g,
    hot_fill_warning,
)
from shadewright.core.solutions.ledger import (
    BottleAct,
    BottleState,
    LedgerLine,
    bottle_state,
    running_states,
    standing,
)
from shadewright.core.solutions.making import StockPlan, paste_water_ml, stock_plan
from shadewright.core.solutions.rescue import (
    DriedRescue,
    FilledRescue,
    WeighedRescue,
    make_up_to_ml,
    rescue_dried,
    rescue_filled,
    rescue_weighed,
)
from shadewright.core.solutions.series import (
    geometric_series_percent,
    ratio_ml_per_g,
    serial_series_percent,
    strength_of_ratio_percent,
)
from shadewright.core.solutions.shares import (
    diluted_strength,
    joined_strength,
    strengthened_strength,
)
from shadewright.core.solutions.steps import MakingStep, making_steps
from shadewright.core.solutions.strength import powder_mass_g, true_strength_percent
from shadewright.core.solutions.strengthening import (
    powder_to_strengthen_g,
    stock_to_strengthen_ml,
)
from shadewright.core.solutions.sureness import (
    GUESS,
    cooled,
    labelled_strength,
    made_strength,
    of_stock,
    weighed_volume,
)
from shadewright.core.solutions.weighing import OnScale, powder_on_scale

__all__ = [
    "CODE_DIGITS",
    "CODE_LETTERS",
    "GUESS",
    "AgeClass",
    "Blend",
    "BottleAct",
    "BottleState",
    "Dilution",
    "DriedRescue",
    "FilledRescue",
    "LedgerLine",
    "MakingStep",
    "OnScale",
    "Portion",
    "StockAge",
    "StockPlan",
    "WeighedRescue",
    "blend",
    "bottle_state",
    "cooled",
    "cooled_strength_percent",
    "diluted_strength",
    "dilution",
    "filled_mass_g",
    "first_share",
    "geometric_series_percent",
    "hot_fill_warning",
    "joined_strength",
    "labelled_strength",
    "made_strength",
    "make_up_to_ml",
    "making_steps",
    "merged",
    "mixture",
    "of_stock",
    "paste_water_ml",
    "powder_mass_g",
    "powder_on_scale",
    "powder_to_strengthen_g",
    "ratio_ml_per_g",
    "rescue_dried",
    "rescue_filled",
    "rescue_weighed",
    "running_states",
    "serial_series_percent",
    "standing",
    "stock_age",
    "stock_plan",
    "stock_to_strengthen_ml",
    "strength_of_ratio_percent",
    "strengthened_strength",
    "true_strength_percent",
    "typed_code",
    "unused_code",
    "weighed_volume",
]
