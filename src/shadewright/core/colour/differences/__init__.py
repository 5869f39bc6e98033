"""Differences: how far two colours are apart, and which way.

1. ``ciede2000``        the difference that this project reckons with
2. ``ciede2000_arrays`` the same for thousands of pairs at once
3. ``cmc``              the difference of the textile trade, 2:1
4. ``grey_scale``       the grade of a change of colour, 5 to 1
5. ``words``            lighter, redder, duller
"""

from shadewright.core.colour.differences.ciede2000 import (
    DE2000Terms,
    ciede2000,
    ciede2000_terms,
)
from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.colour.differences.cmc import cmc
from shadewright.core.colour.differences.grey_scale import GreyScale, grey_scale
from shadewright.core.colour.differences.words import difference_words

__all__ = [
    "DE2000Terms",
    "GreyScale",
    "ciede2000",
    "ciede2000_arrays",
    "ciede2000_terms",
    "cmc",
    "difference_words",
    "grey_scale",
]
