"""Planning a bath: from a recipe and weighed yarn to doses out of bottles."""

from dataclasses import dataclass, field

from django.db import transaction
from django.dispatch import Signal

from shadewright.core.baths import (
    BottleShare,
    ChosenBottles,
    WaterBalance,
    chosen_bottles,
    dose_advice,
    dye_mass_g,
    liquor_ml,
)
from shadewright.core.baths.rounds import HelperWanted
from shadewright.core.solutions.keeping import Purpose
from shadewright.core.uncertainty import Value, exact
from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathDose, StockBottle
from shadewright.workflows.bath_cautions import (
    base_notes,
    bath_cautions,
    cautions_of,
)
from shadewright.workflows.bath_wishes import BathWish, check_room, check_wish
from shadewright.workflows.bottle_choice import Offer, Refused, short_words
from shadewright.workflows.dosing import (
    SPREAD_METHOD,
    Dosed,
    dosed,
    kept_spread,
)
from shadewright.workflows.heating import PlannedHeat, heat_of_plan
from shadewright.workflows.promised import promised_ml
from shadewright.workflows.recipe_shapes import DoseLine, Version, shaped_version
from shadewright.workflows.rounds import helpers_of, water_of
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.tools_at_hand import AtHand, at_hand

__all__ = [
    "METHOD",
    "BathPlan",
    "BathWish",
    "PlannedDose",
    "bath_planned",
    "keep_bath",
    "plan_bath",
    "planned_dose",
]

METHOD = "doses on weight of fibre, 1"
bath_planned = Signal()
"""Sent with a ``bath`` that was just kept, and its ``depths``, each dye’s own."""


@dataclass(frozen=True, kw_only=True)
class PlannedDose:
    """A dose of a planned bath: its depth, its dye, and where it comes from."""

    dye_id: int
    dye_name: str
    depth_percent: float
    dye_g: float
    shares: tuple[BottleShare, ...]
    dosed: Dosed
    missing_g: float = 0.0
    kept_out: tuple[Refused, ...] = ()
    advice: str = ""


@dataclass(frozen=True, kw_only=True)
class BathPlan:
    """A bath that could be dyed: what goes in, and what stands in its way.

    ``troubles`` are doses that the bottles cannot give; ``cautions`` what can
    spoil the yarn or hurt; ``notes`` what the base does to the recipe.
    """

    wish: BathWish
    version: Version
    purpose: Purpose
    liquor_ratio: float
    liquor_ml: float
    water: WaterBalance
    doses: tuple[PlannedDose, ...]
    offer: Offer
    tools: AtHand
    helpers: tuple[HelperWanted, ...]
    troubles: tuple[str, ...] = field(default=())
    cautions: tuple[str, ...] = field(default=())
    notes: tuple[str, ...] = field(default=())
    heating: PlannedHeat


def plan_bath(
    wish: BathWish, *, instead_of: str = "", is_shown: bool = True
) -> BathPlan:
    """Say what a bath takes; refused where there is no yarn, recipe or room."""
    row = recipe_reads.version_row(wish.version_id)
    recipe = shaped_version(row)
    check_wish(wish, recipe)
    ratio = recipe.text.liquor_ratio if wish.liquor_ratio is None else wish.liquor_ratio
    bath_ml = liquor_ml(fibre_mass_g=wish.fibre_g, liquor_ratio=ratio or 0.0)
    ratio = bath_ml / wish.fibre_g
    check_room(wish, bath_ml, ratio)
    purpose = wish.purpose or recipe.text.purpose
    taken_ml = promised_ml(but_for=instead_of)
    offer = Offer(bottles=shelf(), purpose=purpose, taken_ml=taken_ml)
    tools = at_hand(wish.dosing, fibre_g=wish.fibre_g)
    doses = tuple(
        planned_dose(
            line,
            offer,
            tools,
            place=place,
            wish=wish,
            bath_ml=bath_ml,
            is_shown=is_shown,
        )
        for place, line in enumerate(recipe.text.doses, start=1)
    )
    helpers = helpers_of(row, fibre_g=wish.fibre_g, liquor_ratio=ratio)
    water = water_of(
        fibre_g=wish.fibre_g,
        liquor_ratio=ratio,
        wet_yarn_g=wish.wet_yarn_g,
        stock_ml=sum(share.volume_ml for dose in doses for share in dose.shares),
        helpers=helpers,
    )
    short = [dose for dose in doses if dose.missing_g]
    return BathPlan(
        wish=wish,
        version=recipe,
        purpose=purpose,
        liquor_ratio=ratio,
        liquor_ml=bath_ml,
        water=water,
        doses=doses,
        offer=offer,
        tools=tools,
        helpers=helpers,
        troubles=tuple(_short_words(dose, purpose) for dose in short),
        cautions=(
            *cautions_of(row),
            *bath_cautions(water=water, is_dry_dye=bool(short)),
        ),
        notes=base_notes(recipe_reads.base_row(wish.base_id), row),
        heating=heat_of_plan(
            row,
            pot_id=wish.pot_id,
            source_id=wish.source_id,
            fibre_g=wish.fibre_g,
            liquor_ml=bath_ml,
        ),
    )


