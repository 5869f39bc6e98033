"""Cups: how much dye is left in a bath, by a spoonful of it.

A spoonful of the bath in a white cup is held beside the first cup, which was taken
when the dye was in and the yarn was not. Light taken up by a clear solution grows
with the dye in it, so the first cup thinned until both look alike says the share:
one spoon made up to four is a quarter.
"""

from collections.abc import Sequence
from math import log10
from typing import Final

from shadewright.core.quantities import require_between
from shadewright.errors import UnreadableError

_DARKEST: Final = 0.02  # a cup that sends back less than this is too dark to compare
_DIMMEST: Final = 0.05  # white that sends back less than this was in the dark
_LEAST_ABSORBANCE: Final = 0.03  # over three channels; less is a shadow, not dye


def left_percent(
    *, first: Sequence[float], now: Sequence[float], white: Sequence[float]
) -> float:
    """Return the share of dye left by the light that comes back from two cups.

    x = 100 Σ A1 A2 / Σ A1²,  A = −log10(light / light of white)         (25)

    Parameters
    ----------
    first, now : sequence of float
        Light from the first cup and from the cup of now, in proportion to its
        amount (linear, not as a screen stores it): red, green, blue. [1]
    white : sequence of float
        Light from the white beside them, in the same photo. [1]

    Returns
    -------
    float
        Dye left of the dye at first, x; at most 100. [%]

    Raises
    ------
    UnreadableError
        If the first cup has no colour to compare with, or is too dark to tell, or if
        it was dark.

    Notes
    -----
    Absorbance is in proportion to what is dissolved (Beer and Lambert, from memory);
    A2 = x A1 is fitted over the three channels by least squares. Holds for clear
    baths in cups of one kind filled to one height; where several dyes are left in
    other proportions than they went in, x is a mean of them. A phone corrects its
    pictures, so this is rough: a third either way is common practice.

    Examples
    --------
    >>> round(left_percent(first=[0.25] * 3, now=[0.5] * 3, white=[1.0] * 3), 6)
    50.0
    """
    if min(white) < _DIMMEST:
        raise UnreadableError(
            name="The photo of the cups",
            why="It is too dark.",
            advice="Take it again by daylight, on white paper.",
            argument="white",
        )
    strong, weak = _absorbances(first, white), _absorbances(now, white)
    whole = sum(each**2 for each in strong)
    if whole < _LEAST_ABSORBANCE**2:
        raise UnreadableError(
            name="The photo of the cups",
            why="The first cup looks as white as the white beside it.",
            advice="Judge by eye, or take the photo again without a shadow.",
            argument="first",
        )
    if min(x / y for x, y in zip(first, white, strict=True)) < _DARKEST:
        raise UnreadableError(
            name="The photo of the cups",
            why="The first cup is too dark to compare.",
            advice="Thin both cups alike, a spoon to four of water, and try again.",
            argument="first",
        )
    share = sum(x * y for x, y in zip(strong, weak, strict=True)) / whole
    return 100.0 * min(max(share, 0.0), 1.0)


def depth_on_yarn_percent(*, depth_percent: float, left_percent: float) -> float:
    """Return the depth that is on the yarn while some dye is left in the bath.

    d' = d (1 − x/100)                                                  (26)

    Parameters
    ----------
    depth_percent : float
        Dye that went in, d. [%]
    left_percent : float
        Share of it left in the bath, x; 0 to 100. [%]

    Returns
    -------
    float
        Dye on the yarn, d'. [%]

    Raises
    ------
    OutOfRangeError
        If the share lies outside.

    Notes
    -----
    By definition of exhaustion: dye in less dye left, over dye in.

    Examples
    --------
    >>> round(depth_on_yarn_percent(depth_percent=2.0, left_percent=10.0), 6)
    1.8
    """
    require_between(
        left_percent,
        least=0.0,
        most=100.0,
        unit="%",
        name="The share that is left",
        argument="left_percent",
    )
    return depth_percent * (1.0 - left_percent / 100.0)


def _absorbances(light: Sequence[float], white: Sequence[float]) -> list[float]:
    pairs = zip(light, white, strict=True)
    return [-log10(max(one, 1e-6) / max(whole, 1e-6)) for one, whole in pairs]
