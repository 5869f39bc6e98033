"""Liquor ratio: litres of bath to a kilogram of yarn."""

from shadewright.core.quantities.ranges import require_above_zero
from shadewright.core.quantities.reading import Asked, written


def liquor_ratio_ml_per_g(text: str, *, name: str, argument: str = "") -> float:
    """Return a liquor ratio from what was written: ``30``, ``1:30`` or ``30:1``.

    Parameters
    ----------
    text : str
        The ratio as a plain number, or with its 1 on either side. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        Millilitres of bath to a gram of yarn; the same number as litres to a
        kilogram. [mL/g]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If it is no such ratio.
    OutOfRangeError
        If it is not above 0 and at most 1000.

    Notes
    -----
    Mills write goods to liquor, 1:30, or liquor to goods, 30:1: the same
    (common practice).

    Examples
    --------
    >>> liquor_ratio_ml_per_g("1:30", name="Liquor ratio")
    30.0
    """
    example = "a plain number or a ratio with a 1 in it, such as 30 or 1:30"
    asked = Asked(name=name, example=example, argument=argument)
    sides = [side.strip() for side in text.split(":")]
    if len(sides) > 2 or (len(sides) == 2 and "1" not in sides):
        raise asked.refusal(text)
    if len(sides) == 2:
        sides.remove("1")
    found = written(sides[0], asked=asked)
    if found.unit:
        raise asked.refusal(text)
    return require_above_zero(
        found.number, most=1000.0, unit="", name=name, argument=argument
    )
