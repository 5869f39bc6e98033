"""CIEDE2000: the distance of two colours, as even as the eye's (CIE 2001).

The paper's own equations, one after the other, for one pair. The same for arrays, on
another way, stands in ``ciede2000_arrays``.
"""

from dataclasses import dataclass
from math import cos, exp, radians, sin, sqrt
from typing import Final

from shadewright.core.colour.cielab import Lab

OPPOSITE: Final = 1e-12
"""Hues that are opposite but for so little count as opposite. [rad]"""


@dataclass(frozen=True, kw_only=True)
class DE2000Terms:
    """What CIEDE2000 is made of, under the paper's symbols; hues in degrees.

    ``one`` and ``two`` are the colours with a stretched, a' = (1 + G) a. ``lightness``,
    ``chroma`` and ``hue`` are the weighted differences of the second from the first;
    their squares and ``r_t`` times chroma times hue add up to the square of the
    distance.
    """

    one: Lab
    two: Lab
    h_mean: float
    g: float
    t: float
    s_l: float
    s_c: float
    s_h: float
    r_t: float
    lightness: float
    chroma: float
    hue: float

    @property
    def distance(self) -> float:
        """The distance, ΔE."""
        turned = self.r_t * self.chroma * self.hue
        squared = self.lightness**2 + self.chroma**2 + self.hue**2 + turned
        return sqrt(max(squared, 0.0))


def ciede2000(standard: Lab, sample: Lab, *, k_lightness: float = 1.0) -> float:
    """Return how far two colours are apart.

    ΔE² = (ΔL'/k_L S_L)² + (ΔC'/S_C)² + (ΔH'/S_H)² + R_T ΔC' ΔH' / (S_C S_H)   (1)

    Parameters
    ----------
    standard : Lab
        The one colour. [1]
    sample : Lab
        The other; the distance is the same either way. [1]
    k_lightness : float
        1, or 2 where lightness shall count half, as some do for textiles. [1]

    Returns
    -------
    float
        The distance, ΔE. [1]

    Notes
    -----
    About 1 is just seen where two skeins touch. Made from small differences, below 5;
    larger ones are put in the right order and no more.

    References
    ----------
    .. [sharma2005] equations 2 to 22

    Examples
    --------
    >>> round(ciede2000(Lab(50, 2.6772, -79.7751), Lab(50, 0, -82.7485)), 4)
    2.0425
    """
    return ciede2000_terms(standard, sample, k_lightness=k_lightness).distance


def ciede2000_terms(
    standard: Lab, sample: Lab, *, k_lightness: float = 1.0
) -> DE2000Terms:
    """Return the distance of two colours with all that it is made of.

    Parameters
    ----------
    standard : Lab
        The first colour. [1]
    sample : Lab
        The second; signs say how it differs from the first. [1]
    k_lightness : float
        1, or 2 where lightness shall count half. [1]

    Returns
    -------
    DE2000Terms
        The terms of equation 1. [1, °]

    References
    ----------
    .. [sharma2005] equations 2 to 22

    Examples
    --------
    >>> terms = ciede2000_terms(Lab(50, 2.5, 0), Lab(73, 25, -18))
    >>> round(terms.s_l, 4), round(terms.t, 4), round(terms.h_mean, 4)
    (1.1608, 1.4453, 346.247)
    """
    g = _green_red_stretch(standard, sample)  # Eq. 4
    one = Lab(standard.L, (1 + g) * standard.a, standard.b)  # Eq. 5 to 7
    two = Lab(sample.L, (1 + g) * sample.a, sample.b)
    l_mean = (one.L + two.L) / 2  # Eq. 12
    c_mean = (one.chroma + two.chroma) / 2  # Eq. 13
    h_mean = _mean_hue(one, two)
    t = _hue_weight(h_mean)
    s_l = 1 + 0.015 * (l_mean - 50) ** 2 / sqrt(20 + (l_mean - 50) ** 2)  # Eq. 18
    s_c = 1 + 0.045 * c_mean  # Eq. 19
    s_h = 1 + 0.015 * c_mean * t  # Eq. 20
    return DE2000Terms(
        one=one,
        two=two,
        h_mean=h_mean,
        g=g,
        t=t,
        s_l=s_l,
        s_c=s_c,
        s_h=s_h,
        r_t=_rotation(h_mean, c_mean),
        lightness=(two.L - one.L) / (k_lightness * s_l),  # Eq. 8
        chroma=(two.chroma - one.chroma) / s_c,  # Eq. 9
        hue=2 * sqrt(one.chroma * two.chroma) * _half_turn(one, two) / s_h,  # Eq. 11
    )


def _green_red_stretch(standard: Lab, sample: Lab) -> float:
    """Return G, by which a is stretched near grey (equations 2 to 4)."""
    seventh = ((standard.chroma + sample.chroma) / 2) ** 7
    return 0.5 * (1 - sqrt(seventh / (seventh + 25.0**7)))


def _half_turn(one: Lab, two: Lab) -> float:
    """Return the sine of half the shorter way between the hues (equation 10)."""
    turn = two.hue_degrees - one.hue_degrees
    if _is_far(one, two):
        turn += 360 if turn <= 0 else -360
    return sin(radians(turn / 2))


def _mean_hue(one: Lab, two: Lab) -> float:
    """Return the hue in the middle of the shorter way (equation 14)."""
    both = one.hue_degrees + two.hue_degrees
    if not one.chroma * two.chroma:
        return both
    if not _is_far(one, two):
        return both / 2
    return (both + 360) / 2 if both < 360 else (both - 360) / 2


def _is_far(one: Lab, two: Lab) -> bool:
    """Whether the way from hue to hue is shorter through 360°.

    Of opposite hues neither way is shorter, and the paper takes the plain mean. Whether
    they are is asked of a and b: angles are off in their last bit.
    """
    across, along = one.a * two.b - two.a * one.b, one.a * two.a + one.b * two.b
    if abs(across) <= -OPPOSITE * along:
        return False
    return abs(one.hue_degrees - two.hue_degrees) > 180


def _hue_weight(h_mean: float) -> float:
    """Return T (equation 15)."""
    return (
        1
        - 0.17 * cos(radians(h_mean - 30))
        + 0.24 * cos(radians(2 * h_mean))
        + 0.32 * cos(radians(3 * h_mean + 6))
        - 0.20 * cos(radians(4 * h_mean - 63))
    )


def _rotation(h_mean: float, c_mean: float) -> float:
    """Return R_T, which tilts the ellipses of blue (equations 16, 17, 21)."""
    theta = 30 * exp(-(((h_mean - 275) / 25) ** 2))
    r_c = 2 * sqrt(c_mean**7 / (c_mean**7 + 25.0**7))
    return -sin(radians(2 * theta)) * r_c
