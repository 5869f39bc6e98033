"""The parts of CIEDE2000 for thousands of colours: chroma, hue, and their weights.

Angles are kept as directions. The half turn between two hues is taken by the sum of
the directions, and by the chord where they are nearly opposite: there the sum cancels,
and an optimum would be invented. The hue term around 275° must not wrap to the other
side, so it is nought for hues from 0 to 90°. Arrays are (lights, colours), the colours
last; the first colour of each pair is the target.
"""

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_FAR = 25.0**7
_COS = {6: 0.9945218953682733, 30: 0.8660254037844387, 63: 0.45399049973954675}
_SIN = {6: 0.10452846326765347, 30: 0.5, 63: 0.8910065241883679}
_COS_5, _SIN_5 = 0.9961946980917455, 0.08715574274765817
_DEGREES = 57.29577951308232
_SINE_SERIES = (210.0, 156.0, 110.0, 72.0, 42.0, 20.0, 6.0)


class Wanted(NamedTuple):
    """The colour that all are measured against, (lights, 1) each."""

    lightness: "Floats"
    a: "Floats"
    b: "Floats"
    chroma: "Floats"


class Stretched(NamedTuple):
    """Both colours with a stretched, and how the stretch follows the chroma."""

    a_1: "Floats"
    a_2: "Floats"
    b_2: "Floats"
    c_1: "Floats"
    c_2: "Floats"
    chroma: "Floats"
    stretch: "Floats"
    by_chroma: "Floats"


class Turn(NamedTuple):
    """Directions of both hues, half the turn between them, and their middle."""

    x_1: "Floats"
    y_1: "Floats"
    x_2: "Floats"
    y_2: "Floats"
    cos_half: "Floats"
    sin_half: "Floats"
    x: "Floats"
    y: "Floats"


class Weights(NamedTuple):
    """T and its slope by the hue, 1/S_C, 1/S_H and the mean chroma."""

    hue: "Floats"
    hue_slope: "Floats"
    over_c: "Floats"
    over_h: "Floats"
    chroma: "Floats"


class Blue(NamedTuple):
    """R_T and its slopes by the hue and by the mean chroma."""

    turn: "Floats"
    by_hue: "Floats"
    by_chroma: "Floats"


def wanted_of(lab: "Floats") -> Wanted:
    """Return a target made ready.

    Parameters
    ----------
    lab : ndarray, shape (lights, 3)
        L*, a*, b* under each light. [1]

    Returns
    -------
    Wanted
        The same, with its chroma. [1]
    """
    import numpy as np

    lightness, a, b = (lab[:, place : place + 1] for place in range(3))
    return Wanted(lightness, a, b, np.hypot(a, b))


def stretched_of(wanted: Wanted, a: "Floats", b: "Floats") -> Stretched:
    """Return both colours with a stretched.

    Parameters
    ----------
    wanted : Wanted
        The target under each light. [1]
    a, b : ndarray, shape (lights, colours)
        The colours. [1]

    Returns
    -------
    Stretched
        a', chroma, and how the stretch follows the chroma. [1]

    References
    ----------
    .. [sharma2005] equations 2 to 6
    """
    import numpy as np

    chroma = np.sqrt(a * a + b * b) + 1e-12
    mean = 0.5 * (wanted.chroma + chroma)
    square = mean * mean
    seventh = square * square * square * mean
    rest = 1.0 / (seventh + _FAR)
    root = np.sqrt(seventh * rest) + 1e-30
    stretch = 1.5 - 0.5 * root
    a_1, a_2 = stretch * wanted.a, stretch * a
    return Stretched(
        a_1=a_1,
        a_2=a_2,
        b_2=b,
        c_1=np.sqrt(a_1 * a_1 + wanted.b * wanted.b) + 1e-12,
        c_2=np.sqrt(a_2 * a_2 + b * b) + 1e-12,
        chroma=chroma,
        stretch=stretch,
        by_chroma=-0.875 * _FAR * rest * rest * seventh / (root * mean + 1e-300),
    )


def turn_of(wanted: Wanted, pair: Stretched) -> Turn:
    """Return half the turn from the one hue to the other, and the middle hue.

    Parameters
    ----------
    wanted : Wanted
        The target under each light. [1]
    pair : Stretched
        Both colours. [1]

    Returns
    -------
    Turn
        Directions, and sine and cosine of half the turn. [1]

    References
    ----------
    .. [sharma2005] equations 7, 10 and 14, without their angles
    """
    import numpy as np

    over_1, over_2 = 1.0 / pair.c_1, 1.0 / pair.c_2
    x_1, y_1 = pair.a_1 * over_1, wanted.b * over_1
    x_2, y_2 = pair.a_2 * over_2, pair.b_2 * over_2
    along = x_1 * x_2 + y_1 * y_2
    across = x_1 * y_2 - y_1 * x_2
    cos_half = np.sqrt(np.maximum(0.5 * (1.0 + along), 1e-30))
    half = 0.5 / cos_half
    turn = Turn(
        x_1, y_1, x_2, y_2, cos_half, across * half, (x_1 + x_2) * half,
        (y_1 + y_2) * half,
    )  # fmt: skip
    is_far = along < -0.5
    if is_far.any():
        _by_the_chord(turn, along, across, is_far)
    return turn


