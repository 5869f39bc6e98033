"""How sour a bath is by its recipe and its water, and what was measured."""

from collections.abc import Iterable
from dataclasses import dataclass

from shadewright.core.baths import liquor_ml
from shadewright.core.baths.acidity import (
    AcidInBath,
    Acidity,
    late_acid,
    wanted_ph_text,
    water_ph,
)
from shadewright.core.tables.acid_doses import AcidHabit
from shadewright.errors import NotFoundError, StudioError
from shadewright.records import recipe_reads
from shadewright.records.models import Dye, RecipeAuxiliary, RecipeVersion
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import BathNow, DoneLine
from shadewright.workflows.known_acids import acid_of, is_sour
from shadewright.workflows.rounds import pure_helper_g
from shadewright.workflows.waters import ShelfWater, usual_water, water

_SOME_YARN_G = 100.0
_MOST_PH = 14.0
_STRANGE = "{} is no acid that this sum knows by its name."
_HABITS = {each.value: each for each in AcidHabit}


@dataclass(frozen=True, kw_only=True)
class BathPh:
    """The pH of a bath's water and acid; ``why_not`` where it cannot be reckoned.

    ``wants`` is what the dyes want, a sentence for each class of them;
    ``habit`` is the class that must be handled most carefully.
    """

    acidity: Acidity | None
    why_not: str
    water: ShelfWater | None
    acids: tuple[AcidInBath, ...]
    wants: tuple[str, ...]
    habit: AcidHabit | None


def ph_of_recipe(version_id: int) -> BathPh:
    """Return how sour a recipe's bath is in the studio's usual water."""
    row = recipe_reads.version_row(version_id)
    ratio = row.liquor_ratio
    return _ph_of(row, fibre_g=_SOME_YARN_G, ratio=ratio, water=usual_water())


def ph_of_wish(
    *, version_id: int, fibre_g: float, liquor_ratio: float, water_id: int | None
) -> BathPh:
    """Return how sour a bath is that could be dyed."""
    row = recipe_reads.version_row(version_id)
    filled = None if water_id is None else water(water_id)
    return _ph_of(row, fibre_g=fibre_g, ratio=liquor_ratio, water=filled)


def ph_of_bath(bath: BathNow) -> BathPh:
    """Return how sour a bath is as it was planned."""
    return ph_of_wish(
        version_id=bath.version_id,
        fibre_g=bath.fibre_g,
        liquor_ratio=bath.liquor_ratio,
        water_id=bath.water_id,
    )


def measured_ph(bath: BathNow) -> DoneLine | None:
    """Return the newest pH that was read of a bath and that can be, or None."""
    read = (x for x in bath.standing if x.act == BathAct.PH and x.value is not None)
    return next((x for x in read if 0.0 <= (x.value or 0.0) <= _MOST_PH), None)


def late_advice(bath: BathNow, found: BathPh) -> tuple[str, ...]:
    """Return what to do about the pH that was measured; nothing where it is right."""
    read = measured_ph(bath)
    if read is None or read.value is None or found.habit is None:
        return ()
    return late_acid(habit=found.habit, measured_ph=read.value)


def habits_of(dyes: Iterable[Dye]) -> tuple[AcidHabit, ...]:
    """Return the classes of some dyes as acid sees them, the most careful last."""
    known = {_HABITS[dye.dye_class] for dye in dyes if dye.dye_class in _HABITS}
    return tuple(habit for habit in AcidHabit if habit in known)


def _ph_of(
    row: RecipeVersion, *, fibre_g: float, ratio: float | None, water: ShelfWater | None
) -> BathPh:
    dyes = [dose.dye for part in row.parts.all() for dose in part.doses.all()]
    habits = habits_of(dye for dye in dyes if dye is not None)
    acidity, acids, why_not = _reckoned(row, fibre_g, ratio, water)
    return BathPh(
        acidity=acidity,
        why_not=why_not,
        water=water,
        acids=acids,
        wants=tuple(_wants(habit) for habit in habits),
        habit=habits[-1] if habits else None,
    )


def _reckoned(
    row: RecipeVersion, fibre_g: float, ratio: float | None, water: ShelfWater | None
) -> tuple[Acidity | None, tuple[AcidInBath, ...], str]:
    """Return the pH and its acids, or why it cannot be reckoned."""
    sour = [each for each in row.auxiliaries.all() if is_sour(each.auxiliary)]
    if not sour:
        return None, (), "No acid stands in the recipe."
    if ratio is None:
        return None, (), "The recipe has no liquor ratio."
    strangers = [e.auxiliary.name for e in sour if acid_of(e.auxiliary) is None]
    if strangers:
        return None, (), _STRANGE.format(" and ".join(f"“{x}”" for x in strangers))
    try:
        acids = tuple(_in_bath(each, fibre_g, ratio) for each in sour)
        alkalinity = None if water is None else water.alkalinity_mg_per_l
        liquor = liquor_ml(fibre_mass_g=fibre_g, liquor_ratio=ratio)
        found = water_ph(
            acids=acids, liquor_ml=liquor, alkalinity_mg_per_l=alkalinity or 0.0
        )
    except StudioError as error:
        return None, (), error.sentence
    return found, acids, ""


def _in_bath(row: RecipeAuxiliary, fibre_g: float, ratio: float) -> AcidInBath:
    acid = acid_of(row.auxiliary)
    if acid is None:
        raise NotFoundError(kind="acid", key=row.auxiliary.name)
    pure_g = pure_helper_g(row, fibre_g=fibre_g, liquor_ratio=ratio)
    return AcidInBath(acid=acid, pure_g=pure_g)


def _wants(habit: AcidHabit) -> str:
    return f"{habit.capitalize()} dyes want {wanted_ph_text(habit=habit)}."
