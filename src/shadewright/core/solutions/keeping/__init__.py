"""Keeping: what time does to a stock, and what it may still be used for.

A stock is made once and drawn for weeks. Meanwhile dye can settle, so that the top
grows weaker; water goes, so that all of it grows stronger; and what is left of the
dye's strength nobody knows without a test.

======  ==============================================  ==========
symbol  meaning                                         unit
======  ==============================================  ==========
S       share of the bottles that is still clear        -
p       how far S falls in one gap between two looks    -
G       gross weight: bottle, cap and stock             g
w       water that has gone                             mL
V, c    volume and strength                             mL, %
d       step of the scale                               g
======  ==============================================  ==========

1. ``watching``     from the looks at a bottle to the gap in which it settled
2. ``turnbull``     the share still clear, from many such gaps
3. ``life``         a dye's own life: the day to look by, the day to discard by
4. ``evaporation``  the water that has gone, by weighing the bottle
5. ``purpose``      which bottles a job may use
6. ``fates``        what a bottle asks for next

How old a bottle is stands in ``solutions.age``; the strength test, which is a small
dyeing, in ``baths.ladder``.

Sources: [turnbull1976]_ and [kaplan1958]_ for the share still clear; [jcgm100]_ for
spreads. How long a stock keeps is common practice until the studio's own looks say.
"""

from shadewright.core.solutions.keeping.evaporation import (
    Evaporated,
    evaporated,
    weight_lost_g,
)
from shadewright.core.solutions.keeping.fates import Fate, fate
from shadewright.core.solutions.keeping.life import DyeLife, dye_life
from shadewright.core.solutions.keeping.purpose import Purpose, Standing, refusal
from shadewright.core.solutions.keeping.turnbull import (
    LifeStep,
    Watch,
    innermost,
    still_clear,
)
from shadewright.core.solutions.keeping.watching import Seen, watched

__all__ = [
    "DyeLife",
    "Evaporated",
    "Fate",
    "LifeStep",
    "Purpose",
    "Seen",
    "Standing",
    "Watch",
    "dye_life",
    "evaporated",
    "fate",
    "innermost",
    "refusal",
    "still_clear",
    "watched",
    "weight_lost_g",
]
