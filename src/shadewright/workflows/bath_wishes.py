"""What is said of a bath before it is planned, and what cannot be meant."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta

from shadewright.core.baths.liquor import ROOM_TO_SPARE
from shadewright.core.quantities import amount_text, number_text, require_mass
from shadewright.core.solutions.keeping import Purpose
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import recipe_reads
from shadewright.records.models import Pot
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.stamps import today
from shadewright.workflows.tools_at_hand import AS_USUAL, DosingWish

SWATCH_MOST_G = 20.0
MOST_SKEINS = 10_000
_EARLIEST = date(2000, 1, 1)
_DAYS_AHEAD = 366
_ROUNDING = 1e-9


@dataclass(frozen=True, kw_only=True)
class BathWish:
    """What is said of a bath before it is planned; None is as the recipe says.

    ``from_bottles`` names the bottle of a dye, by the dye’s number, that is to be drawn
    from where it holds the whole dose.
    """

    version_id: int
    base_id: int
    fibre_g: float
    dyed_on: date
    mill_lot_id: int | None = None
    pot_id: int | None = None
    source_id: int | None = None
    water_id: int | None = None
    wet_yarn_g: float | None = None
    skeins: int | None = None
    liquor_ratio: float | None = None
    is_swatch: bool = False
    purpose: Purpose | None = None
    notes: str = ""
    dosing: DosingWish = AS_USUAL
    from_bottles: Mapping[int, str] = field(default_factory=dict)


def check_wish(wish: BathWish, recipe: Version) -> None:
    """Refuse a bath without yarn or recipe, or on a day that cannot be meant."""
    if not recipe.is_complete:
        raise ConflictError(
            why=f"The recipe is incomplete: {recipe.what_is_missing}.",
            advice="Write a version of it with dyes and depths first.",
            argument="version",
        )
    _check_yarn(wish)
    _check_day(wish.dyed_on)
    _check_mill_lot(wish)


def check_room(wish: BathWish, bath_ml: float, liquor_ratio: float) -> None:
    """Refuse a bath that its pot cannot hold with a tenth to spare."""
    if wish.pot_id is None:
        return
    pot = recipe_reads.pot_row(wish.pot_id)
    most_ml = 1000 * pot.volume_l / ROOM_TO_SPARE
    if bath_ml > most_ml * (1 + _ROUNDING):
        raise _too_small(pot, bath_ml, most_ml, liquor_ratio)


def _too_small(
    pot: Pot, bath_ml: float, most_ml: float, liquor_ratio: float
) -> OutOfRangeError:
    most = amount_text(most_ml / 1000, "l")
    return OutOfRangeError(
        name=f"The bath in {pot.name}",
        given=amount_text(bath_ml / 1000, "l"),
        allowed=f"at most {most}, a tenth to spare",
        advice=f"Dye at most {amount_text(most_ml / liquor_ratio, 'g')} of yarn in it, "
        "take a larger pot, or a shorter liquor.",
        argument="pot",
    )


def _check_yarn(wish: BathWish) -> None:
    if not wish.fibre_g > 0:
        raise MissingError(
            name="The weight of the yarn",
            advice="Weigh the dry yarn: every dose is reckoned from it.",
            argument="fibre_g",
        )
    require_mass(wish.fibre_g, name="The weight of the yarn", argument="fibre_g")
    if wish.is_swatch and wish.fibre_g > SWATCH_MOST_G:
        raise OutOfRangeError(
            name="A swatch",
            given=amount_text(wish.fibre_g, "g"),
            allowed=f"at most {amount_text(SWATCH_MOST_G, 'g')}",
            advice="Plan it as a bath instead.",
            argument="fibre_g",
        )
    if wish.wet_yarn_g is not None and not wish.wet_yarn_g >= wish.fibre_g:
        raise OutOfRangeError(
            name="The wet yarn",
            given=amount_text(wish.wet_yarn_g, "g"),
            allowed=f"at least the dry yarn’s {amount_text(wish.fibre_g, 'g')}",
            advice="Weigh the yarn with the water in it, or leave this empty.",
            argument="wet_yarn_g",
        )
    if wish.skeins is not None and not 0 < wish.skeins <= MOST_SKEINS:
        raise OutOfRangeError(
            name="The number of skeins",
            given=number_text(wish.skeins, digits=5),
            allowed=f"from 1 to {MOST_SKEINS}",
            argument="skeins",
        )


def _check_day(day: date) -> None:
    last = today() + timedelta(days=_DAYS_AHEAD)
    if not _EARLIEST <= day <= last:
        raise OutOfRangeError(
            name="The day",
            given=f"{day.day} {day:%B} {day.year}",
            allowed=f"from {_EARLIEST.year} to a year from now",
            argument="dyed_on",
        )


def _check_mill_lot(wish: BathWish) -> None:
    if wish.mill_lot_id is None:
        return
    row = recipe_reads.mill_lot_row(wish.mill_lot_id)
    if row.base_id != wish.base_id:
        raise ConflictError(
            why=f"Mill lot {row.lot} is of another base.",
            advice="Choose a lot of the base that is dyed.",
            argument="mill_lot",
        )
