"""How long a stock keeps, in days, where the studio's own looks say nothing.

Three to six months in the dark, and a day for a dye that settles when it cools, are
common practice; no published test was found.
"""

from typing import Final

FRESH_DAYS: Final = 28
OLD_DAYS: Final = 91
PAST_DAYS: Final = 182
MIX_FRESH_DAYS: Final = 1
