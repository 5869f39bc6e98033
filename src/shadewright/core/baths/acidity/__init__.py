"""Acidity: how sour a bath is, and what to do about it.

A bath is as sour as its acid, its water and its salts make it. All three carry
charge, and all of it together is none: that one sentence fixes the pH.

=====  ==================================================  =============
symbol meaning                                             unit
=====  ==================================================  =============
pH     −log10 of the activity of H+                        1
pKa    pH at which half of a step's protons are given up   1
z      charge of an ion                                    1
c      concentration                                       mol/L
I      ionic strength                                      mol/L
γ      activity coefficient of an ion                      1
A      factor of the Debye-Hückel limiting law             (L/mol)^0.5
n      protons that a molecule gives up                    1
=====  ==================================================  =============

1. ``warmth``       what temperature does to an acid, to water and to ions
2. ``ions``         how active an ion is; how an acid shares out its protons
3. ``balance``      the one pH at which a solution carries no charge
4. ``water``        a bath of water and acid, and what that leaves out
5. ``equivalents``  one acid for another, on a named basis
6. ``usual``        the acid that a recipe starts from
7. ``late``         a measured pH that is not where the dyes want it
8. ``spent``        a spent bath made neutral

It is **water only, no fibre: the bath reads higher**. Wool takes up acid, and
how much is not reckoned here. A measured pH is always the better number.

Sources: [goldberg2002]_ for acids, [marshall1981]_ for water, [davies1962]_
for activities, [broadbent2001]_ and [lewis1992]_ for what dyes want.
"""

from shadewright.core.baths.acidity.balance import (
    Constants,
    Settled,
    Solution,
    constants_at,
    settled,
)
from shadewright.core.baths.acidity.equivalents import (
    Said,
    commonly_said,
    equivalent_g,
    protons_given,
)
from shadewright.core.baths.acidity.ions import log_activity, shares
from shadewright.core.baths.acidity.late import late_acid, wanted_ph_text
from shadewright.core.baths.acidity.spent import SPENT_STEPS, bicarbonate_g
from shadewright.core.baths.acidity.usual import UsualAcid, usual_acid
from shadewright.core.baths.acidity.warmth import debye_huckel_factor, pka_at, pkw_at
from shadewright.core.baths.acidity.water import (
    AcidInBath,
    Acidity,
    families_of,
    ph_text,
    require_alkalinity,
    water_ph,
)

__all__ = [
    "SPENT_STEPS",
    "AcidInBath",
    "Acidity",
    "Constants",
    "Said",
    "Settled",
    "Solution",
    "UsualAcid",
    "bicarbonate_g",
    "commonly_said",
    "constants_at",
    "debye_huckel_factor",
    "equivalent_g",
    "families_of",
    "late_acid",
    "log_activity",
    "ph_text",
    "pka_at",
    "pkw_at",
    "protons_given",
    "require_alkalinity",
    "settled",
    "shares",
    "usual_acid",
    "wanted_ph_text",
    "water_ph",
]
