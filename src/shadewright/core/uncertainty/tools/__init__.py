"""Measuring tools: what a reading of a scale, a cylinder, a syringe is worth.

A tool is taken at its standard's word until it was checked. A scale is off by the
rounding of its two readings, empty and full, and by an error of its own; ware by
its tolerance, as often as it is filled. A check weight, or the water of a mark
weighed, narrows both for that very tool. A spoon measures no powder.

======  ==============================================  ==========
symbol  meaning                                         unit
======  ==============================================  ==========
d       step that a scale shows                         g
a       half-width of an error                          g or mL
V       volume read                                     mL
n       how often a tool is filled                      -
c       correction that a check finds                   g or mL
======  ==============================================  ==========

1. ``syringes``    their rule, by how far they are filled
2. ``ware``        cylinders, flasks, pipettes, beakers, jugs, marks
3. ``scales``      scales, checked and unchecked
4. ``spoons``      why powder is not measured by the spoon
5. ``checks``      what a check weight or weighed water says of a tool
6. ``narrowing``   the tool as its checks found it
7. ``worth``       how far a tool is off along its scale

Sources: [iso4788]_ [astme1272]_ [iso1042]_ [iso835]_ [iso7886]_ [iso3819]_
[astme960]_ for the tolerances, [jcgm100]_ for their shapes.
"""

from shadewright.core.uncertainty.tools.checks import (
    Finding,
    water_check,
    water_volume_ml,
    weight_check,
)
from shadewright.core.uncertainty.tools.narrowing import checked_balance, checked_ware
from shadewright.core.uncertainty.tools.scales import mass_read, unchecked_balance
from shadewright.core.uncertainty.tools.spoons import require_scale_for_powder
from shadewright.core.uncertainty.tools.ware import (
    Basis,
    basis,
    fills,
    half_width_ml,
    volume_read,
    warmth_read,
)
from shadewright.core.uncertainty.tools.worth import (
    Worth,
    good_from,
    weight_to_check_with,
    worth_along,
    worth_at,
)

__all__ = [
    "Basis",
    "Finding",
    "Worth",
    "basis",
    "checked_balance",
    "checked_ware",
    "fills",
    "good_from",
    "half_width_ml",
    "mass_read",
    "require_scale_for_powder",
    "unchecked_balance",
    "volume_read",
    "warmth_read",
    "water_check",
    "water_volume_ml",
    "weight_check",
    "weight_to_check_with",
    "worth_along",
    "worth_at",
]
