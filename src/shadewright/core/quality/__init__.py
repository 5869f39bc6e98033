"""Quality: whether a lot is like the last, and if not, what was different.

A second lot never matches to the last digit. This chapter says how far lots differ
when nothing is wrong, whether one is off, and which of all that changed is the
likeliest cause; and it says so when that cannot be told.

1. ``causes``  what changed since the lots before

Equations are numbered within each part.
"""

from shadewright.core.quality.causes import (
    Cause,
    Drift,
    Factor,
    LotCauses,
    PastLot,
    lot_causes,
    repeat_test,
)

__all__ = [
    "Cause",
    "Drift",
    "Factor",
    "LotCauses",
    "PastLot",
    "lot_causes",
    "repeat_test",
]
