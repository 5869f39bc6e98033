"""Numbers as a person reads them: few digits, no noise, a true minus sign."""

from decimal import ROUND_HALF_UP, Decimal
from math import isfinite

NO_BREAK = "\u00a0"
"""Stands between a number and its unit, so that no line breaks there."""

_DIGITS = {"g": 4, "°C": 3, "°F": 3}


def number_text(value: float, *, digits: int) -> str:
    """Return a number as text with so many significant digits.

    The whole part is always kept (1466.7 stays 1467 with three digits), and
    zeros at the end are dropped.

    Parameters
    ----------
    value : float
        The number. [-]
    digits : int
        Significant digits wanted; one or more. [-]

    Returns
    -------
    str
        The text, with a true minus sign and a decimal point. [-]

    Notes
    -----
    Halves are rounded away from zero, as people do; no source.

    Examples
    --------
    >>> number_text(5.2000000001, digits=3)
    '5.2'
    >>> number_text(-1466.67, digits=3)
    '−1467'
    """
    if not isfinite(value):
        return "no number"
    if abs(value) >= 1e15 or 0.0 < abs(value) < 1e-9:
        return f"{value:.{digits - 1}e}".replace("-", "−")
    exact = Decimal(repr(float(value)))
    places = max(0, digits - 1 - exact.adjusted()) if exact else 0
    rounded = exact.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)
    text = f"{abs(rounded):f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"−{text}" if rounded < 0 else text


def amount_text(value: float, unit: str) -> str:
    """Return an amount with its unit, in as many digits as make sense at a bench.

    Grams keep four significant digits, as a good scale shows; the rest three.

    Parameters
    ----------
    value : float
        The number. [in unit]
    unit : str
        The unit as it is written: g, ml, l, %, °C, kW. [-]

    Returns
    -------
    str
        Number, no-break space, unit. [-]

    Notes
    -----
    For people only: answers that are reckoned with keep all their digits.

    Examples
    --------
    >>> amount_text(1.0400000000000001, "%").replace(NO_BREAK, " ")
    '1.04 %'
    >>> amount_text(500.0, "ml").replace(NO_BREAK, " ")
    '500 ml'
    """
    return f"{number_text(value, digits=_DIGITS.get(unit, 3))}{NO_BREAK}{unit}".rstrip()


def about_text(value: float, unit: str) -> str:
    """Return an amount that nobody measures closely, in two digits.

    Parameters
    ----------
    value : float
        The number. [in unit]
    unit : str
        The unit as it is written: g, ml, l. [-]

    Returns
    -------
    str
        The word about, the rounded number and its unit. [-]

    Notes
    -----
    For water by the eye: three digits would ask for a cylinder. No source.

    Examples
    --------
    >>> about_text(318.33, "ml").replace(NO_BREAK, " ")
    'about 320 ml'
    """
    return f"about {amount_text(float(f'{value:.1e}'), unit)}"


def beside_text(mass_g: float) -> str:
    """Return grams that stand beside the millilitres of the same stock.

    Parameters
    ----------
    mass_g : float
        The mass. [g]

    Returns
    -------
    str
        Number, no-break space, unit; in three digits, as its millilitres are. [-]

    Notes
    -----
    A fourth digit beside a volume of three would be read off nothing. No source.

    Examples
    --------
    >>> beside_text(96.976).replace(NO_BREAK, " ")
    '97 g'
    """
    return f"{number_text(mass_g, digits=3)}{NO_BREAK}g"


def counted(count: int, one: str, many: str = "") -> str:
    """Return a count with its noun, in the singular where it is one.

    Parameters
    ----------
    count : int
        How many; zero or more. [1]
    one : str
        The noun of one. [-]
    many : str
        The noun of more, where it is not that of one with an s. [-]

    Returns
    -------
    str
        The count and the noun. [-]

    Examples
    --------
    >>> counted(1, "bath"), counted(3, "bath"), counted(2, "dye day", "dye days")
    ('1 bath', '3 baths', '2 dye days')
    """
    return f"{count} {one if count == 1 else many or f'{one}s'}"


def spread_text(half_width: float) -> str:
    """Return how far a value may be off, in as few digits as say something.

    Parameters
    ----------
    half_width : float
        Half of an interval; zero or more. [any]

    Returns
    -------
    str
        One digit, or two where the first of them is 1 or 2; without a unit. [-]

    Notes
    -----
    One digit alone would round 0.014 by a third. No source: a habit.

    Examples
    --------
    >>> spread_text(0.0096), spread_text(0.0145), spread_text(2.47)
    ('0.01', '0.015', '2.5')
    """
    return number_text(half_width, digits=2 if f"{half_width:.1e}"[0] in "12" else 1)
