"""How far a colour may come out from where it is foretold, in one number or two.

A covariance in Lab is drawn eight hundred times, always the same draws, and each draw
measured by CIEDE2000. The mean is the difference to expect; nine in ten lie below the
other. Against a target that the recipe itself misses, the same draws say how often
the pot will come within tolerance.
"""

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_DRAWS = 400
_STEP = 0.5
NINE_IN_TEN = 90.0


@dataclass(frozen=True, kw_only=True, eq=False)
class Spread:
    """Of each colour: the difference to expect, and the one not passed in 90 %."""

    expected: "Floats"
    de_90: "Floats"


@cache
def fixed_draws() -> "Floats":
    """Return eight hundred directions for the error of a colour, always the same.

    Returns
    -------
    ndarray, shape (800, 3)
        Standard normal, each with its opposite. [1]
    """
    import numpy as np

    half = np.random.default_rng(0).standard_normal((_DRAWS, 3))
    whole = np.concatenate([half, -half])
    whole.setflags(write=False)
    return whole


def drawn_colours(lab: "Floats", covariance: "Floats") -> "Floats":
    """Return where colours may come out, by their covariance.

    Parameters
    ----------
    lab : ndarray, shape (n, 3)
        Colours foretold. [1]
    covariance : ndarray, shape (n, 3, 3)
        Their covariance. [1]

    Returns
    -------
    ndarray, shape (n, 800, 3)
        Colours drawn. [1]
    """
    import numpy as np

    sizes, turned = np.linalg.eigh(covariance)
    root = turned * np.sqrt(np.maximum(sizes, 0.0))[:, None, :]
    found: Floats = lab[:, None] + np.einsum("kij,mj->kmi", root, fixed_draws())
    return found


def spread_of(lab: "Floats", covariance: "Floats") -> Spread:
    """Return how far colours may come out from where they are foretold.

    Parameters
    ----------
    lab : ndarray, shape (n, 3)
        Colours foretold. [1]
    covariance : ndarray, shape (n, 3, 3)
        Their covariance. [1]

    Returns
    -------
    Spread
        CIEDE2000: mean, and nine in ten. [1]
    """
    import numpy as np

    away = ciede2000_arrays(lab[:, None], drawn_colours(lab, covariance))
    return Spread(expected=away.mean(1), de_90=np.percentile(away, NINE_IN_TEN, axis=1))


def as_lots_differ(covariance: "Floats", lot: "Floats", *, repeats: float) -> "Floats":
    """Return a covariance that is no surer than the studio's own lots repeat.

    V + (s² − tr V_lot / 3)⁺ I                                       (6)

    Parameters
    ----------
    covariance : ndarray, shape (n, 3, 3)
        Of each colour, V. [1]
    lot : ndarray, shape (n, 3, 3)
        What of it differs from lot to lot, the day and the doses, V_lot. [1]
    repeats : float
        What each number of Lab scatters by between lots of one recipe, s; 0 where
        that is not known. [1]

    Returns
    -------
    ndarray, shape (n, 3, 3)
        The same, widened where the day and the doses explain less than is seen. [1]

    Notes
    -----
    It never narrows: that lots repeat well is no word on a recipe that was not dyed.
    Our own choice.
    """
    import numpy as np

    mean = np.trace(lot, axis1=1, axis2=2) / 3.0
    short = np.maximum(repeats**2 - mean, 0.0)
    found: Floats = covariance + short[:, None, None] * np.eye(3)
    return found


def expected_to(lab: "Floats", covariance: "Floats", target: "Floats") -> "Floats":
    """Return the difference to expect between what comes out and a target.

    Parameters
    ----------
    lab : ndarray, shape (n, 3)
        Colours foretold. [1]
    covariance : ndarray, shape (n, 3, 3)
        Their covariance. [1]
    target : ndarray, shape (3,)
        What is wanted. [1]

    Returns
    -------
    ndarray, shape (n,)
        Mean CIEDE2000. [1]
    """
    drawn = drawn_colours(lab, covariance)
    found: Floats = ciede2000_arrays(target, drawn).mean(1)
    return found


def chance_within(
    lab: "Floats", covariance: "Floats", target: "Floats", *, tolerance: float
) -> "Floats":
    """Return how often what comes out lies within a tolerance of a target.

    Parameters
    ----------
    lab : ndarray, shape (n, 3)
        Colours foretold. [1]
    covariance : ndarray, shape (n, 3, 3)
        Their covariance. [1]
    target : ndarray, shape (3,)
        What is wanted. [1]
    tolerance : float
        CIEDE2000 that still passes. [1]

    Returns
    -------
    ndarray, shape (n,)
        Shares from 0 to 1. [1]
    """
    drawn = drawn_colours(lab, covariance)
    found: Floats = (ciede2000_arrays(target, drawn) <= tolerance).mean(1)
    return found


def local_metric(lab: "Floats") -> "Floats":
    """Return how a small step in Lab counts in CIEDE2000, at each colour.

    ΔE(y, y + d) ≈ |F d| for small d                                 (2)

    Parameters
    ----------
    lab : ndarray, shape (n, 3)
        Colours, y. [1]

    Returns
    -------
    ndarray, shape (n, 3, 3)
        F, from squared differences over steps of 0.5. [1]
    """
    import numpy as np

    steps = np.eye(3) * _STEP

    def squared(step: "Floats") -> "Floats":
        found: Floats = ciede2000_arrays(lab, lab + step) ** 2
        return found

    alone = [squared(step) for step in steps]
    form = np.empty((len(lab), 3, 3))
    for i in range(3):
        for j in range(3):
            both = squared(steps[i] + steps[j])
            form[:, i, j] = alone[i] if i == j else (both - alone[i] - alone[j]) / 2.0
    sizes, turned = np.linalg.eigh(form / _STEP**2)
    root = np.sqrt(np.maximum(sizes, 0.0))[:, :, None]
    found: Floats = root * turned.transpose(0, 2, 1)
    return found
