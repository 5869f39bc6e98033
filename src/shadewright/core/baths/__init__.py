"""Baths: from a depth of shade to what is measured at the pot.

A recipe speaks in per cent on weight of fibre, so that it holds for one skein
and for twenty. A pot wants millilitres. This chapter goes from one to the
other, and back from what was really measured to the depth that it gave.

======  ==============================================  ==========
symbol  meaning                                         unit
======  ==============================================  ==========
W       conditioned weight of the fibre                 g
d       depth of shade, on weight of fibre              %
m       mass of dye, or of another chemical             g
c       strength of a stock or a liquid                 g/100 mL
V       volume of stock or liquid                       mL
L       liquor ratio                                    L/kg
B       volume of the whole bath, its liquor            mL
R       regain: water on the bone-dry fibre             %
======  ==============================================  ==========

1. ``depth``        dye on weight of fibre; recipes in grams to the pound or ounce
2. ``measures``     a volume of stock, the dye in it, the depth that it gives
3. ``doses``        a dye, its depth and its stock; doses too small to measure
4. ``liquor``       the bath's volume, and the fresh water left to add
5. ``fibre``        the weight that per cents are taken on; damp yarn, blends
6. ``auxiliaries``  amounts on weight of fibre or to the litre; liquids by strength
7. ``acids``        acid to weigh or pour, with its cautions
8. ``salts``        Glauber's salt in both forms, and the dyes it must not meet
9. ``classes``      dyes of different classes in one bath
10. ``sums``        all of it together
11. ``choosing``    the bottles that a dose is measured from
12. ``curves``      temperature programmes: legs, corners, minutes
13. ``programme``   the heating of a bath as its round tells it
14. ``rounds``      every step at the pot, in order
15. ``sureness``    how sure a depth is, from scale and syringe to the yarn
16. ``measuring_out``  a dose in ml and g, with the spread of its depth
17. ``ladder``      how strong an old stock still is, by dyeing it beside fresh
18. ``new_stocks``  a weak stock thinned from a stronger one, or made
19. ``small_doses``  the stocks that a set of swatches is drawn from
20. ``in_turn``     several baths that draw on the same bottles
21. ``day_stocks``  the stock to make for the doses of a day
22. ``stepping``    from a swatch to a large bath
23. ``cups``        the share of dye left, by a spoonful beside the first
24. ``exhaustion``  what to do about dye that is left
25. ``water_use``   water from the soak to the last rinse

``heating``, a part of its own, reckons what the heat does.

Sources: [broadbent2001]_ for classes of dye; [ciaaw2021]_ for molar masses;
[astmd1909]_ and [eu1007]_ for regain. Most of the rest is arithmetic by
definition, and what is only common practice says so.
"""

from shadewright.core.baths.acids import AcidDose, acid_cautions, acid_dose
from shadewright.core.baths.auxiliaries import (
    Amount,
    AmountUnit,
    auxiliary_mass_g,
    liquid_volume_ml,
)
from shadewright.core.baths.choosing import (
    BottleShare,
    Candidate,
    ChosenBottles,
    chosen_bottles,
)
from shadewright.core.baths.classes import class_caution
from shadewright.core.baths.curves import (
    Curve,
    CurvePoint,
    Leg,
    curve_points,
    minute_at,
    minutes_to_top,
)
from shadewright.core.baths.depth import (
    depth_caution,
    depth_from_g_per_lb_percent,
    depth_from_g_per_oz_percent,
    depth_percent,
    dye_mass_g,
    total_depth_percent,
)
from shadewright.core.baths.doses import (
    Dose,
    dose_advice,
    dry_dose_advice,
    measurable_strength_percent,
)
from shadewright.core.baths.fibre import (
    bone_dry_mass_g,
    conditioned_mass_g,
    depth_on_dyeable_percent,
    dyeable_mass_g,
    regain_from_content_percent,
)
from shadewright.core.baths.liquor import (
    WaterBalance,
    excess_caution,
    liquor_ml,
    water_balance,
    water_in_wet_yarn_ml,
)
from shadewright.core.baths.measures import (
    depth_given_percent,
    dose_slack_ml,
    stock_volume_ml,
    weighed_mass_g,
    weighed_volume_ml,
)
from shadewright.core.baths.measuring_out import (
    MeasuredDose,
    MeasuredWith,
    measured_dose,
)
from shadewright.core.baths.programme import Programme, heat_text, on_the_way_min
from shadewright.core.baths.rounds import (
    DoseWanted,
    HelperWanted,
    Moment,
    RoundStep,
    RoundWanted,
    StepKind,
    bath_round,
    touch_minutes,
)
from shadewright.core.baths.salts import (
    SaltDose,
    anhydrous_mass_g,
    decahydrate_mass_g,
    salt_caution,
    salt_dose,
)
from shadewright.core.baths.sums import (
    AcidWanted,
    BathSum,
    BathWanted,
    SaltWanted,
    bath_sum,
)
from shadewright.core.baths.sureness import (
    Drawn,
    SureDepth,
    depth_value,
    drawn_dye,
    either_side,
    stock_density,
    sure_depth,
)

__all__ = [
    "AcidDose",
    "AcidWanted",
    "Amount",
    "AmountUnit",
    "BathSum",
    "BathWanted",
    "BottleShare",
    "Candidate",
    "ChosenBottles",
    "Curve",
    "CurvePoint",
    "Dose",
    "DoseWanted",
    "Drawn",
    "HelperWanted",
    "Leg",
    "MeasuredDose",
    "MeasuredWith",
    "Moment",
    "Programme",
    "RoundStep",
    "RoundWanted",
    "SaltDose",
    "SaltWanted",
    "StepKind",
    "SureDepth",
    "WaterBalance",
    "acid_cautions",
    "acid_dose",
    "anhydrous_mass_g",
    "auxiliary_mass_g",
    "bath_round",
    "bath_sum",
    "bone_dry_mass_g",
    "chosen_bottles",
    "class_caution",
    "conditioned_mass_g",
    "curve_points",
    "decahydrate_mass_g",
    "depth_caution",
    "depth_from_g_per_lb_percent",
    "depth_from_g_per_oz_percent",
    "depth_given_percent",
    "depth_on_dyeable_percent",
    "depth_percent",
    "depth_value",
    "dose_advice",
    "dose_slack_ml",
    "drawn_dye",
    "dry_dose_advice",
    "dye_mass_g",
    "dyeable_mass_g",
    "either_side",
    "excess_caution",
    "heat_text",
    "liquid_volume_ml",
    "liquor_ml",
    "measurable_strength_percent",
    "measured_dose",
    "minute_at",
    "minutes_to_top",
    "on_the_way_min",
    "regain_from_content_percent",
    "salt_caution",
    "salt_dose",
    "stock_density",
    "stock_volume_ml",
    "sure_depth",
    "total_depth_percent",
    "touch_minutes",
    "water_balance",
    "water_in_wet_yarn_ml",
    "weighed_mass_g",
    "weighed_volume_ml",
]
