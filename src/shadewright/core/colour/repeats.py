"""Several readings of one colour: their mean, their scatter, and the odd one."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist, sqrt

from shadewright.core.colour.cielab import Lab
from shadewright.errors import MissingError

ODD_FACTOR, ODD_LEAST = 4.0, 2.0
"""So many times the others' scatter, and so far in CIELAB, is odd (our choice). [1]"""


@dataclass(frozen=True, kw_only=True)
class Averaged:
    """The mean of ``count`` readings; ``sd`` of one of them, None where it is alone."""

    mean: Lab
    sd: float | None
    count: int


def averaged(readings: Sequence[Lab]) -> Averaged:
    """Return the mean of readings, and the standard deviation of one.

    m = Σ Lab_i / n,  s² = Σ |Lab_i − m|² / (n − 1)                (14)

    Parameters
    ----------
    readings : sequence of Lab
        The same yarn, read anew each time. [1]

    Returns
    -------
    Averaged
        Mean; s as a CIELAB distance, of which √(1/3) falls on each number. [1]

    Raises
    ------
    MissingError
        If there is none.

    Notes
    -----
    The mean is taken in CIELAB, in which the scatter of a meter is about the same
    along each number; that of s / √n is the mean's own. Readings within 2 of each
    other have the same mean in XYZ within 0.03.

    References
    ----------
    .. [astme1345] mean of colour-scale values and its standard deviation

    Examples
    --------
    >>> found = averaged([Lab(50.0, 10.0, 20.0), Lab(50.0, 10.6, 20.8)])
    >>> found.mean, round(found.sd, 3)
    (Lab(L=50.0, a=10.3, b=20.4), 0.707)
    """
    count = len(readings)
    if not count:
        raise MissingError(name="A reading", argument="readings")
    mean = Lab(*(sum(parts) / count for parts in zip(*readings, strict=True)))
    if count == 1:
        return Averaged(mean=mean, sd=None, count=1)
    squares = sum(dist(reading, mean) ** 2 for reading in readings)
    return Averaged(mean=mean, sd=sqrt(squares / (count - 1)), count=count)


@dataclass(frozen=True, kw_only=True)
class OddReading:
    """A reading, by its place from 1, and its CIELAB distance from the others' mean."""

    place: int
    distance: float


def odd_reading(readings: Sequence[Lab]) -> OddReading | None:
    """Return the reading that lies far from the others, if one does.

    Parameters
    ----------
    readings : sequence of Lab
        The same yarn, read anew each time. [1]

    Returns
    -------
    OddReading or None
        The one farthest from the mean of the others, where that is more than four times
        their standard deviation and more than 2; None of fewer than three. [1]

    Notes
    -----
    Another spot, a lifted meter or a slip of the finger; both limits are our choice.
    Readings that are left in are averaged all the same.

    Examples
    --------
    >>> odd = odd_reading([Lab(50.0, 1, 2), Lab(50.2, 1, 2), Lab(64.0, 1, 2)])
    >>> odd.place, round(odd.distance, 1)
    (3, 13.9)
    """
    if len(readings) < 3:
        return None
    found = []
    for place, one in enumerate(readings):
        others = averaged([*readings[:place], *readings[place + 1 :]])
        found.append((dist(one, others.mean), place + 1, others.sd or 0.0))
    distance, place, scatter = max(found)
    if distance <= max(ODD_FACTOR * scatter, ODD_LEAST):
        return None
    return OddReading(place=place, distance=distance)
