"""A spent bath made neutral before it is poured away."""

from collections.abc import Sequence
from typing import Final

from shadewright.core.baths.acidity.water import AcidInBath, families_of
from shadewright.core.quantities import require_mass
from shadewright.core.tables.acidity import (
    AMMONIA,
    BICARBONATE_G_PER_MOL,
    AcidFamily,
)

SPENT_STEPS: Final = (
    "Take the yarn out and let the bath cool.",
    (
        "Stir the bicarbonate in slowly, a little at a time: it foams over in a full "
        "or a hot pot. The gas is carbon dioxide: air the room."
    ),
    (
        "Stop when it foams no more, or when a strip reads pH 6 to 8. Yarn and water "
        "have taken some of the acid, so less than the whole amount may do."
    ),
    (
        "Where the bath may go then is for your sewer authority and the safety data "
        "sheets to say: never into a storm drain, and ask first if a dye holds a metal."
    ),
)


def bicarbonate_g(*, acids: Sequence[AcidInBath]) -> float:
    """Return the bicarbonate of soda that takes up all the acid of a bath.

    m = 84.006 Σ n m_acid / M_acid                              (10)

    Parameters
    ----------
    acids : sequence of AcidInBath
        The acids that went in. [-]

    Returns
    -------
    float
        Sodium hydrogen carbonate, m: the most that can be needed. [g]

    Raises
    ------
    OutOfRangeError
        If a mass is not above zero.

    Notes
    -----
    n counts the protons of an acid; an ammonium salt is left out, since it is
    nearly neutral in the cold. What fibre and water took is not known, so this
    is an upper bound. Source: arithmetic with the weights of [ciaaw2021]_.

    Examples
    --------
    >>> from shadewright.core.tables.acids import ACETIC
    >>> round(bicarbonate_g(acids=[AcidInBath(acid=ACETIC, pure_g=2.0)]), 1)
    2.8
    """
    whole = 0.0
    for each in acids:
        require_mass(each.pure_g, name=f"Amount of {each.acid.name}", argument="acids")
        moles = each.pure_g / each.acid.molar_mass_g_per_mol
        brings = families_of(each.acid)
        if AMMONIA not in brings:
            whole += moles * sum(_protons(family) for family in brings)
    return BICARBONATE_G_PER_MOL * whole


def _protons(family: AcidFamily) -> int:
    return len(family.pka) - family.charge
