"""What each factor did to the colour before: names by their shift, numbers by slope.

All earlier lots are taken together. A lot’s colour is a mean, a small shift for every
name that it was dyed under, a slope times every number, and noise. What is not yet
known of a shift or a slope is normal with a width given below, so that three lots
teach a little and thirty teach much.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import fsum, sqrt
from typing import Final

from shadewright.core.colour import Lab
from shadewright.core.quality.causes.features import Feature, Features
from shadewright.core.quality.causes.history import NAMES, Factor
from shadewright.core.quality.causes.matrices import Three, three

MEAN_SD: Final = 10.0
NAME_SD: Final = 0.3
SLOPE_SD: Final = 0.35
"""Widths of what is not known: in Lab, a slope a step of its number. [1]"""

SLOPE_MEAN: Final = 0.2
"""A step of a number that makes paler does so by this, before any is known. [1]"""

PALER: Final = {
    Factor.BOTTLE_AGE: 1.0,
    Factor.LOAD: 1.0,
    Factor.HOLD: -1.0,
    Factor.ACID_AFTER: 1.0,
}
"""Old or settled stock, much yarn in the bath, a short hold and late acid dye paler."""

WIDTH_WORTH: Final = 2.0
"""The first guess of the width of a factor’s shifts is worth so many names. [-]"""

_ROUNDS: Final = 2

NOISE_SHARE: Final = 0.7
"""What of the variance between lots is noise; the rest are shifts and slopes. [-]"""

BARE: Final = Lab(88.0, 0.0, 8.0)
"""Undyed yarn, about. [1]"""


@dataclass(frozen=True, kw_only=True)
class Effect:
    """A shift in L, a, b that is expected, and its variance in each number."""

    shift: Three
    variance: float


@dataclass(frozen=True, kw_only=True)
class Learned:
    """What earlier lots taught; asked for the effect of any features."""

    lots: tuple[Features, ...]
    widths: Mapping[Factor, float]
    paler: Three
    roots: tuple[tuple[float, ...], ...]
    pulls: tuple[tuple[float, ...], ...]

    def effect(self, features: Features) -> Effect:
        """Return what features do to the colour, as far as it is known (equation 9)."""
        near = [_kernel(features, lot, self.widths) for lot in self.lots]
        known = fsum(x * x for x in _forward(self.roots, near))
        lean = _lean(features)
        return Effect(
            shift=three([
                lean * way + fsum(x * pull for x, pull in zip(near, pulls, strict=True))
                for way, pulls in zip(self.paler, self.pulls, strict=True)
            ]),
            variance=max(_kernel(features, features, self.widths) - known, 0.0),
        )


def learned_from(
    lots: Sequence[Features], shifts: Sequence[Three], *, variance: float, paler: Three
) -> Learned:
    """Return what lots teach of every name and number.

    k(i, j) = Σ_f s_f² x_fi x_fj + σ² [i = j]                      (8)
    e(v) = m(v) + k(v)ᵀ K⁻¹ (d − m),  u² = k(v, v) − k(v)ᵀ K⁻¹ k(v)    (9)
    s_f² = (2 · 0.3² + Σ (|e|² / 3 + u²)) / (2 + n),  over its n names    (10)

    Parameters
    ----------
    lots : sequence of Features
        What each lot was dyed with, x. [1]
    shifts : sequence of tuple of float
        Each lot's colour less the mean, d, in L, a, b. [1]
    variance : float
        Of one number of Lab between lots; its noise is σ². [1]
    paler : tuple of float
        Unit vector towards paler. [1]

    Returns
    -------
    Learned
        Asked for the effect of features. [-]

    Notes
    -----
    s is the width of what is not known of a feature, m what is expected of it before
    any lot is known. Equation 9 is least squares with that prior, written lot by lot;
    equation 10 is taken twice, so that a factor whose names moved the colour by much
    is believed to do so again.

    References
    ----------
    .. [rasmussen2006] equations 2.22 to 2.24 and 2.37
    """
    noise = NOISE_SHARE * variance
    found = _solved(lots, shifts, noise=noise, paler=paler, widths={})
    for _ in range(_ROUNDS):
        widths = {factor: _learned_width(found, factor) for factor in NAMES}
        found = _solved(lots, shifts, noise=noise, paler=paler, widths=widths)
    return found


def paler_than(colour: Three) -> Three:
    """Return the way from a colour to the bare yarn, one long.

    Parameters
    ----------
    colour : tuple of float
        L, a, b of a lot. [1]

    Returns
    -------
    tuple of float
        Unit vector in L, a, b. [1]

    Notes
    -----
    The bare yarn is not in the table, so a cream wool is taken. A base that is grey
    turns the way by a few degrees; how far the way may turn is allowed for.

    Examples
    --------
    >>> [round(part, 2) for part in paler_than((58.0, 40.0, 8.0))]
    [0.6, -0.8, 0.0]
    """
    way = [bare - x for bare, x in zip(BARE, colour, strict=True)]
    length = sqrt(fsum(x * x for x in way)) or 1.0
    return three([x / length for x in way])


def _solved(
    lots: Sequence[Features],
    shifts: Sequence[Three],
    *,
    noise: float,
    paler: Three,
    widths: Mapping[Factor, float],
) -> Learned:
    roots = _cholesky([
        [
            *(_kernel(one, two, widths) for two in lots[:place]),
            _kernel(one, one, widths) + noise,
        ]
        for place, one in enumerate(lots)
    ])
    leans = [_lean(lot) for lot in lots]
    rests = [
        [shift[axis] - lean * way for shift, lean in zip(shifts, leans, strict=True)]
        for axis, way in enumerate(paler)
    ]
    return Learned(
        lots=tuple(lots),
        widths=widths,
        paler=paler,
        roots=roots,
        pulls=tuple(_backward(roots, _forward(roots, rest)) for rest in rests),
    )


def _learned_width(first: Learned, factor: Factor) -> float:
    """Return how wide the shifts of a factor’s names are: equation 10."""
    names = {feature for lot in first.lots for feature in lot if feature[0] is factor}
    effects = [first.effect({name: 1.0}) for name in sorted(names)]
    squares = fsum(
        fsum(x * x for x in effect.shift) / 3.0 + effect.variance for effect in effects
    )
    whole = WIDTH_WORTH * NAME_SD**2 + squares
    return sqrt(whole / (WIDTH_WORTH + len(effects)))


def _width(feature: Feature, widths: Mapping[Factor, float]) -> float:
    factor, name = feature
    if factor is None:
        return MEAN_SD
    return widths.get(factor, NAME_SD) if name else SLOPE_SD


def _kernel(one: Features, two: Features, widths: Mapping[Factor, float]) -> float:
    shared = (feature for feature in one if feature in two)
    return sum(
        one[feature] * two[feature] * _width(feature, widths) ** 2 for feature in shared
    )


def _lean(features: Features) -> float:
    """Return how much paler features are expected to dye before any lot is known."""
    return SLOPE_MEAN * sum(
        PALER.get(factor, 0.0) * x
        for (factor, name), x in features.items()
        if factor is not None and not name
    )


def _cholesky(matrix: Sequence[Sequence[float]]) -> tuple[tuple[float, ...], ...]:
    """Return the lower triangle whose square the matrix is."""
    rows: list[tuple[float, ...]] = []
    for i, row in enumerate(matrix):
        found: list[float] = []
        for j in range(i):
            done = sum(a * b for a, b in zip(found, rows[j], strict=False))
            found.append((row[j] - done) / rows[j][j])
        found.append(sqrt(row[i] - sum(x * x for x in found)))
        rows.append(tuple(found))
    return tuple(rows)


def _forward(
    roots: Sequence[Sequence[float]], right: Sequence[float]
) -> tuple[float, ...]:
    found: list[float] = []
    for row, value in zip(roots, right, strict=True):
        done = sum(a * b for a, b in zip(row, found, strict=False))
        found.append((value - done) / row[len(found)])
    return tuple(found)


def _backward(
    roots: Sequence[Sequence[float]], right: Sequence[float]
) -> tuple[float, ...]:
    count = len(roots)
    found = [0.0] * count
    for i in reversed(range(count)):
        done = sum(roots[k][i] * found[k] for k in range(i + 1, count))
        found[i] = (right[i] - done) / roots[i][i]
    return tuple(found)
