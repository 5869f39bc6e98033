"""A guard for each kind of amount: what a weight, a volume, a strength may be."""

from shadewright.core.quantities.ranges import require_above_zero

MOST_STRENGTH_PERCENT = 50.0
MOST_POWDER_STRENGTH_PERCENT = 400.0
MOST_MASS_G = 1_000_000.0
MOST_VOLUME_ML = 1_000_000.0


def require_mass(value_g: float, *, name: str, argument: str) -> float:
    """Return a mass in grams that is above zero and at most a tonne.

    Parameters
    ----------
    value_g : float
        The mass. [g]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The mass, unchanged. [g]

    Raises
    ------
    OutOfRangeError
        If the mass is not finite, not above zero, or above a tonne.

    Notes
    -----
    The tonne is a guard against slips of the finger, not a fact of the trade.

    Examples
    --------
    >>> require_mass(5.0, name="Powder", argument="powder_g")
    5.0
    """
    return require_above_zero(
        value_g, most=MOST_MASS_G, unit="g", name=name, argument=argument
    )


def require_volume(value_ml: float, *, name: str, argument: str) -> float:
    """Return a volume in millilitres that is above zero and at most 1000 l.

    Parameters
    ----------
    value_ml : float
        The volume. [mL]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The volume, unchanged. [mL]

    Raises
    ------
    OutOfRangeError
        If the volume is not finite, not above zero, or above 1000 l.

    Notes
    -----
    The 1000 l are a guard against slips of the finger.

    Examples
    --------
    >>> require_volume(500.0, name="Volume", argument="volume_ml")
    500.0
    """
    return require_above_zero(
        value_ml, most=MOST_VOLUME_ML, unit="ml", name=name, argument=argument
    )


def require_strength(
    value_percent: float, *, name: str = "Strength", argument: str = "strength_percent"
) -> float:
    """Return a stock's strength that is above zero and at most 50 %.

    Parameters
    ----------
    value_percent : float
        The strength, in g per 100 ml. [%]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The strength, unchanged. [%]

    Raises
    ------
    OutOfRangeError
        If the strength is not finite, not above zero, or above 50 %.

    Notes
    -----
    No acid dye is known to dissolve to 50 %: a guard, no measured limit.

    Examples
    --------
    >>> require_strength(1.0)
    1.0
    """
    return require_above_zero(
        value_percent,
        most=MOST_STRENGTH_PERCENT,
        unit="%",
        name=name,
        argument=argument,
    )


def require_powder_strength(
    value_percent: float,
    *,
    name: str = "Powder strength",
    argument: str = "powder_strength_percent",
) -> float:
    """Return a powder's strength that is above zero and at most 400 %.

    Parameters
    ----------
    value_percent : float
        Strength against the dye's standard powder, 100 %. [%]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The strength, unchanged. [%]

    Raises
    ------
    OutOfRangeError
        If the strength is not finite, not above zero, or above 400 %.

    Notes
    -----
    Powders of 200 % and more are sold; 400 % is a guard.

    Examples
    --------
    >>> require_powder_strength(80.0)
    80.0
    """
    return require_above_zero(
        value_percent,
        most=MOST_POWDER_STRENGTH_PERCENT,
        unit="%",
        name=name,
        argument=argument,
    )
