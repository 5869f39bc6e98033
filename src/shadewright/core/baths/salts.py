"""Glauber's salt: its two forms, its dose, and the dyes that it must not meet.

The salt holds levelling and half-milling dyes back and lets them lie even. At
the pH of milling and super-milling dyes it drives them on instead.
"""

from dataclasses import dataclass

from shadewright.core.baths.auxiliaries import Amount, auxiliary_mass_g
from shadewright.core.tables.dye_classes import CLASS_FACTS, DyeClass
from shadewright.core.tables.salts import (
    GLAUBER_ANHYDROUS,
    GLAUBER_DECAHYDRATE,
    Salt,
)

_CRYSTALS_PER_ANHYDROUS = (
    GLAUBER_DECAHYDRATE.molar_mass_g_per_mol / GLAUBER_ANHYDROUS.molar_mass_g_per_mol
)


@dataclass(frozen=True, kw_only=True)
class SaltDose:
    """Glauber's salt as it is weighed, and the same in either form."""

    salt: Salt
    mass_g: float
    anhydrous_g: float
    decahydrate_g: float


def decahydrate_mass_g(*, anhydrous_mass_g: float) -> float:
    """Return the crystals that hold a mass of anhydrous Glauber's salt.

    m_10 = m_0 M_10 / M_0 = 2.268 m_0                         (19)

    Parameters
    ----------
    anhydrous_mass_g : float
        Anhydrous salt, m_0. [g]

    Returns
    -------
    float
        Decahydrate ("crystals") with as much sodium sulphate, m_10. [g]

    Notes
    -----
    Molar masses from [ciaaw2021]_. Crystals that have lain open lose water and
    turn to powder; then they are stronger than this.

    Examples
    --------
    >>> round(decahydrate_mass_g(anhydrous_mass_g=5.0), 2)
    11.34
    """
    return anhydrous_mass_g * _CRYSTALS_PER_ANHYDROUS


def anhydrous_mass_g(*, decahydrate_mass_g: float) -> float:
    """Return the anhydrous Glauber's salt in a mass of crystals.

    m_0 = m_10 M_0 / M_10 = 0.4409 m_10                       (20)

    Parameters
    ----------
    decahydrate_mass_g : float
        Decahydrate ("crystals"), m_10. [g]

    Returns
    -------
    float
        Anhydrous salt with as much sodium sulphate, m_0. [g]

    Examples
    --------
    >>> round(anhydrous_mass_g(decahydrate_mass_g=10.0), 2)
    4.41
    """
    return decahydrate_mass_g / _CRYSTALS_PER_ANHYDROUS


def salt_dose(
    *, salt: Salt, amount: Amount, fibre_mass_g: float, liquor_volume_ml: float
) -> SaltDose:
    """Return Glauber's salt as it is weighed, and the same in both forms.

    Parameters
    ----------
    salt : Salt
        The form in the jar, which the amount counts. [-]
    amount : Amount
        How much; never in millilitres. [-]
    fibre_mass_g : float
        Conditioned weight of the fibre; above zero. [g]
    liquor_volume_ml : float
        Volume of the whole bath; above zero. [mL]

    Returns
    -------
    SaltDose
        What to weigh. [-]

    Raises
    ------
    OutOfRangeError
        If an amount is out of range.
    UnitError
        If the amount is in millilitres.

    Examples
    --------
    >>> from shadewright.core.baths.auxiliaries import AmountUnit
    >>> five = Amount(value=5.0, unit=AmountUnit.PERCENT_OWF)
    >>> salt_dose(
    ...     salt=GLAUBER_ANHYDROUS,
    ...     amount=five,
    ...     fibre_mass_g=100.0,
    ...     liquor_volume_ml=3000.0,
    ... ).mass_g
    5.0
    """
    mass_g = auxiliary_mass_g(
        amount=amount,
        fibre_mass_g=fibre_mass_g,
        liquor_volume_ml=liquor_volume_ml,
        name=salt.name,
        argument="salt",
    )
    is_dry = salt == GLAUBER_ANHYDROUS
    return SaltDose(
        salt=salt,
        mass_g=mass_g,
        anhydrous_g=mass_g if is_dry else anhydrous_mass_g(decahydrate_mass_g=mass_g),
        decahydrate_g=decahydrate_mass_g(anhydrous_mass_g=mass_g) if is_dry else mass_g,
    )


def salt_caution(*, dye_class: DyeClass | None) -> str | None:
    """Return a caution on Glauber's salt with a class of dye, or None.

    Parameters
    ----------
    dye_class : DyeClass or None
        Class of the dyes in the bath; None where nobody has said. [-]

    Returns
    -------
    str or None
        A sentence, or None where the class takes the salt. [-]

    Notes
    -----
    Source: [broadbent2001]_, p. 246.

    Examples
    --------
    >>> salt_caution(dye_class=DyeClass.LEVELLING) is None
    True
    """
    if dye_class is None:
        return (
            "Glauber’s salt is for levelling and half-milling dyes only: with milling "
            "and super-milling dyes it hinders level dyeing. Look up your dye’s class."
        )
    if CLASS_FACTS[dye_class].takes_glauber_salt:
        return None
    return (
        f"Leave the Glauber’s salt out: with {dye_class} dyes it drives the dye on "
        "faster and hinders level dyeing."
    )
