"""How sure a strength is, from what was read when the stock was made.

A strength is grams over millilitres, and both were read: the powder from a scale,
the volume from a mark. What each reading may be off by goes into the strength under
its own name, and stays there, whatever happens to the stock afterwards.

How strong the powder itself is in its jar has no term here: nobody can read it.
"""

from shadewright.core.quantities import (
    amount_text,
    require_strength,
    water_density_g_per_ml,
)
from shadewright.core.solutions.filling import USED_AT_C
from shadewright.core.solutions.strength import true_strength_percent
from shadewright.core.uncertainty import (
    Shape,
    Term,
    Value,
    bounded,
    quotient,
    scaled,
    total,
)
from shadewright.errors import OutOfRangeError

GUESS = 0.1
"""Relative standard uncertainty of a strength as labelled. [-] (common practice)"""

ROOM = "room that the dye takes up in the stock"
"""Name of that term, here and where a dose is weighed out of the stock."""

_MOST_ROOM_ML_PER_G = 1.0  # dye powder sinks


def made_strength(
    *, powder: Value, volume: Value, powder_strength_percent: float = 100.0
) -> Value:
    """Return the strength of a stock, with what scale and mark put into it.

    c = m s / V,  u(c)²/c² = u(m)²/m² + u(V)²/V²                 (18)

    Parameters
    ----------
    powder : Value
        Powder weighed, m; above zero. [g]
    volume : Value
        Volume of the finished, cold stock, V; above zero. [mL]
    powder_strength_percent : float
        Strength of the powder against the dye's standard, s; above 0 to 400. [%]

    Returns
    -------
    Value
        Strength, c, in g per 100 ml. [%]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the stock would be above 50 %.

    Notes
    -----
    The squares hold while scale and mark share no error; one that they share is
    added up first.

    References
    ----------
    .. [jcgm100] 5.1.6 equation 12

    Examples
    --------
    >>> scale = Term(name="scale", source="scale", u=0.05)
    >>> stock = made_strength(
    ...     powder=Value(value=5.2, terms=(scale,)), volume=Value(value=500.0)
    ... )
    >>> stock.value, round(stock.u_rel, 4)
    (1.04, 0.0096)
    """
    true_strength_percent(
        powder_g=powder.value,
        volume_ml=volume.value,
        powder_strength_percent=powder_strength_percent,
    )
    return quotient(scaled(powder, by=powder_strength_percent), volume)


def weighed_volume(*, filled: Value, powder: Value, key: str) -> Value:
    """Return the volume of a stock that was made up on a scale.

    V = (M − m)/rho(20 °C)                                       (19)

    Parameters
    ----------
    filled : Value
        What the finished stock weighs, without its vessel, M. [g]
    powder : Value
        Powder in it, m. [g]
    key : str
        Which stock it is, as part of a source. [-]

    Returns
    -------
    Value
        Volume, V, once it is drawn at 20 °C. [mL]

    Raises
    ------
    OutOfRangeError
        If the stock does not weigh more than its powder.

    Notes
    -----
    The dissolved powder is reckoned to take no room. It takes between none and
    1 ml a gram (it sinks), so a rectangle of 1 ml a gram covers it. Source:
    equation 4 turned round; the bounds are common practice.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> water = weighed_volume(filled=exact(504.1), powder=exact(5.0), key="T7K")
    >>> round(water.value, 1)
    500.0
    """
    if filled.value <= powder.value:
        raise OutOfRangeError(
            name="What the finished stock weighs",
            given=amount_text(filled.value, "g"),
            allowed=f"more than its {amount_text(powder.value, 'g')} of powder",
            advice="Was the scale tared with the empty vessel?",
            argument="filled_g",
        )
    density = water_density_g_per_ml(temperature_c=USED_AT_C)
    room = bounded(
        0.0,
        half_width=_MOST_ROOM_ML_PER_G * powder.value,
        shape=Shape.RECTANGULAR,
        name=ROOM,
        source=f"room {key}",
    )
    water = total(filled, scaled(powder, by=-1.0))
    return total(scaled(water, by=1.0 / density), room)


def labelled_strength(*, strength_percent: float, key: str) -> Value:
    """Return a strength that somebody else wrote on a bottle: a guess.

    Parameters
    ----------
    strength_percent : float
        Strength as labelled, in g per 100 ml; above 0 to 50. [%]
    key : str
        Which bottle it is, as part of a source. [-]

    Returns
    -------
    Value
        The strength; u is a tenth of it. [%]

    Raises
    ------
    OutOfRangeError
        If the strength is not above 0 to 50 %.

    Notes
    -----
    A tenth is common practice: nobody knows how it was weighed, or what has
    evaporated since.

    Examples
    --------
    >>> labelled_strength(strength_percent=1.0, key="T7K").u_rel
    0.1
    """
    value = require_strength(strength_percent)
    guess = Term(
        name="strength as labelled: a guess", source=f"label {key}", u=GUESS * value
    )
    return Value(value=value, terms=(guess,))


def cooled(strength: Value, *, filled_at_c: float) -> Value:
    """Return the strength, once cool, of a stock that was made up hot.

    Parameters
    ----------
    strength : Value
        Strength that it was made up to. [%]
    filled_at_c : float
        Temperature of the liquid when it stood at the mark; 0 to 100. [°C]

    Returns
    -------
    Value
        Strength when it is drawn at 20 °C, each term by the same factor. [%]

    Notes
    -----
    By the density of water [kell1975]_; see ``cooled_strength_percent``.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> round(cooled(exact(1.0), filled_at_c=80.0).value, 3)
    1.027
    """
    hot, cold = (
        water_density_g_per_ml(temperature_c=at_c) for at_c in (filled_at_c, USED_AT_C)
    )
    return scaled(strength, by=cold / hot)


def of_stock(value: Value, *, key: str) -> Value:
    """Return a value whose errors are those of one stock, not of another's.

    Parameters
    ----------
    value : Value
        What was read while the stock was made. [any]
    key : str
        Which stock it is. [-]

    Returns
    -------
    Value
        The same, each source under the stock's name. [as value]

    Notes
    -----
    The same scale errs anew at each weighing. Its own error, nearly the same at
    the same weight, is taken to be another each time as well.

    Examples
    --------
    >>> read = Value(value=5.0, terms=(Term(name="scale", source="scale", u=0.1),))
    >>> of_stock(read, key="bottle T7K").terms[0].source
    'bottle T7K: scale'
    """
    return Value(
        value=value.value,
        terms=tuple(
            Term(
                name=term.name,
                source=f"{key}: {term.source}",
                u=term.u,
                shape=term.shape,
            )
            for term in value.terms
        ),
    )
