"""Quality: whether a lot is like the last, and if not, what was different.

A second lot never matches to the last digit. This chapter says how far lots differ
when nothing is wrong, whether one is off, and which of all that changed is the
likeliest cause; and it says so when that cannot be told.

======  ==============================================  ====
symbol  meaning                                         unit
======  ==============================================  ====
m, n    mean of a lot's spots, how many there are       1, -
s, u    standard deviation of a spot; of the mean       1
ΔE      distance of two colours                         1
SSR     grade of a stain, 5 for none                    1
======  ==============================================  ====

1. ``dry_check``  a lot beside its standard, and what becomes of it
2. ``sharing``    lots that are alike to each other
3. ``allocation`` a whole order out of one lot, or else of one group
4. ``staining``   how much a white cloth took up
5. ``causes``     what changed since the lots before
6. ``repeating``  how well a studio repeats itself

``causes`` counts its own equations. Sources: [isoa03]_ and [isoa04]_ for stains,
[bron1973]_ for the groups; the rest is common practice, or named in its file.
"""

from shadewright.core.quality.allocation import Allocation, allocated
from shadewright.core.quality.causes import (
    Cause,
    Drift,
    Factor,
    LotCauses,
    PastLot,
    lot_causes,
    repeat_test,
)
from shadewright.core.quality.dry_check import (
    Band,
    Decision,
    DryCheck,
    Evenness,
    Formula,
    Tolerances,
    could_be,
    dry_check,
)
from shadewright.core.quality.repeating import Repeatability, repeatability
from shadewright.core.quality.sharing import SharingGroup, sharing_groups
from shadewright.core.quality.staining import STAINING_GREYS, Staining, staining

__all__ = [
    "STAINING_GREYS",
    "Allocation",
    "Band",
    "Cause",
    "Decision",
    "Drift",
    "DryCheck",
    "Evenness",
    "Factor",
    "Formula",
    "LotCauses",
    "PastLot",
    "Repeatability",
    "SharingGroup",
    "Staining",
    "Tolerances",
    "allocated",
    "could_be",
    "dry_check",
    "lot_causes",
    "repeat_test",
    "repeatability",
    "sharing_groups",
    "staining",
]
