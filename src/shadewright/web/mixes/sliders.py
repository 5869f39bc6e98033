"""A slider whose equal ways are equal factors of depth, from a trace up."""

from math import exp, log

from shadewright.core.recipes.rounding import as_written

STEPS = 300
"""Places of a slider above nothing; one of them is 2.6 % more dye. [-]"""
LEAST_PERCENT, MOST_PERCENT = 0.004, 10.0


def place_of(depth_percent: float) -> int:
    """Return where a slider stands for a depth; 0 for none."""
    if depth_percent < LEAST_PERCENT:
        return 0
    share = log(depth_percent / LEAST_PERCENT) / log(MOST_PERCENT / LEAST_PERCENT)
    return min(STEPS, 1 + round(share * (STEPS - 1)))


def depth_at(place: int) -> float:
    """Return the depth at a place, to three figures, as the page’s script has it."""
    if place <= 0:
        return 0.0
    way = log(MOST_PERCENT / LEAST_PERCENT) * (place - 1) / (STEPS - 1)
    return as_written(LEAST_PERCENT * exp(way))
