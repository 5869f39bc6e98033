"""Plan the bath that a lot goes back into: a child bath, with a lot of its own.

Its additions are a recipe that is no colourway, with the acid, helpers and heat of the
lot’s own recipe. The lot keeps its number and a line that says where it went.
"""

from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any
from uuid import uuid5

from django.db import transaction

from shadewright.core.quantities import amount_text, require_between
from shadewright.errors import MissingError, NotFoundError
from shadewright.records import lot_reads, recipe_reads
from shadewright.records.models import Correction, Dye, LotLine, Recipe
from shadewright.records.models.lots import LotAct
from shadewright.records.models.selling import CorrectionKind
from shadewright.records.writes import keep_line
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import keep_bath
from shadewright.workflows.correcting.off_shade import OffShade, off_shade
from shadewright.workflows.lot_skeins import require_left, skeins_of
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import numbered_name, version, write_recipe
from shadewright.workflows.shades.swatches import DyeDoses
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.waters import usual_water

__all__ = ["CorrectionKind", "ToKeep", "keep_correction"]

_NAMES = {CorrectionKind.CORRECT: "To shade", CorrectionKind.OVERDYE: "Overdye"}
_MOST_SHARE = 1.2
"""Of the yarn of the lot’s bath: it weighs otherwise on a damp day, not more. [1]"""


@dataclass(frozen=True, kw_only=True)
class ToKeep:
    """A lot that goes back into a bath: what goes in, how much yarn, when.

    ``becomes_id`` is the colourway that it is overdyed to; ``foretold`` what was
    reckoned, as plain values.
    """

    number: str
    kind: CorrectionKind
    doses: DyeDoses
    fibre_g: float
    dyed_on: date
    skeins: int | None = None
    pot_id: int | None = None
    becomes_id: int | None = None
    foretold: dict[str, Any] = field(default_factory=dict)


@transaction.atomic
def keep_correction(wish: ToKeep, *, stamp: Stamp) -> str:
    """Plan the bath and return its number; sent twice, it is planned once."""
    recipe_reads.lock_numbers()
    kept = recipe_reads.bath_of_deed(stamp.deed)
    if kept is not None:
        return kept.number
    if not wish.doses:
        raise MissingError(
            name="What to add",
            advice="Nothing would bring it nearer: sell it as a lot of its own.",
            argument="doses",
        )
    lot = lot_reads.locked_lot_row(wish.number)
    off = off_shade(wish.number)
    _check(wish, off)
    text = _text(wish, version(off.version_id).text)
    recipe_stamp = replace(stamp, deed=uuid5(stamp.deed, "recipe"))
    made = write_recipe(
        name=numbered_name(f"{_NAMES[wish.kind]}: {wish.number}"),
        text=text,
        stamp=recipe_stamp,
    )
    Correction.objects.create(
        deed=stamp.deed,
        lot=lot,
        recipe_id=made.recipe_id,
        kind=wish.kind,
        becomes=_becomes(wish),
        foretold=wish.foretold,
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    number = keep_bath(wish=_bath(wish, made.id, off.base_id), stamp=stamp)
    words = f"{wish.kind.label.lower()}, in bath {number}"
    keep_line(LotLine(lot=lot, act=LotAct.DECIDED, words=words), stamp)
    return number


def _check(wish: ToKeep, off: OffShade) -> None:
    require_left(skeins_of(wish.number), wish.skeins or 1)
    require_between(
        wish.fibre_g,
        least=0.0,
        most=_MOST_SHARE * off.fibre_g,
        unit="g",
        name="The yarn",
        argument="grams",
        advice=f"{amount_text(off.fibre_g, 'g')} went into the bath of this lot.",
    )


def _becomes(wish: ToKeep) -> Recipe | None:
    if wish.becomes_id is None:
        return None
    return recipe_reads.recipe_row(wish.becomes_id)


def _text(wish: ToKeep, own: RecipeText) -> RecipeText:
    names = dict(Dye.objects.values_list("pk", "name"))
    unknown = [pk for pk, _depth in wish.doses if pk not in names]
    if unknown:
        raise NotFoundError(kind="dye", key=str(unknown[0]), argument="doses")
    doses = tuple(
        DoseLine(dye_id=pk, dye_name=names[pk], depth_percent=depth)
        for pk, depth in wish.doses
    )
    why = f"{_NAMES[wish.kind]}: lot {wish.number}"
    return replace(own, doses=doses, look_at_15="", as_written="", why_changed=why)


def _bath(wish: ToKeep, version_id: int, base_id: int) -> BathWish:
    water = usual_water()
    return BathWish(
        version_id=version_id,
        base_id=base_id,
        fibre_g=wish.fibre_g,
        dyed_on=wish.dyed_on,
        skeins=wish.skeins,
        pot_id=wish.pot_id,
        water_id=None if water is None else water.id,
        notes=f"The yarn is lot {wish.number}, wetted out again.",
    )
