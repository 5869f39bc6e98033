"""Rows of people's tables: what is wrong with one of them, told with its line."""

from dataclasses import dataclass
from math import isfinite


@dataclass(frozen=True, kw_only=True)
class RowProblem:
    """A row that could not be used: its line in the file, and why."""

    line: int
    why: str


class RowError(Exception):
    """A row cannot be used; the text says why."""


def problem_of(error: Exception, *, line: int) -> RowProblem:
    """Return what is wrong with a row; the reason has no full stop at its end."""
    return RowProblem(line=line, why=f"{error}".removesuffix("."))


def number_of(text: str, name: str) -> float:
    """Return the number in a cell, or say that it is none; − is as good as -."""
    try:
        value = float(text.replace("−", "-"))
    except ValueError:
        value = float("nan")
    if isfinite(value):
        return value
    message = f"{name} is no number: “{text[:30]}”"
    if text.lower().startswith("lab("):
        message = (
            f"{name} is written as CSS lab(), which means another light: write "
            "L, a and b for D65 and 10° into columns of their own"
        )
    raise RowError(message)


def in_bands(spectrum: dict[int, float], *, worth: float = 1.0) -> tuple[float, ...]:
    """Return reflectances by wavelength in the bands of the model, 400 to 700 nm.

    ``worth`` is what one stands for: 0.01 where they are per cent.
    """
    from shadewright.core.mixing.bands import bands_of
    from shadewright.errors import OutOfRangeError

    values = [worth * spectrum[nm] for nm in sorted(spectrum)]
    if max(values) > 2.0:
        message = (
            f"a reflectance is {max(values):g}: they are fractions, 0.5 for 50 %; "
            "divide them all by 100"
        )
        raise RowError(message)
    if min(values) < 0.0:
        message = f"a reflectance is {min(values):g}, below nothing"
        raise RowError(message)
    try:
        return bands_of(wavelengths_nm=tuple(sorted(spectrum)), values=tuple(values))
    except OutOfRangeError as error:
        raise RowError(str(error)) from None
