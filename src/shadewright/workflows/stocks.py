"""Making a stock: plan it, then put the bottle on the shelf with its true strength."""

from dataclasses import dataclass, replace

from django.db import transaction
from django.utils import timezone

from shadewright.core.quantities import require_mass, require_volume
from shadewright.core.solutions.making import StockPlan, stock_plan
from shadewright.core.solutions.strength import true_strength_percent
from shadewright.errors import OutOfRangeError
from shadewright.records import reads
from shadewright.records.models import Dye, PowderJar
from shadewright.records.models.shelf import Evidence
from shadewright.records.shapes import jar_left_g
from shadewright.workflows.filling import (
    Filling,
    Particulars,
    bottle_of,
    fill_bottle,
)
from shadewright.workflows.jars import take_powder
from shadewright.workflows.readings import deed_key
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.stock_spreads import NOTHING_SAID, MadeWith, made_spread


@dataclass(frozen=True, kw_only=True)
class PlannedStock:
    """A stock that is wanted: the plan, and what it will be made from."""

    dye_id: int
    dye_name: str
    is_metal_complex: bool
    hazard_words: str
    data_sheet: str
    jar_id: int | None
    jar_code: str
    jar_left_g: float | None
    plan: StockPlan


def plan_stock(
    *, dye_id: int, jar_id: int | None, volume_ml: float, strength_percent: float
) -> PlannedStock:
    """Say how much powder and water a stock takes, and refuse what cannot be."""
    dye = reads.dye_row(dye_id)
    jar = None if jar_id is None else reads.jar_row(jar_id)
    return _planned(
        dye,
        jar,
        volume_ml=volume_ml,
        strength_percent=strength_percent,
        solubility_g_per_l=dye.solubility_g_per_l,
        powder_left_g=None if jar is None else jar_left_g(jar.lines.all()),
    )


def begun_stock(
    *, dye: Dye, jar: PowderJar | None, volume_ml: float, strength_percent: float
) -> PlannedStock:
    """Return the plan of a stock that is under way: nothing refuses it any more.

    Its powder has left the jar, and a solubility written down since then is
    only of use while it allows the stock.
    """
    solubility_g_per_l = dye.solubility_g_per_l
    if solubility_g_per_l is not None and 10 * strength_percent > solubility_g_per_l:
        solubility_g_per_l = None
    return _planned(
        dye,
        jar,
        volume_ml=volume_ml,
        strength_percent=strength_percent,
        solubility_g_per_l=solubility_g_per_l,
        powder_left_g=None,
    )


def _planned(
    dye: Dye,
    jar: PowderJar | None,
    *,
    volume_ml: float,
    strength_percent: float,
    solubility_g_per_l: float | None,
    powder_left_g: float | None,
) -> PlannedStock:
    plan = stock_plan(
        volume_ml=volume_ml,
        strength_percent=strength_percent,
        powder_strength_percent=100.0 if jar is None else jar.strength_percent,
        solubility_g_per_l=solubility_g_per_l,
        solubility_at_c=dye.solubility_at_c,
        powder_left_g=powder_left_g,
        mix_fresh=dye.is_mix_fresh,
        is_metal_complex=dye.is_metal_complex,
    )
    return PlannedStock(
        dye_id=dye.pk,
        dye_name=dye.name,
        is_metal_complex=dye.is_metal_complex,
        hazard_words=dye.hazard_words,
        data_sheet=dye.data_sheet_link or (dye.data_sheet_file.name or ""),
        jar_id=None if jar is None else jar.pk,
        jar_code="" if jar is None else jar.code,
        jar_left_g=None if jar is None else jar_left_g(jar.lines.all()),
        plan=plan,
    )


@transaction.atomic
def make_stock(
    *,
    dye_id: int,
    jar_id: int | None,
    wanted_percent: float,
    powder_g: float,
    final_ml: float,
    stamp: Stamp,
    about: Particulars | None = None,
    made_with: MadeWith = NOTHING_SAID,
) -> ShelfBottle:
    """Put a stock that has been made on the shelf, with its true strength."""
    earlier = bottle_of(stamp)
    if earlier is not None:
        return shelf_bottle(earlier)
    jar = None if jar_id is None else reads.locked_jar(jar_id)
    if jar is not None:
        take_powder(row=jar, dye_id=dye_id, powder_g=powder_g, stamp=stamp)
    return bottle_up(
        dye=reads.dye_row(dye_id),
        jar=jar,
        wanted_percent=wanted_percent,
        powder_g=powder_g,
        final_ml=final_ml,
        about=about or Particulars(made_on=timezone.localdate(stamp.at)),
        stamp=stamp,
        made_with=made_with,
    )


def bottle_up(
    *,
    dye: Dye,
    jar: PowderJar | None,
    wanted_percent: float,
    powder_g: float,
    final_ml: float,
    about: Particulars,
    stamp: Stamp,
    made_with: MadeWith = NOTHING_SAID,
) -> ShelfBottle:
    """Put a bottle on the shelf from powder that has been weighed out already."""
    factor = 100.0 if jar is None else jar.strength_percent
    filling = Filling(
        dye=dye,
        jar=jar,
        volume_ml=final_ml,
        strength_percent=label_strength_percent(
            powder_g=powder_g, final_ml=final_ml, powder_strength_percent=factor
        ),
        evidence=Evidence.WEIGHED,
        wanted_percent=wanted_percent,
        powder_g=powder_g,
        powder_strength_percent=factor,
        made_with=made_with,
        spread=made_spread(
            powder_g=powder_g,
            final_ml=final_ml,
            powder_strength_percent=factor,
            made_with=made_with,
            deed=deed_key(stamp),
        ),
    )
    return shelf_bottle(fill_bottle(filling, about, stamp).code)


def label_strength_percent(
    *, powder_g: float, final_ml: float, powder_strength_percent: float
) -> float:
    """Return what the label will say; refuse what no bottle can be."""
    require_mass(powder_g, name="Powder", argument="powder_g")
    require_volume(final_ml, name="Final volume", argument="final_ml")
    try:
        return true_strength_percent(
            powder_g=powder_g,
            volume_ml=final_ml,
            powder_strength_percent=powder_strength_percent,
        )
    except OutOfRangeError as error:
        advice = "Look at the grams and the millilitres again."
        raise replace(error, advice=advice, argument="final_ml") from error
