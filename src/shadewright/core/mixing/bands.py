"""A spectrum as a meter gives it, in the bands of the model."""

from itertools import pairwise

from shadewright.core.mixing.model.shapes import FIRST_NM, LAST_NM, STEP_NM
from shadewright.errors import OutOfRangeError


def bands_of(
    *, wavelengths_nm: tuple[int, ...], values: tuple[float, ...]
) -> tuple[float, ...]:
    """Return a spectrum in the bands of the model, 400 to 700 nm by 10.

    Parameters
    ----------
    wavelengths_nm : tuple of int
        Bands as read: an even step of 5, 10 or 20 nm that holds 400 and 700. [nm]
    values : tuple of float
        Reflectance in each. [1]

    Returns
    -------
    tuple of float
        31 reflectances; between two bands of 20 nm by a cubic through the four
        nearest. [1]

    Raises
    ------
    OutOfRangeError
        If the bands are not even, or leave out an end.

    Notes
    -----
    The cubic is Lagrange's, the way in which E2022 [astme2022]_ fills bands in.

    Examples
    --------
    >>> level = bands_of(wavelengths_nm=tuple(range(400, 701, 20)), values=(0.5,) * 16)
    >>> len(level), {round(value, 12) for value in level}
    (31, {0.5})
    """
    steps = {high - low for low, high in pairwise(wavelengths_nm)} or {0}
    first, last = wavelengths_nm[0], wavelengths_nm[-1]
    covers = first <= FIRST_NM and last >= LAST_NM
    if steps not in ({5}, {10}, {20}) or not covers:
        as_list = " and ".join(map(str, sorted(steps)))
        raise OutOfRangeError(
            name="The bands",
            given=f"{first} to {last} nm in steps of {as_list} nm",
            allowed="400 to 700 nm in even steps of 5, 10 or 20 nm",
            argument="reflectance",
        )
    known = dict(zip(wavelengths_nm, values, strict=True))
    wanted = range(FIRST_NM, LAST_NM + 1, STEP_NM)
    return tuple(known[nm] if nm in known else _between(known, nm) for nm in wanted)


def _between(known: dict[int, float], nm: int) -> float:
    """Return the cubic through the four nearest bands of 20 nm, at their middle."""
    left = max(min(nm - 30, max(known) - 60), min(known))
    at = [left + 20 * place for place in range(4)]
    found = 0.0
    for one in at:
        weight = 1.0
        for other in at:
            if other != one:
                weight *= (nm - other) / (one - other)
        found += weight * known[one]
    return found