def _by_the_chord(
    turn: Turn, along: "Floats", across: "Floats", is_far: "NDArray[np.bool_]"
) -> None:
    """Take the half turn of nearly opposite hues by the chord between them."""
    import numpy as np

    sine, cross = np.sqrt(0.5 * (1.0 - along[is_far])), across[is_far]
    sign = np.where(cross < 0.0, -1.0, 1.0)
    half = 0.5 / sine
    turn.cos_half[is_far] = abs(cross) * half
    turn.sin_half[is_far] = sine * sign
    turn.x[is_far] = (turn.y_2[is_far] - turn.y_1[is_far]) * half * sign
    turn.y[is_far] = (turn.x_1[is_far] - turn.x_2[is_far]) * half * sign


def weights_of(turn: Turn, pair: Stretched) -> Weights:
    """Return T, S_C and S_H by multiples of the hue.

    Parameters
    ----------
    turn : Turn
        The middle hue. [1]
    pair : Stretched
        Both colours. [1]

    Returns
    -------
    Weights
        T with its slope, and the inverse of S_C and S_H. [1]

    References
    ----------
    .. [sharma2005] equations 15, 19 and 20
    """
    x, y = turn.x, turn.y
    x_2, y_2 = x * x - y * y, 2.0 * y * x
    x_3, y_3 = x_2 * x - y_2 * y, y_2 * x + x_2 * y
    x_4, y_4 = x_2 * x_2 - y_2 * y_2, 2.0 * y_2 * x_2
    hue = 1.0 - 0.17 * (x * _COS[30] + y * _SIN[30]) + 0.24 * x_2
    hue += 0.32 * (x_3 * _COS[6] - y_3 * _SIN[6])
    hue -= 0.20 * (x_4 * _COS[63] + y_4 * _SIN[63])
    slope = 0.17 * (y * _COS[30] - x * _SIN[30]) - 0.48 * y_2
    slope -= 0.96 * (y_3 * _COS[6] + x_3 * _SIN[6])
    slope += 0.8 * (y_4 * _COS[63] - x_4 * _SIN[63])
    chroma = 0.5 * (pair.c_1 + pair.c_2)
    over_c = 1.0 / (1.0 + 0.045 * chroma)
    over_h = 1.0 / (1.0 + 0.015 * chroma * hue)
    return Weights(hue, slope, over_c, over_h, chroma)


def blue_of(turn: Turn, weights: Weights) -> Blue:
    """Return R_T; its sines by series, which is faster.

    Parameters
    ----------
    turn : Turn
        The middle hue. [1]
    weights : Weights
        The mean chroma. [1]

    Returns
    -------
    Blue
        R_T and its slopes. [1]

    References
    ----------
    .. [sharma2005] equations 16, 17 and 21
    """
    import numpy as np

    square = weights.chroma * weights.chroma
    seventh = square * square * square * weights.chroma
    rest = 1.0 / (seventh + _FAR)
    reach = 2.0 * np.sqrt(seventh * rest) + 1e-30
    up, on = (
        turn.y * _SIN_5 + turn.x * _COS_5,
        turn.x * _SIN_5 - turn.y * _COS_5,
    )
    away = np.arctan2(up, on) * (_DEGREES / 25.0)
    is_yellow = (turn.y >= 0.0) & (turn.x > 0.0)
    angle = np.where(is_yellow, 0.0, (np.pi / 3.0) * np.exp(-away * away))
    sine = _sine(angle)
    per_degree = np.sqrt(1.0 - sine * sine) * angle * away * (2.0 * _DEGREES / 25.0)
    by_chroma = 14.0 * seventh * _FAR * rest * rest / (weights.chroma * reach)
    return Blue(-sine * reach, per_degree * reach, -sine * by_chroma)


def _sine(angle: "Floats") -> "Floats":
    """Return the sine of 0 to 60°."""
    square = angle * angle
    found = 1.0 - square / _SINE_SERIES[0]
    for size in _SINE_SERIES[1:]:
        found *= square
        found *= -1.0 / size
        found += 1.0
    found *= angle
    return found
