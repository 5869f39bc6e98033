"""Planning a bath: from a recipe and weighed yarn to doses out of bottles."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from uuid import UUID

from django.db import transaction

from shadewright.core.baths import dye_mass_g, liquor_ml
from shadewright.core.baths.choosing import (
    BottleShare,
    Candidate,
    chosen_bottles,
)
from shadewright.core.quantities import amount_text
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathDose, Pot, StockBottle
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.recipes import version
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.stamps import Stamp

METHOD = "doses on weight of fibre, 1"
ROOM_TO_SPARE = 1.1
SWATCH_MOST_G = 20.0


@dataclass(frozen=True, kw_only=True)
class BathWish:
    """What is said of a bath before it is planned."""

    version_id: int
    base_id: int
    fibre_g: float
    dyed_on: date
    mill_lot_id: int | None = None
    pot_id: int | None = None
    wet_yarn_g: float | None = None
    skeins: int | None = None
    liquor_ratio: float | None = None
    is_swatch: bool = False
    notes: str = ""


@dataclass(frozen=True, kw_only=True)
class PlannedDose:
    """A dose of a planned bath: its depth, its dye, and where it comes from."""

    dye_id: int
    dye_name: str
    depth_percent: float
    dye_g: float
    shares: tuple[BottleShare, ...]
    missing_g: float = 0.0


@dataclass(frozen=True, kw_only=True)
class BathPlan:
    """A bath that could be dyed: doses and liquor, and what stands in its way."""

    wish: BathWish
    version: Version
    liquor_ratio: float
    liquor_ml: float
    doses: tuple[PlannedDose, ...] = field(default=())
    troubles: tuple[str, ...] = field(default=())


def plan_bath(wish: BathWish) -> BathPlan:
    """Say what a bath takes; refused where there is no yarn, recipe or room."""
    recipe = version(wish.version_id)
    if not recipe.is_complete:
        raise ConflictError(
            why=f"The recipe is incomplete: {recipe.what_is_missing}.",
            advice="Write a version of it with dyes and depths first.",
            argument="version",
        )
    ratio = wish.liquor_ratio or recipe.text.liquor_ratio or 0.0
    _check_yarn(wish)
    bath_ml = liquor_ml(fibre_mass_g=wish.fibre_g, liquor_ratio=ratio)
    if wish.pot_id is not None:
        _check_room(recipe_reads.pot_row(wish.pot_id), bath_ml, ratio)
    doses = tuple(_doses(recipe, wish.fibre_g, bath_ml))
    return BathPlan(
        wish=wish,
        version=recipe,
        liquor_ratio=ratio,
        liquor_ml=bath_ml,
        doses=doses,
        troubles=tuple(_short(dose) for dose in doses if dose.missing_g),
    )


@transaction.atomic
def keep_bath(*, wish: BathWish, stamp: Stamp) -> str:
    """Plan a bath for good and return its number, which is never used again."""
    kept = recipe_reads.bath_of_deed(stamp.deed)
    if kept is not None:
        return kept.number
    recipe_reads.lock_numbers()
    plan = plan_bath(wish)
    row = Bath.objects.create(
        number=_free_number(wish),
        deed=stamp.deed,
        version_id=wish.version_id,
        base=recipe_reads.base_row(wish.base_id),
        mill_lot_id=_mill_lot_id(wish),
        pot_id=wish.pot_id,
        is_swatch=wish.is_swatch,
        dyed_on=wish.dyed_on,
        fibre_g=wish.fibre_g,
        wet_yarn_g=wish.wet_yarn_g,
        skeins=wish.skeins,
        liquor_ratio=plan.liquor_ratio,
        notes=wish.notes.strip(),
        method=METHOD,
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    for position, dose in enumerate(plan.doses, start=1):
        _keep_dose(row, position, dose)
    return row.number


def candidates(dye_id: int, bottles: Sequence[ShelfBottle]) -> list[Candidate]:
    """Return a dye's bottles as core weighs them against each other."""
    return [
        Candidate(
            code=each.code,
            strength_percent=each.strength_percent,
            usable_ml=each.usable_ml,
            age_days=each.age.days,
            is_good=not (each.is_settled or each.is_past or each.is_void),
        )
        for each in bottles
        if each.dye_id == dye_id
    ]


