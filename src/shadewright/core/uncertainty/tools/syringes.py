"""Syringes: a share of what is pressed out, and of their size when little is."""

from shadewright.core.quantities import require_between, require_volume
from shadewright.core.tables.glassware import SYRINGES


def syringe_half_width_ml(*, size_ml: float, volume_ml: float) -> float:
    """Return how far what a syringe presses out in one go may be off.

    a = p V (V ≥ size/2),  a = q size + r V (V < size/2)

    Parameters
    ----------
    size_ml : float
        Nominal size. [mL]
    volume_ml : float
        What is pressed out, V; zero to the size. [mL]

    Returns
    -------
    float
        Half-width, a. [mL]

    Raises
    ------
    OutOfRangeError
        If the size is not above zero, or more is asked than it holds.

    Notes
    -----
    Holds for a new syringe; its print rubs off with use. Insulin syringes follow
    another standard. Rows of 1 and 10 ml read in a reprint, others from memory.

    References
    ----------
    .. [iso7886] table 1

    Examples
    --------
    >>> round(syringe_half_width_ml(size_ml=10.0, volume_ml=4.0), 3)
    0.19
    """
    require_volume(size_ml, name="Size", argument="size_ml")
    require_between(
        volume_ml,
        least=0.0,
        most=size_ml,
        unit="ml",
        name="One pour of this syringe",
        argument="volume_ml",
    )
    row = next(row for row in SYRINGES if size_ml < row.below_ml)
    if volume_ml >= size_ml / 2.0:
        return row.of_expelled_high * volume_ml
    return row.of_size_low * size_ml + row.of_expelled_low * volume_ml
