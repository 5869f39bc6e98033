"""CMC(l:c): the colour difference of the textile trade (Society of Dyers, 1984)."""

from math import cos, radians, sqrt

from shadewright.core.colour.cielab import Lab


def cmc(
    standard: Lab, sample: Lab, *, lightness: float = 2.0, chroma: float = 1.0
) -> float:
    """Return how far a sample is from its standard.

    ΔE² = (ΔL / l S_L)² + (ΔC / c S_C)² + (ΔH / S_H)²               (2)

    Parameters
    ----------
    standard : Lab
        The standard; its weights are used, so the order matters. [1]
    sample : Lab
        What is held beside it. [1]
    lightness : float
        l: 2 for whether a match will do, 1 for whether it is seen. [1]
    chroma : float
        c: always 1 in use. [1]

    Returns
    -------
    float
        The difference, ΔE. [1]

    Notes
    -----
    A common limit for a lot against its standard is 1 with 2:1 (common practice); the
    standard leaves the limit to the use.

    References
    ----------
    .. [clarke1984] the formula
    .. [isoj03] 3.3, CMC(l:c)

    Examples
    --------
    >>> round(cmc(Lab(50, 20, 20), Lab(52, 22, 18)), 4)
    3.4827
    """
    s_l, s_c, s_h = _weights(standard)
    d_l, d_c = sample.L - standard.L, sample.chroma - standard.chroma
    squared = (sample.a - standard.a) ** 2 + (sample.b - standard.b) ** 2 - d_c**2
    hue = sqrt(max(squared, 0.0))
    return sqrt(
        (d_l / (lightness * s_l)) ** 2 + (d_c / (chroma * s_c)) ** 2 + (hue / s_h) ** 2
    )


def _weights(standard: Lab) -> tuple[float, float, float]:
    """Return S_L, S_C and S_H, the half-axes of the standard's ellipsoid."""
    light, strong, hue = standard.L, standard.chroma, standard.hue_degrees
    s_l = 0.511 if light < 16 else 0.040975 * light / (1 + 0.01765 * light)
    s_c = 0.0638 * strong / (1 + 0.0131 * strong) + 0.638
    f = sqrt(strong**4 / (strong**4 + 1900))
    is_green_to_violet = 164 <= hue <= 345
    t = (
        0.56 + abs(0.2 * cos(radians(hue + 168)))
        if is_green_to_violet
        else 0.36 + abs(0.4 * cos(radians(hue + 35)))
    )
    return s_l, s_c, s_c * (f * t + 1 - f)
