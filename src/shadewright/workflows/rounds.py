"""The round of a planned bath, for the bench, the card and the typed-back card."""

from shadewright.core.baths import (
    Amount,
    AmountUnit,
    WaterBalance,
    auxiliary_mass_g,
    liquid_volume_ml,
    liquor_ml,
    water_balance,
    water_in_wet_yarn_ml,
)
from shadewright.core.baths.rounds import (
    DoseWanted,
    HelperWanted,
    Moment,
    RoundStep,
    RoundWanted,
    bath_round,
    touch_minutes,
)
from shadewright.core.quantities import rounded_to_step
from shadewright.core.solutions import filled_mass_g
from shadewright.records.models import Bath, BathDose, RecipeAuxiliary, RecipeVersion
from shadewright.records.models.catalogue import AuxiliaryKind
from shadewright.records.models.recipes import AmountUnit as RecipeUnit
from shadewright.workflows.recipe_curves import programme_of, stops_of

_UNITS = {
    RecipeUnit.ON_FIBRE.value: AmountUnit.PERCENT_OWF,
    RecipeUnit.PER_LITRE.value: AmountUnit.G_PER_L,
}
ACIDS = {AuxiliaryKind.ACID.value, AuxiliaryKind.ACID_SALT.value}


def round_of(bath: Bath, *, heating: str = "") -> tuple[RoundStep, ...]:
    """Return the steps of a bath as it was planned, its heat as words tell it."""
    said = bath.version
    helpers = helpers_of(said, fibre_g=bath.fibre_g, liquor_ratio=bath.liquor_ratio)
    return bath_round(
        RoundWanted(
            water_ml=_fresh_water_ml(bath, helpers),
            doses=[
                _dose(row, is_by_weight=bath.is_by_weight) for row in bath.doses.all()
            ],
            helpers=helpers,
            programme=programme_of(said, stops_of(said.curve)),
            heating=heating,
            look_at_15=said.look_at_15,
            ties=said.ties,
            stirring=said.stirring,
            pot_kg=_heavy_kg(bath),
            is_metal_complex=any(row.dye.is_metal_complex for row in bath.doses.all()),
        )
    )


def helpers_of(
    version: RecipeVersion, *, fibre_g: float, liquor_ratio: float
) -> tuple[HelperWanted, ...]:
    """Return a recipe's auxiliaries as a bath of that size takes them."""
    return tuple(
        _helper(row, fibre_g=fibre_g, liquor_ratio=liquor_ratio)
        for row in version.auxiliaries.all()
    )


def water_of(
    *,
    fibre_g: float,
    liquor_ratio: float,
    wet_yarn_g: float | None,
    stock_ml: float,
    helpers: tuple[HelperWanted, ...],
) -> WaterBalance:
    """Return where the liquor comes from: stock, liquids and wet yarn are counted."""
    wet_ml = 0.0
    if wet_yarn_g is not None:
        wet_ml = water_in_wet_yarn_ml(wet_mass_g=wet_yarn_g, fibre_mass_g=fibre_g)
    return water_balance(
        fibre_mass_g=fibre_g,
        liquor_ratio=liquor_ratio,
        stock_ml=stock_ml,
        other_ml=sum(each.amount for each in helpers if each.unit == "ml"),
        wet_yarn_ml=wet_ml,
    )


def _fresh_water_ml(bath: Bath, helpers: tuple[HelperWanted, ...]) -> float:
    return water_of(
        fibre_g=bath.fibre_g,
        liquor_ratio=bath.liquor_ratio,
        wet_yarn_g=bath.wet_yarn_g,
        stock_ml=sum(row.volume_ml or 0.0 for row in bath.doses.all()),
        helpers=helpers,
    ).fresh_water_ml


def _dose(row: BathDose, *, is_by_weight: bool) -> DoseWanted:
    if row.bottle is None or row.volume_ml is None:
        return DoseWanted(dye=row.dye.name, code="", amount=row.dye_g, unit="g")
    mass_g = filled_mass_g(volume_ml=row.volume_ml, powder_g=row.dye_g)
    if not is_by_weight:
        return DoseWanted(
            dye=row.dye.name,
            code=row.bottle.code,
            amount=row.volume_ml,
            unit="ml",
            scale_g=mass_g,
        )
    return DoseWanted(
        dye=row.dye.name,
        code=row.bottle.code,
        amount=shown_g(mass_g, step_g=step_of_scale_g(row)),
        unit="g",
        volume_ml=row.volume_ml,
    )


def step_of_scale_g(row: BathDose) -> float | None:
    """Return the step of the scale that a dose goes on, if it is known."""
    return None if row.tool is None else row.tool.readability


def shown_g(mass_g: float, *, step_g: float | None) -> float:
    """Return a mass as the scale can show it."""
    return rounded_to_step(mass_g, step=step_g) if step_g else mass_g


def _helper(
    row: RecipeAuxiliary, *, fibre_g: float, liquor_ratio: float
) -> HelperWanted:
    amount, unit = _amount(row, fibre_g=fibre_g, liquor_ratio=liquor_ratio)
    return HelperWanted(
        name=row.auxiliary.name,
        amount=amount,
        unit=unit,
        moment=Moment(row.when),
        is_acid=row.auxiliary.kind in ACIDS,
        at_c=row.at_c,
    )


def _amount(
    row: RecipeAuxiliary, *, fibre_g: float, liquor_ratio: float
) -> tuple[float, str]:
    pure_g = pure_helper_g(row, fibre_g=fibre_g, liquor_ratio=liquor_ratio)
    strength = row.auxiliary.strength_g_per_100_ml
    if row.auxiliary.is_liquid and strength:
        volume_ml = liquid_volume_ml(pure_mass_g=pure_g, strength_g_per_100ml=strength)
        return volume_ml, "ml"
    return pure_g, "g"


def pure_helper_g(
    row: RecipeAuxiliary, *, fibre_g: float, liquor_ratio: float
) -> float:
    """Return how much of the pure chemical a bath takes."""
    return auxiliary_mass_g(
        amount=Amount(value=row.amount, unit=_UNITS[row.unit]),
        fibre_mass_g=fibre_g,
        liquor_volume_ml=liquor_ml(fibre_mass_g=fibre_g, liquor_ratio=liquor_ratio),
    )


def _heavy_kg(bath: Bath) -> float:
    pot_kg = 0.0 if bath.pot is None else bath.pot.mass_kg or 0.0
    return pot_kg + bath.liquor_ml / 1000


def touches_of(bath: Bath) -> tuple[float, ...]:
    """Return the minutes after the rise begins at which hands are wanted in it."""
    return touch_minutes(steps=round_of(bath))
