"""What one reading of a meter is worth, from one spot that was read again and again."""

from shadewright.core.colour import averaged
from shadewright.errors import OutOfRangeError
from shadewright.workflows.shades.reading_lines import lab_lines

FEWEST = 5
"""Readings that a spread is taken from at least (our choice): ten are better. [-]"""
_LEAST, _MOST = 0.005, 5.0


def spread_of_spot(text: str) -> float:
    """Return the standard deviation of one reading, as a distance in Lab."""
    found = averaged(lab_lines((text,), argument="spot"))
    if found.sd is None or found.count < FEWEST:
        raise OutOfRangeError(
            name="One spot",
            given=f"{found.count}",
            allowed=f"read with at least {FEWEST} readings",
            advice="Ten are better.",
            argument="spot",
        )
    if not _LEAST <= found.sd <= _MOST:
        raise OutOfRangeError(
            name="The spread of these readings",
            given=f"ΔE\u00a0{found.sd:.2g}",
            allowed=f"from ΔE\u00a0{_LEAST:g} to {_MOST:g}",
            advice="Read one and the same spot, and look for a slip in the numbers.",
            argument="spot",
        )
    return round(found.sd, 3)
