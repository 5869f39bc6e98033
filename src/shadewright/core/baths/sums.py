"""The whole sum of a bath: doses, liquor, acid, salt, and what to mind."""

from dataclasses import dataclass, replace
from math import fsum

from shadewright.core.baths.acids import AcidDose, acid_cautions, acid_dose
from shadewright.core.baths.auxiliaries import Amount
from shadewright.core.baths.depth import depth_caution, total_depth_percent
from shadewright.core.baths.doses import Dose
from shadewright.core.baths.liquor import (
    WaterBalance,
    excess_caution,
    liquor_ml,
    water_balance,
    water_in_wet_yarn_ml,
)
from shadewright.core.baths.measuring_out import (
    NOTHING_NAMED,
    MeasuredDose,
    MeasuredWith,
    measured_dose,
)
from shadewright.core.baths.salts import SaltDose, salt_caution, salt_dose
from shadewright.core.quantities import MOST_VOLUME_ML, require_between
from shadewright.core.tables.acids import Acid
from shadewright.core.tables.dye_classes import DyeClass
from shadewright.core.tables.salts import Salt
from shadewright.core.uncertainty.sampling import RandomSource
from shadewright.errors import MissingError

POWDER_CAUTION = (
    "Dry dye is weighed: wear a fitted N95/FFP2 respirator or better, goggles and "
    "gloves until all powder is wet. Follow the dye’s safety data sheet."
)


@dataclass(frozen=True, kw_only=True)
class AcidWanted:
    """Which acid and how much; the strength of a liquid where its label says."""

    acid: Acid
    amount: Amount
    strength_g_per_100ml: float | None = None


@dataclass(frozen=True, kw_only=True)
class SaltWanted:
    """Which form of Glauber's salt and how much."""

    salt: Salt
    amount: Amount


@dataclass(frozen=True, kw_only=True)
class BathWanted:
    """Everything that is said of a bath before it is reckoned.

    ``wet_yarn_g`` is the yarn with the water it was wetted out in.
    """

    fibre_mass_g: float
    doses: tuple[Dose, ...]
    liquor_ratio: float
    acid: AcidWanted | None = None
    salt: SaltWanted | None = None
    wet_yarn_g: float | None = None
    dye_class: DyeClass | None = None
    measured_with: MeasuredWith = NOTHING_NAMED


@dataclass(frozen=True, kw_only=True)
class BathSum:
    """A bath as it is put together at the pot; ``warnings`` are sentences."""

    doses: tuple[MeasuredDose, ...]
    total_depth_percent: float
    water: WaterBalance
    acid: AcidDose | None
    salt: SaltDose | None
    warnings: tuple[str, ...]


def bath_sum(*, wanted: BathWanted, generator: RandomSource | None = None) -> BathSum:
    """Return what goes into a bath, and what to mind.

    Parameters
    ----------
    wanted : BathWanted
        Fibre, doses, liquor ratio, acid, salt and tools. [-]
    generator : RandomSource or None
        What draws lots for very unsure doses; seeded by the caller. [-]

    Returns
    -------
    BathSum
        Doses, water balance, acid, salt and warnings. [-]

    Raises
    ------
    MissingError
        If there is no dose.
    OutOfRangeError
        If a number is out of range.
    UnitError
        If an auxiliary is counted in a unit that does not fit it.

    Notes
    -----
    Solids (dry dye, salt, citric acid) are taken to add no volume. Source:
    common practice.

    Examples
    --------
    >>> gorse = Dose(dye="Gorse", depth_percent=0.6, strength_percent=1.0)
    >>> bath = bath_sum(
    ...     wanted=BathWanted(fibre_mass_g=100.0, doses=(gorse,), liquor_ratio=30.0)
    ... )
    >>> bath.water.fresh_water_ml
    2940.0
    """
    if not wanted.doses:
        raise MissingError(
            name="Dose", advice="Name a dye and its depth.", argument="doses"
        )
    doses = tuple(
        measured_dose(
            dose=dose,
            fibre_mass_g=wanted.fibre_mass_g,
            measured_with=wanted.measured_with,
            generator=generator,
        )
        for dose in wanted.doses
    )
    acid = _acid(wanted)
    reckoned = BathSum(
        doses=doses,
        total_depth_percent=total_depth_percent(
            depths_percent=tuple(dose.depth_percent for dose in doses)
        ),
        water=_water(wanted, doses, acid),
        acid=acid,
        salt=_salt(wanted),
        warnings=(),
    )
    return replace(reckoned, warnings=_warnings(reckoned, wanted.dye_class))


def _liquor_ml(wanted: BathWanted) -> float:
    return liquor_ml(fibre_mass_g=wanted.fibre_mass_g, liquor_ratio=wanted.liquor_ratio)


def _acid(wanted: BathWanted) -> AcidDose | None:
    if wanted.acid is None:
        return None
    return acid_dose(
        acid=wanted.acid.acid,
        amount=wanted.acid.amount,
        fibre_mass_g=wanted.fibre_mass_g,
        liquor_volume_ml=_liquor_ml(wanted),
        strength_g_per_100ml=wanted.acid.strength_g_per_100ml,
    )


def _salt(wanted: BathWanted) -> SaltDose | None:
    if wanted.salt is None:
        return None
    return salt_dose(
        salt=wanted.salt.salt,
        amount=wanted.salt.amount,
        fibre_mass_g=wanted.fibre_mass_g,
        liquor_volume_ml=_liquor_ml(wanted),
    )


def _water(
    wanted: BathWanted, doses: tuple[MeasuredDose, ...], acid: AcidDose | None
) -> WaterBalance:
    """Count stock, liquid acid and wet yarn against the liquor."""
    wet_yarn_ml = (
        0.0
        if wanted.wet_yarn_g is None
        else water_in_wet_yarn_ml(
            wet_mass_g=wanted.wet_yarn_g, fibre_mass_g=wanted.fibre_mass_g
        )
    )
    return water_balance(
        fibre_mass_g=wanted.fibre_mass_g,
        liquor_ratio=wanted.liquor_ratio,
        stock_ml=_stock_ml(doses),
        other_ml=(acid.volume_ml or 0.0) if acid else 0.0,
        wet_yarn_ml=wet_yarn_ml,
    )


def _stock_ml(doses: tuple[MeasuredDose, ...]) -> float:
    """Return all stock together, which must be no more than a studio holds."""
    return require_between(
        fsum(dose.stock_ml or 0.0 for dose in doses),
        least=0.0,
        most=MOST_VOLUME_ML,
        unit="ml",
        name="Stock for all doses",
        argument="doses",
        advice="Take stronger stocks.",
    )


def _warnings(bath: BathSum, dye_class: DyeClass | None) -> tuple[str, ...]:
    """Return every caution of a bath: powder, acid, salt, depth, water."""
    cautions: list[str | None] = []
    if any(dose.stock_ml is None for dose in bath.doses):
        cautions.append(POWDER_CAUTION)
    if bath.acid:
        cautions += acid_cautions(
            acid=bath.acid.acid, strength_g_per_100ml=bath.acid.strength_g_per_100ml
        )
    if bath.salt:
        cautions.append(salt_caution(dye_class=dye_class))
    cautions += [
        depth_caution(total_depth_percent=bath.total_depth_percent),
        excess_caution(water=bath.water),
    ]
    return tuple(caution for caution in cautions if caution)
