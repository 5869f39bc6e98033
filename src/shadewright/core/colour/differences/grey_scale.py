"""The grey scale for change of colour: 5 for none, 1 for a great one (ISO 105-A05).

A mill holds a washed swatch beside the unwashed one, and both beside pairs of greys
that differ more and more. This is the grade that the meter would give.
"""

from dataclasses import dataclass
from math import exp, log2, sqrt

from shadewright.core.colour.cielab import Lab

WIDEST_DISTANCES = (
    (0.40, "5"),
    (1.25, "4-5"),
    (2.10, "4"),
    (2.95, "3-4"),
    (4.10, "3"),
    (5.80, "2-3"),
    (8.20, "2"),
    (11.60, "1-2"),
)
"""Below each distance the grade, as it is written. [1]"""

_BLUE_DEGREES, _BLUE_WIDTH = 280.0, 30.0
_BLUE_MATTERS = 0.05


@dataclass(frozen=True, kw_only=True)
class GreyScale:
    """A change of colour as a grade of the grey scale.

    ``rating`` is the grade with its fraction, 5 to 1; ``step`` as it is written, in
    half steps; ``is_vivid_blue`` where the standard takes off a further term that is
    not in this sum.
    """

    distance: float
    rating: float
    step: str
    is_vivid_blue: bool


def grey_scale(standard: Lab, sample: Lab) -> GreyScale:
    """Return the grade of a change of colour.

    ΔC_F = ΔC / (1 + (20 C_M / 1000)²)                              (3)
    ΔH_F = ΔH / (1 + (10 C_M / 1000)²)                              (4)
    ΔE_F² = ΔL² + ΔC_F² + ΔH_F²                                     (5)
    GS = 5 − ΔE_F / 1.7 up to ΔE_F = 3.4, else 5 − log2(ΔE_F / 0.85)    (6)

    Parameters
    ----------
    standard : Lab
        The colour before. [1]
    sample : Lab
        The colour after. [1]

    Returns
    -------
    GreyScale
        Distance ΔE_F, rating GS and the step that is written. [1]

    Notes
    -----
    C_M is the mean chroma. The standard takes a term D off ΔC and ΔH that grows with
    C_M and falls off within about 60° of the hue 280°, as exp(−((h − 280)/30)²). Its
    exact form could not be read again in any public text, so it is left out, and
    ``is_vivid_blue`` says where it would matter; there the grade comes out too low, by
    up to about one step. Equations 3 to 6 stand here from memory; 6 and the greys of
    the scale itself agree with public texts.

    References
    ----------
    .. [isoa05] 7 and 8, without D
    .. [isoa02] 2.4, distances of the greys

    Examples
    --------
    >>> found = grey_scale(Lab(50, 30, 20), Lab(50, 24, 18))
    >>> round(found.distance, 4), round(found.rating, 4), found.step
    (4.5257, 2.5874, '2-3')
    """
    c_mean = (standard.chroma + sample.chroma) / 2
    d_c = sample.chroma - standard.chroma
    squared = (sample.a - standard.a) ** 2 + (sample.b - standard.b) ** 2 - d_c**2
    chroma = d_c / (1 + (20 * c_mean / 1000) ** 2)
    hue = sqrt(max(squared, 0.0)) / (1 + (10 * c_mean / 1000) ** 2)
    distance = sqrt((sample.L - standard.L) ** 2 + chroma**2 + hue**2)
    return GreyScale(
        distance=distance,
        rating=_rating(distance),
        step=next(
            (step for widest, step in WIDEST_DISTANCES if distance < widest), "1"
        ),
        is_vivid_blue=_blueness(standard, sample) * c_mean / 100 > _BLUE_MATTERS,
    )


def _rating(distance: float) -> float:
    """Return the grade with its fraction, never below 1 (equation 6)."""
    if distance <= 3.4:
        return 5 - distance / 1.7
    return max(1.0, 5 - log2(distance / 0.85))


def _blueness(standard: Lab, sample: Lab) -> float:
    """Return exp(−x) of the standard, by the hue of the mean colour."""
    middle = Lab(0.0, standard.a + sample.a, standard.b + sample.b)
    away = abs(middle.hue_degrees - _BLUE_DEGREES)
    return exp(-((min(away, 360 - away) / _BLUE_WIDTH) ** 2))
