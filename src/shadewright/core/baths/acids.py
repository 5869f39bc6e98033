"""Acid: what to weigh or pour, and what to mind while doing so."""

from dataclasses import dataclass

from shadewright.core.baths.auxiliaries import (
    Amount,
    AmountUnit,
    auxiliary_mass_g,
    liquid_volume_ml,
    require_amount,
)
from shadewright.core.quantities import amount_text
from shadewright.core.tables.acids import Acid
from shadewright.errors import MissingError, UnitError

_AS_THE_SHEET_SAYS = "Follow the acid’s safety data sheet and your local rules."


@dataclass(frozen=True, kw_only=True)
class AcidDose:
    """Acid as it is weighed or poured.

    ``pure_g`` is the acid itself; ``volume_ml`` is None for a solid, and for a
    liquid whose strength nobody has given.
    """

    acid: Acid
    strength_g_per_100ml: float | None
    pure_g: float
    volume_ml: float | None


def acid_dose(
    *,
    acid: Acid,
    amount: Amount,
    fibre_mass_g: float | None,
    liquor_volume_ml: float,
    strength_g_per_100ml: float | None = None,
) -> AcidDose:
    """Return acid in grams and, for a liquid of known strength, in millilitres.

    Parameters
    ----------
    acid : Acid
        Which acid, as the studio has it. [-]
    amount : Amount
        How much; millilitres only for a liquid. [-]
    fibre_mass_g : float or None
        Conditioned weight of the fibre; above zero. None where no yarn is
        spoken of: then an amount in % is refused. [g]
    liquor_volume_ml : float
        Volume of the whole bath; above zero. [mL]
    strength_g_per_100ml : float or None
        Strength of a liquid by its label; None to take the acid's own, where
        its name fixes it. [g/100 mL]

    Returns
    -------
    AcidDose
        What to weigh or pour. [-]

    Raises
    ------
    OutOfRangeError
        If an amount or a strength is out of range.
    UnitError
        If a solid is asked for in millilitres or by strength, or a liquid that
        has water in it in grams.
    MissingError
        If millilitres are given of a liquid of unknown strength.

    Examples
    --------
    >>> from shadewright.core.tables.acids import VINEGAR5
    >>> two = Amount(value=2.0, unit=AmountUnit.PERCENT_OWF)
    >>> acid_dose(
    ...     acid=VINEGAR5, amount=two, fibre_mass_g=100.0, liquor_volume_ml=3000.0
    ... ).volume_ml
    40.0
    """
    strength = _strength_of(acid, strength_g_per_100ml)
    pure_g = _pure_mass_g(
        acid,
        amount,
        strength,
        fibre_mass_g=fibre_mass_g,
        liquor_volume_ml=liquor_volume_ml,
    )
    volume_ml = (
        None
        if strength is None
        else liquid_volume_ml(pure_mass_g=pure_g, strength_g_per_100ml=strength)
    )
    return AcidDose(
        acid=acid, strength_g_per_100ml=strength, pure_g=pure_g, volume_ml=volume_ml
    )


def acid_cautions(*, acid: Acid, strength_g_per_100ml: float | None) -> tuple[str, ...]:
    """Return what to mind when this acid is handled, as sentences.

    Parameters
    ----------
    acid : Acid
        Which acid. [-]
    strength_g_per_100ml : float or None
        Strength of a liquid; None where it is not known. [g/100 mL]

    Returns
    -------
    tuple of str
        Sentences in the order in which they matter. [-]

    Notes
    -----
    "Acid into water" is a universal rule of the laboratory (common practice).
    A liquid of unknown strength is taken for a strong one.

    Examples
    --------
    >>> from shadewright.core.tables.acids import VINEGAR5
    >>> acid_cautions(acid=VINEGAR5, strength_g_per_100ml=5.0)[0]
    'Add the acid to the water, never water to acid.'
    """
    into_water = "Add the acid to the water, never water to acid."
    limit = acid.corrosive_from_g_per_100ml
    if limit is None:
        return (f"Keep the dust out of eyes and lungs. {_AS_THE_SHEET_SAYS}",)
    if strength_g_per_100ml is not None and strength_g_per_100ml < limit:
        return (into_water, f"Air the room. {_AS_THE_SHEET_SAYS}")
    strong = (
        f"Strong {acid.name} burns skin and eyes and can do lasting harm: it belongs "
        "in hands trained and licensed for it. A milder one, such as citric acid or "
        f"vinegar, does for most baths. {_AS_THE_SHEET_SAYS}"
    )
    return (into_water, strong)


def _strength_of(acid: Acid, given: float | None) -> float | None:
    if given is None or not acid.is_solid:
        return acid.strength_g_per_100ml if given is None else given
    raise UnitError(
        name=acid.name.capitalize(),
        given=f"@{given:g}%",
        allowed="an amount alone, since it is weighed and has no strength",
        argument="acid",
    )


def _pure_mass_g(
    acid: Acid,
    amount: Amount,
    strength: float | None,
    *,
    fibre_mass_g: float | None,
    liquor_volume_ml: float,
) -> float:
    """Return the pure acid in an amount; only grams of a mixture are ambiguous."""
    if amount.unit is AmountUnit.ML and not acid.is_solid:
        if strength is None:
            raise MissingError(
                name=f"Strength of the {acid.name}",
                advice=f"Write it as {acid.key}@56%, in grams to 100 ml.",
                argument="acid",
            )
        require_amount(amount, name=acid.name, argument="acid")
        return amount.value * strength / 100
    if amount.unit is AmountUnit.G and strength is not None:
        raise UnitError(
            name=f"Amount of {acid.name}",
            given=amount_text(amount.value, "g"),
            allowed="%, ml or g/l, since it is poured",
            argument="acid",
        )
    return auxiliary_mass_g(
        amount=amount,
        fibre_mass_g=fibre_mass_g,
        liquor_volume_ml=liquor_volume_ml,
        name=acid.name,
        argument="acid",
    )
