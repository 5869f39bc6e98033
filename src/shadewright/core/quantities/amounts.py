"""Amounts as a dyer writes them, turned into grams, millilitres and %.

Each function reads one kind. ``name`` is the quantity in the dyer's words, for
the sentence when it cannot be read; ``argument`` is the field or option at
fault; ``default_unit`` is the unit that is printed beside a field, where a
bare number is enough; ``guard`` is a guard of this chapter, where the amount
may be less than anything from nothing up.
"""

from shadewright.core.quantities import units
from shadewright.core.quantities.guards import MOST_MASS_G, MOST_VOLUME_ML
from shadewright.core.quantities.ranges import Guard, require_between
from shadewright.core.quantities.reading import Asked, read_amount, with_unit

_MASS = "a weight such as 5 g, 0.5 kg or 1.5 oz"
_BY_THE_SPOON = (
    "a weight such as 5 g, never by the spoon or the cup (powders lie more or "
    "less dense: weigh it)"
)
_VOLUME = "a volume such as 500 ml, 0.5 l, 16 fl oz or 16 uk fl oz"
_PERCENT = "a percentage such as 1 % or 0.5 %"


def mass_g(
    text: str,
    *,
    name: str,
    argument: str = "",
    default_unit: str | None = None,
    guard: Guard | None = None,
) -> float:
    """Return a mass in grams from what was written.

    Parameters
    ----------
    text : str
        A weight: ``5.2 g``, ``1,5oz``, ``2 lb``, ``0.5 kg``, ``80 grains``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        Unit of a bare number; without it a bare number is refused. [-]
    guard : Guard or None
        What the amount may be, as ``require_mass``; without it the range below. [-]

    Returns
    -------
    float
        The mass; zero or more. [g]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If it is no weight. Spoons and cups are refused with the reason.
    OutOfRangeError
        If it is below zero or above a tonne, or not as the guard will have it.

    Notes
    -----
    Factors as in ``core.tables.units``. A spoon of powder is no measure: its
    bulk density differs between dyes and with how it was filled (common
    practice: weigh).

    Examples
    --------
    >>> mass_g("1,5oz", name="Powder")
    42.5242846875
    """
    asked = Asked(name=name, example=_MASS, argument=argument)
    if with_unit(text, asked=asked, default_unit=default_unit).unit in units.SPOON_ML:
        raise asked.refusal(text, allowed=_BY_THE_SPOON)
    value = read_amount(
        text, asked=asked, worth=units.MASS_G, default_unit=default_unit
    )
    if guard is not None:
        return guard(value, name=name, argument=argument)
    return require_between(
        value, least=0.0, most=MOST_MASS_G, unit="g", name=name, argument=argument
    )


def volume_ml(
    text: str,
    *,
    name: str,
    argument: str = "",
    default_unit: str | None = None,
    guard: Guard | None = None,
) -> float:
    """Return a volume in millilitres from what was written.

    Parameters
    ----------
    text : str
        A volume: ``500ml``, ``0.5 l``, ``16 fl oz`` (US), ``1 uk pt``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        Unit of a bare number; without it a bare number is refused. [-]
    guard : Guard or None
        What the amount may be, as ``require_volume``; without it the range below. [-]

    Returns
    -------
    float
        The volume; zero or more. [mL]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If it is no volume. A bare ``oz`` is a weight, so it is refused.
    OutOfRangeError
        If it is below zero or above 1000 l, or not as the guard will have it.

    Notes
    -----
    Factors as in ``core.tables.units``. Measures without a country are US.

    Examples
    --------
    >>> volume_ml("0.5 l", name="Volume")
    500.0
    >>> volume_ml("16 uk fl oz", name="Volume")
    454.609
    """
    asked = Asked(name=name, example=_VOLUME, argument=argument)
    value = read_amount(
        text, asked=asked, worth=units.VOLUME_ML, default_unit=default_unit
    )
    if guard is not None:
        return guard(value, name=name, argument=argument)
    return require_between(
        value, least=0.0, most=MOST_VOLUME_ML, unit="ml", name=name, argument=argument
    )


def percent(
    text: str,
    *,
    name: str,
    argument: str = "",
    default_unit: str | None = None,
    guard: Guard | None = None,
) -> float:
    """Return a percentage from what was written.

    Parameters
    ----------
    text : str
        A percentage: ``1%``, ``0,5 %``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        ``"%"`` where the sign is printed beside the field. [-]
    guard : Guard or None
        What the amount may be, as ``require_strength``; without it the range below. [-]

    Returns
    -------
    float
        The percentage; zero or more. [%]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If the sign is missing or another unit stands there.
    OutOfRangeError
        If it is below zero or above 10 000 %, or not as the guard will have it.

    Notes
    -----
    What a percentage is *of* (100 ml of stock, the weight of fibre) is the
    caller's business, and so is its narrower range.

    Examples
    --------
    >>> percent("0,5 %", name="Strength")
    0.5
    """
    asked = Asked(name=name, example=_PERCENT, argument=argument)
    value = read_amount(
        text, asked=asked, worth=units.PERCENT, default_unit=default_unit
    )
    if guard is not None:
        return guard(value, name=name, argument=argument)
    return require_between(
        value, least=0.0, most=10_000.0, unit="%", name=name, argument=argument
    )
