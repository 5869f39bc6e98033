"""Scales: the rounding of what they show, and the error of their own."""

from shadewright.core.quantities import Balance, require_between, require_mass
from shadewright.core.quantities.guards import MOST_MASS_G
from shadewright.core.uncertainty.combining import total
from shadewright.core.uncertainty.shapes import Shape
from shadewright.core.uncertainty.values import Value, bounded, exact

UNCHECKED_STEPS = 2.0
"""Steps that an unchecked kitchen scale is taken to be off: common practice. [-]"""


def unchecked_balance(*, step_g: float) -> Balance:
    """Return a scale that nobody has checked yet.

    Parameters
    ----------
    step_g : float
        The step that it shows, d. [g]

    Returns
    -------
    Balance
        Off by two steps, either way. [-]

    Raises
    ------
    OutOfRangeError
        If the step is not above zero.

    Notes
    -----
    Common practice, no source: kitchen scales are found two to four steps off.

    Examples
    --------
    >>> unchecked_balance(step_g=0.1).error_g
    0.2
    """
    step = require_mass(step_g, name="Step", argument="step_g")
    return Balance(step_g=step, error_g=UNCHECKED_STEPS * step)


def mass_read(
    balance: Balance, mass_g: float, *, role: str, key: str, is_tared: bool = True
) -> Value:
    """Return a mass with what reading this scale is worth.

    u = d/√6 (tared), d/√12 (one reading); and a(m)/√3 for the scale itself

    Parameters
    ----------
    balance : Balance
        Its step d; its own error a where that is known, with what grows by load. [-]
    mass_g : float
        The mass read; zero or more. [g]
    role : str
        What was weighed, in the dyer's words: powder, yarn, a dye. [-]
    key : str
        Names the very scale: ``tool 3``. [-]
    is_tared : bool
        Whether the net mass rests on two readings, empty and full. [-]

    Returns
    -------
    Value
        The mass with one or two terms. Nought is nought for sure. [g]

    Raises
    ------
    OutOfRangeError
        If the mass is negative, not a number, or above a tonne.

    Notes
    -----
    Nought is tared away, so what a check weight found counts less for less load; and
    far above the weight it says nothing: see ``Balance``.
    The scale's own error is counted once a net mass. Weighed for another role it is
    another error: another load, another day.

    References
    ----------
    .. [jcgm100] F.2.2.1 (rounding), 4.3.7 and 4.3.9 (shapes)

    Examples
    --------
    >>> scale = Balance(step_g=0.1, error_g=None)
    >>> round(mass_read(scale, 5.0, role="powder", key="tool 3").u, 4)
    0.0408
    """
    require_between(
        mass_g, least=0.0, most=MOST_MASS_G, unit="g", name="Mass", argument="mass_g"
    )
    if not mass_g:
        return exact(0.0)
    rounding = bounded(
        mass_g,
        half_width=balance.step_g if is_tared else balance.step_g / 2.0,
        shape=Shape.TRIANGULAR if is_tared else Shape.RECTANGULAR,
        name=f"reading the scale, {role}",
        source=f"{key} {role} reading",
    )
    own_g = balance.own_error_g(mass_g)
    if not own_g:
        return rounding
    own = bounded(
        0.0,
        half_width=own_g,
        shape=Shape.RECTANGULAR,
        name=f"the scale itself, {role}",
        source=f"{key} {role}",
    )
    return total(rounding, own)
