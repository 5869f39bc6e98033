"""One acid for another: how much of it gives up as much acid.

There is no one answer. All the acid that a gram holds is one basis; what it has
given up once the bath is at pH 4.5 is another. Citric acid holds three protons
and keeps the last one long after vinegar has given up its own, so on the first
basis a little of it is enough, and on the second a little less, or at pH 5.5
nearly a half more. What is commonly said agrees with neither.
"""

from dataclasses import dataclass
from typing import Final

from shadewright.core.baths.acidity.ions import shares
from shadewright.core.baths.acidity.water import families_of
from shadewright.core.quantities import require_between, require_mass
from shadewright.core.tables.acid_doses import CITRIC_SAID_G_PER_100ML_VINEGAR
from shadewright.core.tables.acidity import AMMONIA
from shadewright.core.tables.acids import CITRIC, VINEGAR5, Acid
from shadewright.errors import NoAnswerError

LEAST_PH, MOST_PH = 2.0, 8.0
"""Below, hardly any acid is given up; above, all of it is."""


@dataclass(frozen=True, kw_only=True)
class Said:
    """What is commonly said: from so much to so much of the acid that is wanted."""

    least_g: float
    most_g: float


def protons_given(*, acid: Acid, by_ph: float | None) -> float:
    """Return the protons that a molecule of an acid gives up by a pH.

    n = Σ j c_j / Σ c_j                                         (8)

    Parameters
    ----------
    acid : Acid
        The acid. [-]
    by_ph : float or None
        The pH that the bath comes to, 2 to 8; None for all that it holds. [-]

    Returns
    -------
    float
        Protons, n. [-]

    Raises
    ------
    OutOfRangeError
        If the pH lies outside.
    NoAnswerError
        If it is an ammonium salt, which gives acid as its ammonia leaves.

    Notes
    -----
    At 25 °C, all activity coefficients taken as 1. Citric acid counts with its
    three protons, sulphuric with both.

    Examples
    --------
    >>> round(protons_given(acid=VINEGAR5, by_ph=4.756), 2)
    0.5
    """
    if AMMONIA in families_of(acid):
        raise _AmmoniumSaltError
    ((family, _count),) = families_of(acid).items()
    steps = len(family.pka)
    first = -family.charge  # sulphuric acid has given its first one already
    if by_ph is None:
        return float(first + steps)
    require_between(
        by_ph, least=LEAST_PH, most=MOST_PH, unit="", name="pH", argument="by_ph"
    )
    found = shares(ph=by_ph, pka=family.pka, log_gamma=(0.0,) * (steps + 1))
    return first + sum(lost * share for lost, share in enumerate(found))


def equivalent_g(
    *, pure_g: float, have: Acid, want: Acid, by_ph: float | None
) -> float:
    """Return the grams of one pure acid that give up as much as those of another.

    m_want = m_have (n_have / M_have) (M_want / n_want)         (9)

    Parameters
    ----------
    pure_g : float
        Pure acid that there is, m_have. [g]
    have : Acid
        The acid that it is. [-]
    want : Acid
        The acid to take in its place. [-]
    by_ph : float or None
        The basis: acid given up by this pH, 2 to 8; None for all of it. [-]

    Returns
    -------
    float
        Pure acid to take, m_want. [g]

    Raises
    ------
    OutOfRangeError
        If the mass is not above zero or the pH lies outside.
    NoAnswerError
        If one of them is an ammonium salt.

    Notes
    -----
    See ``protons_given``. Whether the colour comes out alike is another matter.

    Examples
    --------
    100 ml of vinegar, all its acid:

    >>> round(equivalent_g(pure_g=5.0, have=VINEGAR5, want=CITRIC, by_ph=None), 2)
    5.33
    """
    require_mass(pure_g, name="Acid", argument="pure_g")
    given = protons_given(acid=have, by_ph=by_ph) / have.molar_mass_g_per_mol
    wanted = protons_given(acid=want, by_ph=by_ph) / want.molar_mass_g_per_mol
    return pure_g * given / wanted


def commonly_said(*, pure_g: float, have: Acid, want: Acid) -> Said | None:
    """Return what is commonly said of citric acid in place of vinegar, or None.

    Parameters
    ----------
    pure_g : float
        Acetic acid in the vinegar, or citric acid. [g]
    have : Acid
        The acid that it is. [-]
    want : Acid
        The acid to take in its place. [-]

    Returns
    -------
    Said or None
        The least and the most, in grams of the pure acid. [g]

    Raises
    ------
    OutOfRangeError
        If the mass is not above zero.

    Notes
    -----
    Common practice: printed advice spreads sixfold. Shown beside what is
    reckoned, never instead of it.

    Examples
    --------
    >>> commonly_said(pure_g=5.0, have=VINEGAR5, want=CITRIC)
    Said(least_g=5.0, most_g=30.0)
    """
    require_mass(pure_g, name="Acid", argument="pure_g")
    few, many = (
        min(CITRIC_SAID_G_PER_100ML_VINEGAR),
        max(CITRIC_SAID_G_PER_100ML_VINEGAR),
    )
    vinegars = 100 * pure_g / _VINEGAR_G_PER_100ML
    match have.key, want.key:
        case VINEGAR5.key, CITRIC.key:
            return Said(least_g=few * vinegars / 100, most_g=many * vinegars / 100)
        case CITRIC.key, VINEGAR5.key:
            worth = _VINEGAR_G_PER_100ML * pure_g
            return Said(least_g=worth / many, most_g=worth / few)
        case _:
            return None


_VINEGAR_G_PER_100ML: Final = 5.0


class _AmmoniumSaltError(NoAnswerError):
    """An ammonium salt was to be set against an acid."""

    argument = "acid"

    def __str__(self) -> str:
        """Say why there is no answer."""
        return (
            "An ammonium salt gives its acid only as ammonia leaves the hot bath, so "
            "no amount of it stands for a given amount of acid."
        )
