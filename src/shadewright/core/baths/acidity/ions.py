"""Ions among ions: how active each is, and how an acid shares out its protons."""

from math import sqrt
from typing import Final

from shadewright.core.tables.acidity import DAVIES

MOST_IONIC_STRENGTH: Final = 0.5
"""Davies' equation is said to hold up to here, in mol/L; beyond it nothing moves."""


def log_activity(*, charge: int, ionic_strength: float, factor: float) -> float:
    """Return the logarithm of an ion's activity coefficient.

    log10 γ = −A z² ( √I / (1 + √I) − 0.3 I )                   (4)

    Parameters
    ----------
    charge : int
        Charge of the ion, z. [-]
    ionic_strength : float
        Half the sum of each ion's concentration times its charge squared, I;
        above 0.5 it is taken as 0.5. [mol/L]
    factor : float
        Factor of the Debye-Hückel limiting law, A. [(L/mol)^0.5]

    Returns
    -------
    float
        log10 γ; 0 for what has no charge. [-]

    Notes
    -----
    Known within some hundredths up to 0.1 mol/L for ions of charge 1, less
    well for citrate of charge 3.

    References
    ----------
    .. [davies1962] chapter 3

    Examples
    --------
    >>> round(log_activity(charge=1, ionic_strength=0.1, factor=0.511), 3)
    -0.107
    """
    strength = min(ionic_strength, MOST_IONIC_STRENGTH)
    root = sqrt(strength)
    return -factor * charge**2 * (root / (1 + root) - DAVIES * strength)


def shares(
    *, ph: float, pka: tuple[float, ...], log_gamma: tuple[float, ...]
) -> tuple[float, ...]:
    """Return the share of an acid that has lost no proton, one, two and so on.

    c_j ∝ 10^( j pH − pKa_1 − … − pKa_j ) / γ_j                 (5)

    Parameters
    ----------
    ph : float
        −log10 of the activity of H+. [-]
    pka : tuple of float
        pKa of each step. [-]
    log_gamma : tuple of float
        log10 of the activity coefficient of each form, j = 0 first. [-]

    Returns
    -------
    tuple of float
        Shares, one more than there are steps; together 1. [-]

    Notes
    -----
    The law of mass action, written for activities.

    Examples
    --------
    >>> shares(ph=4.756, pka=(4.756,), log_gamma=(0.0, 0.0))
    (0.5, 0.5)
    """
    weights = [
        10.0 ** (lost * ph - sum(pka[:lost]) - gamma)
        for lost, gamma in enumerate(log_gamma)
    ]
    whole = sum(weights)
    return tuple(weight / whole for weight in weights)
