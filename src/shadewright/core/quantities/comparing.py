"""More or less: amounts compared as a person with a pencil would.

A sum of decimals ends in noise: 25.19 g of a 70.3 % powder at 0.11 % come to
16098.699999999999 ml, and 16098.7 ml in the vessel are not more than that.
"""

from math import isclose

_NOISE = 1e-9
"""Relative difference that is noise of the reckoning, never of the bench. [-]"""


def is_more(value: float, *, than: float) -> bool:
    """Return whether an amount is truly more than another.

    Parameters
    ----------
    value : float
        The one amount. [any]
    than : float
        The other. [as value]

    Returns
    -------
    bool
        False also where the two differ by noise in the last digits only. [-]

    Notes
    -----
    A billionth is called noise: no tool of a studio shows it. No source.

    Examples
    --------
    >>> 0.1 + 0.2 > 0.3, is_more(0.1 + 0.2, than=0.3)
    (True, False)
    """
    return value > than and not isclose(value, than, rel_tol=_NOISE)
