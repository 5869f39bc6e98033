"""Minutes as bits: when something is free, and where a span of time fits.

A whole number stands for a day: bit t is set where minute t is free. To shift is to
move in time, to join is ``|``, to require both is ``&``; whether a span fits anywhere
takes a handful of such steps, however long the day is.
"""

Minutes = int
"""A set of minutes, bit t for minute t. [-]"""


def span(start: int, *, end: int) -> Minutes:
    """Return the minutes from a start up to an end, which is not among them.

    Parameters
    ----------
    start, end : int
        Minutes of the day; none are meant where the end does not follow. [min]

    Returns
    -------
    int
        Bits. [-]

    Examples
    --------
    >>> bin(span(1, end=4))
    '0b1110'
    """
    return (1 << end) - (1 << start) if end > start >= 0 else 0


def starts(free: Minutes, length: int) -> Minutes:
    """Return the minutes at which a span of a length may start.

    s_1 = free;  s_2n = s_n & (s_n >> n)    (1)

    Parameters
    ----------
    free : int
        When it is free. [-]
    length : int
        How long it is wanted without a gap; nought fits wherever it is free. [min]

    Returns
    -------
    int
        Bits. [-]

    Examples
    --------
    >>> bin(starts(0b0111_0110, 3))
    '0b10000'
    """
    found, done = free, 1
    while 2 * done <= length:
        found &= found >> done
        done *= 2
    return found & (found >> (length - done)) if length > done else found


def first(of: Minutes, *, least: int = 0) -> int | None:
    """Return the first minute of a set, from some minute on; None if there is none.

    Parameters
    ----------
    of : int
        Minutes. [-]
    least : int
        Where to begin; 0 or more. [min]

    Returns
    -------
    int or None
        The minute. [min]

    Examples
    --------
    >>> first(0b1010_0010, least=2)
    5
    """
    rest = of >> least
    return (rest & -rest).bit_length() - 1 + least if rest else None


def last(of: Minutes, *, most: int) -> int | None:
    """Return the last minute of a set up to some minute; None if there is none.

    Parameters
    ----------
    of : int
        Minutes. [-]
    most : int
        Where to end, this one included; may be below 0, where nothing is. [min]

    Returns
    -------
    int or None
        The minute. [min]

    Examples
    --------
    >>> last(0b1010_0010, most=6)
    5
    """
    below = of & span(0, end=most + 1)
    return below.bit_length() - 1 if below else None