def is_planned(deed: UUID) -> bool:
    """Whether this deed has planned its bath already."""
    return recipe_reads.bath_of_deed(deed) is not None


def _doses(recipe: Version, fibre_g: float, bath_ml: float) -> Sequence[PlannedDose]:
    bottles = shelf()
    planned = []
    for line in recipe.text.doses:
        depth = line.depth_percent or 0.0
        dye_g = dye_mass_g(fibre_mass_g=fibre_g, depth_percent=depth)
        chosen = chosen_bottles(
            dye_g=dye_g,
            liquor_ml=bath_ml,
            bottles=candidates(line.dye_id or 0, bottles),
        )
        planned.append(
            PlannedDose(
                dye_id=line.dye_id or 0,
                dye_name=line.dye_name,
                depth_percent=depth,
                dye_g=dye_g,
                shares=chosen.shares,
                missing_g=chosen.missing_g,
            )
        )
    return planned


def _keep_dose(row: Bath, position: int, dose: PlannedDose) -> None:
    for share in dose.shares:
        BathDose.objects.create(
            bath=row,
            position=position,
            dye_id=dose.dye_id,
            depth_percent=dose.depth_percent,
            dye_g=share.dye_g,
            bottle=StockBottle.objects.get(code=share.code),
            volume_ml=share.volume_ml,
            strength_percent=share.strength_percent,
        )
    if dose.missing_g:
        BathDose.objects.create(
            bath=row,
            position=position,
            dye_id=dose.dye_id,
            depth_percent=dose.depth_percent,
            dye_g=dose.missing_g,
        )


def _check_yarn(wish: BathWish) -> None:
    if not wish.fibre_g > 0:
        raise MissingError(
            name="The weight of the yarn",
            advice="Weigh the dry yarn: every dose is reckoned from it.",
            argument="fibre_g",
        )
    if wish.is_swatch and wish.fibre_g > SWATCH_MOST_G:
        raise OutOfRangeError(
            name="A swatch",
            given=amount_text(wish.fibre_g, "g"),
            allowed=f"at most {amount_text(SWATCH_MOST_G, 'g')}",
            advice="Plan it as a bath instead.",
            argument="fibre_g",
        )


def _check_room(pot: Pot, bath_ml: float, ratio: float) -> None:
    most_ml = 1000 * pot.volume_l / ROOM_TO_SPARE
    if bath_ml > most_ml:
        raise OutOfRangeError(
            name=f"The bath in pot {pot.name}",
            given=amount_text(bath_ml / 1000, "l"),
            allowed=f"at most {amount_text(most_ml / 1000, 'l')}, a tenth to spare",
            advice=f"Dye at most {amount_text(most_ml / ratio, 'g')} of yarn in it, "
            "take a larger pot, or a shorter liquor.",
            argument="fibre_g",
        )


def _short(dose: PlannedDose) -> str:
    lacking = amount_text(dose.missing_g, "g")
    if not dose.shares:
        return f"No good bottle of {dose.dye_name} holds what is wanted: {lacking}."
    return f"{dose.dye_name}: {lacking} more dye is wanted than the good bottles hold."


def _free_number(wish: BathWish) -> str:
    letter = "S" if wish.is_swatch else "B"
    start = f"{wish.dyed_on:%y%m%d}-{letter}"
    taken = recipe_reads.numbers_of_day(wish.dyed_on)
    counts = [int(number.removeprefix(start)) for number in taken if start in number]
    return f"{start}{max(counts, default=0) + 1}"


def _mill_lot_id(wish: BathWish) -> int | None:
    if wish.mill_lot_id is None:
        return None
    row = recipe_reads.mill_lot_row(wish.mill_lot_id)
    if row.base_id != wish.base_id:
        raise ConflictError(
            why=f"Mill lot {row.lot} is of another base.",
            advice="Choose a lot of the base that is dyed.",
            argument="mill_lot",
        )
    return row.pk
