"""How many of some promises hold by chance, where each holds so often.

Of 40 intervals that each hold nine times in ten, 36 will hold on average, and seldom
36 itself. If promises are kept independently, the count K follows the binomial law,

    P(K = k) = n! / (k! (n − k)!) p^k (1 − p)^(n−k)

so that a count says something only where it lies outside what chance would bring.
"""

from math import exp, lgamma, log

from shadewright.core.quantities import require_between
from shadewright.core.uncertainty.coverage import USUAL


def usual_counts(
    *, promises: int, chance: float, coverage: float = USUAL
) -> tuple[int, int]:
    """Return between which counts the promises that hold will lie, so often.

    Parameters
    ----------
    promises : int
        How many were made, n; one or more. [-]
    chance : float
        How often each holds, p; from 0.001 to 0.999. [-]
    coverage : float
        How often the count lies between the two, at the least. [-]

    Returns
    -------
    tuple of (int, int)
        Fewest and most. [-]

    Raises
    ------
    OutOfRangeError
        If there is no promise, or hardly a chance, or hardly a doubt.

    Notes
    -----
    Not more than half of the rest lies beyond either end. Promises that share what
    went wrong, as swatches of one day do, scatter more than this. Source: the
    definition of the binomial law; no published example used.

    Examples
    --------
    >>> usual_counts(promises=40, chance=0.9)
    (32, 39)
    """
    require_between(promises, least=1, most=1e5, unit="", name="Promises")
    require_between(chance, least=0.001, most=0.999, unit="", name="The chance")
    tail = (1.0 - coverage) / 2.0
    shares = [_share(k, promises, chance) for k in range(promises + 1)]
    fewest = _beyond(shares, tail)
    most = promises - _beyond(shares[::-1], tail)
    return fewest, most


def _share(k: int, n: int, p: float) -> float:
    """Return P(K = k), by logarithms, for n! soon passes what a number can hold."""
    ways = lgamma(n + 1) - lgamma(k + 1) - lgamma(n - k + 1)
    return exp(ways + k * log(p) + (n - k) * log(1.0 - p))


def _beyond(shares: list[float], tail: float) -> int:
    """Return how many shares from the beginning stay within a tail."""
    held = 0.0
    for place, share in enumerate(shares):
        held += share
        if held > tail:
            return place
    return len(shares) - 1