@transaction.atomic
def keep_bath(*, wish: BathWish, stamp: Stamp, instead_of: str = "") -> str:
    """Plan a bath for good and return its number, which is never used again."""
    recipe_reads.lock_numbers()
    kept = recipe_reads.bath_of_deed(stamp.deed)
    if kept is not None:
        return kept.number
    plan = plan_bath(wish, instead_of=instead_of, is_shown=False)
    row = Bath.objects.create(
        number=_free_number(wish),
        deed=stamp.deed,
        version_id=wish.version_id,
        base_id=wish.base_id,
        mill_lot_id=wish.mill_lot_id,
        pot_id=wish.pot_id,
        source_id=plan.heating.source_id,
        water_id=wish.water_id,
        is_swatch=wish.is_swatch,
        purpose=plan.purpose,
        dyed_on=wish.dyed_on,
        fibre_g=wish.fibre_g,
        yarn_scale_id=_id(plan.tools.yarn_scale),
        is_by_weight=plan.tools.is_by_weight,
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
    depths = tuple(map(_depth, plan.doses))
    bath_planned.send(sender=Bath, bath=row, depths=depths)
    return row.number


def planned_dose(
    line: DoseLine,
    offer: Offer,
    tools: AtHand,
    *,
    place: int,
    wish: BathWish,
    bath_ml: float,
    is_shown: bool = True,
) -> PlannedDose:
    """Say which bottles give a dose, what it is measured with, what is short."""
    depth, dye_id = line.depth_percent or 0.0, line.dye_id or 0
    dye_g = dye_mass_g(fibre_mass_g=wish.fibre_g, depth_percent=depth)
    chosen = chosen_bottles(
        dye_g=dye_g,
        liquor_ml=bath_ml,
        bottles=offer.asked_for(
            dye_id, code=wish.from_bottles.get(dye_id, ""), dye_g=dye_g
        ),
    )
    return PlannedDose(
        dye_id=dye_id,
        dye_name=line.dye_name,
        depth_percent=depth,
        dye_g=dye_g,
        shares=chosen.shares,
        dosed=dosed(
            dye=line.dye_name,
            place=place,
            shares=chosen.shares,
            bottles={each.code: each for each in offer.bottles},
            dry_g=chosen.missing_g,
            fibre_g=wish.fibre_g,
            tools=tools,
            is_shown=is_shown,
        ),
        missing_g=chosen.missing_g,
        kept_out=offer.kept_out(dye_id) if chosen.missing_g else (),
        advice=_advice(dye_g, chosen),
    )


def _advice(dye_g: float, chosen: ChosenBottles) -> str:
    """Say that the whole dose is too little to measure, if it is."""
    volume_ml = sum(share.volume_ml for share in chosen.shares)
    if chosen.missing_g or not volume_ml:
        return ""
    return dose_advice(dye_mass_g=dye_g, stock_ml=volume_ml) or ""


def _keep_dose(row: Bath, position: int, dose: PlannedDose) -> None:
    codes = [share.code for share in dose.shares]
    bottles = {each.code: each for each in StockBottle.objects.filter(code__in=codes)}
    rows = [
        BathDose(
            dye_g=share.dye_g,
            bottle=bottles[share.code],
            volume_ml=share.volume_ml,
            strength_percent=share.strength_percent,
        )
        for share in dose.shares
    ]
    if dose.missing_g:
        rows.append(BathDose(dye_g=dose.missing_g))
    for each in rows:
        each.bath, each.position = row, position
        each.dye_id, each.depth_percent = dose.dye_id, dose.depth_percent
        each.tool_id = _id(dose.dosed.tool if each.bottle else dose.dosed.dry_tool)
        each.spread = kept_spread(dose.dosed.how_sure)
        each.spread_method = SPREAD_METHOD
        each.save()


def _depth(dose: PlannedDose) -> tuple[str, Value]:
    sure = dose.dosed.how_sure.sure
    return dose.dye_name, exact(dose.depth_percent) if sure is None else sure.depth


def _id(tool: ToolNow | None) -> int | None:
    return None if tool is None else tool.id


def _short_words(dose: PlannedDose, purpose: Purpose) -> str:
    return short_words(
        dye_name=dose.dye_name,
        missing_g=dose.missing_g,
        has_some=bool(dose.shares),
        kept_out=dose.kept_out,
        purpose=purpose,
    )


def _free_number(wish: BathWish) -> str:
    letter = "S" if wish.is_swatch else "B"
    start = f"{wish.dyed_on:%y%m%d}-{letter}"
    taken = recipe_reads.numbers_from(start)
    counts = [int(each.removeprefix(start)) for each in taken]
    return f"{start}{max(counts, default=0) + 1}"
