"""CIEDE2000 as numbers whose squares add up to it, with their slopes.

A search that goes downhill by least squares wants residuals, not a distance. With x, y
and z the weighted differences of chroma, hue and lightness, and the turn R_T in blue,

    ΔE² = z² + (1 − R_T²/4) x² + (y + R_T x / 2)²                    (1)

so three residuals do. Their slopes by L, a and b follow by the chain rule, by a and
by b on the same path.
"""

from typing import TYPE_CHECKING, NamedTuple

from shadewright.core.recipes.search.terms import (
    Blue,
    Stretched,
    Turn,
    Wanted,
    Weights,
    blue_of,
    stretched_of,
    turn_of,
    weights_of,
)

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


class LabSlopes(NamedTuple):
    """Slopes: of z by L; of the second and third residual by a and by b."""

    lightness: "Floats"
    second_a: "Floats"
    second_b: "Floats"
    third_a: "Floats"
    third_b: "Floats"


def residuals(
    wanted: Wanted, lightness: "Floats", a: "Floats", b: "Floats"
) -> "Floats":
    """Return three residuals a light whose squares add up to CIEDE2000² (equation 1).

    Parameters
    ----------
    wanted : Wanted
        The target under each light. [1]
    lightness, a, b : ndarray, shape (lights, colours)
        The colours. [1]

    Returns
    -------
    ndarray, shape (lights, 3, colours)
        Residuals. [1]

    References
    ----------
    .. [sharma2005] equations 2 to 22
    """
    stretched = stretched_of(wanted, a, b)
    turn = turn_of(wanted, stretched)
    weights = weights_of(turn, stretched)
    return _rows(wanted, lightness, stretched, turn, weights, blue_of(turn, weights))


def residuals_and_slopes(
    wanted: Wanted, lightness: "Floats", a: "Floats", b: "Floats"
) -> tuple["Floats", LabSlopes]:
    """Return the residuals and how each follows L, a and b.

    Parameters
    ----------
    wanted : Wanted
        The target under each light. [1]
    lightness, a, b : ndarray, shape (lights, colours)
        The colours. [1]

    Returns
    -------
    tuple of (ndarray, shape (lights, 3, colours); LabSlopes)
        Residuals and slopes. [1]
    """
    stretched = stretched_of(wanted, a, b)
    turn = turn_of(wanted, stretched)
    weights = weights_of(turn, stretched)
    blue = blue_of(turn, weights)
    rows = _rows(wanted, lightness, stretched, turn, weights, blue)
    along_a = stretched.by_chroma * a / stretched.chroma
    along_b = stretched.by_chroma * b / stretched.chroma
    by_a = (wanted.a * along_a, stretched.stretch + a * along_a, 0.0)
    by_b = (wanted.a * along_b, a * along_b, 1.0)
    second_a, third_a = _slopes_by(by_a, stretched, turn, weights, blue)
    second_b, third_b = _slopes_by(by_b, stretched, turn, weights, blue)
    slope = _lightness_slope(wanted, lightness, rows[:, 0])
    return rows, LabSlopes(slope, second_a, second_b, third_a, third_b)


def _rows(
    wanted: Wanted,
    lightness: "Floats",
    pair: Stretched,
    turn: Turn,
    weights: Weights,
    blue: Blue,
) -> "Floats":
    """Return the three residuals (equation 1)."""
    import numpy as np

    chroma, hue = _chroma_and_hue(pair, turn, weights)
    square = (0.5 * (lightness + wanted.lightness) - 50.0) ** 2
    rows = np.empty((len(lightness), 3, lightness.shape[1]))
    rows[:, 0] = (lightness - wanted.lightness) / (
        1.0 + 0.015 * square / np.sqrt(20.0 + square)
    )
    rows[:, 1] = np.sqrt(1.0 - 0.25 * blue.turn * blue.turn) * chroma
    rows[:, 2] = hue + 0.5 * blue.turn * chroma
    return rows


def _chroma_and_hue(
    pair: Stretched, turn: Turn, weights: Weights
) -> tuple["Floats", "Floats"]:
    """Return x and y, the weighted differences of chroma and hue."""
    import numpy as np

    root = np.sqrt(pair.c_1 * pair.c_2)
    chroma = (pair.c_2 - pair.c_1) * weights.over_c
    return chroma, 2.0 * root * turn.sin_half * weights.over_h


def _lightness_slope(wanted: Wanted, lightness: "Floats", row: "Floats") -> "Floats":
    """Return the slope of the residual of lightness."""
    import numpy as np

    middle = 0.5 * (lightness + wanted.lightness) - 50.0
    square = middle * middle
    root = np.sqrt(20.0 + square)
    weight = 0.015 * (middle / root - 0.5 * square * middle / (root * root * root))
    found: Floats = (1.0 - row * weight) / (1.0 + 0.015 * square / root)
    return found


def _slopes_by(
    stretched: tuple["Floats", "Floats", float],
    pair: Stretched,
    turn: Turn,
    weights: Weights,
    blue: Blue,
) -> tuple["Floats", "Floats"]:
    """Return how the second and third residual follow a, or b.

    ``stretched`` says how a' of the target, a' and b of the colour follow it.
    """
    import numpy as np

    c_1, c_2, h_1, h_2 = _polar_slopes(stretched, pair, turn)
    root = np.sqrt(pair.c_1 * pair.c_2)
    d_hue = turn.sin_half / root * (pair.c_2 * c_1 + pair.c_1 * c_2)
    d_hue += root * turn.cos_half * (h_2 - h_1)
    chroma, hue = _chroma_and_hue(pair, turn, weights)
    mean = (0.5 * (c_1 + c_2), 0.5 * (h_1 + h_2))
    x = (c_2 - c_1 - 0.045 * chroma * mean[0]) * weights.over_c
    y = (d_hue - hue * _s_h_slope(weights, *mean)) * weights.over_h
    turned = blue.by_hue * mean[1] + blue.by_chroma * mean[0]
    side = np.sqrt(1.0 - 0.25 * blue.turn * blue.turn)
    second = side * x - turned * blue.turn * chroma / (4.0 * side)
    return second, y + 0.5 * (turned * chroma + blue.turn * x)


def _polar_slopes(
    stretched: tuple["Floats", "Floats", float], pair: Stretched, turn: Turn
) -> tuple["Floats", "Floats", "Floats", "Floats"]:
    """Return how chroma and hue of both colours follow a, or b."""
    by_a_1, by_a_2, by_b_2 = stretched
    return (
        turn.x_1 * by_a_1,
        turn.x_2 * by_a_2 + turn.y_2 * by_b_2,
        -turn.y_1 * by_a_1 / pair.c_1,
        (turn.x_2 * by_b_2 - turn.y_2 * by_a_2) / pair.c_2,
    )


def _s_h_slope(weights: Weights, chroma: "Floats", hue: "Floats") -> "Floats":
    """Return how S_H follows the mean chroma and the mean hue."""
    turned: Floats = weights.chroma * weights.hue_slope * hue
    return 0.015 * (chroma * weights.hue + turned)
