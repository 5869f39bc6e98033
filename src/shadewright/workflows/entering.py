"""Entering the bottles that stand on the shelf already, one after the other."""

from dataclasses import dataclass
from difflib import get_close_matches
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from shadewright.core.solutions.ledger import BottleAct
from shadewright.errors import NotFoundError
from shadewright.records import reads
from shadewright.records.models.shelf import Evidence
from shadewright.workflows.bottles import enter_bottle
from shadewright.workflows.dyes import add_dye, dyes, named_dye
from shadewright.workflows.filling import Particulars
from shadewright.workflows.shelf import ShelfBottle, shaped_bottle
from shadewright.workflows.stamps import Stamp, today


@dataclass(frozen=True, kw_only=True)
class EnteredBottle:
    """A bottle that was entered today, and the deed that undo takes back."""

    bottle: ShelfBottle
    deed: UUID


@transaction.atomic
def enter_bottle_by_name(
    *,
    dye: str,
    is_new_dye: bool,
    strength_percent: float,
    volume_ml: float,
    stamp: Stamp,
    about: Particulars,
) -> ShelfBottle:
    """Enter a bottle under its dye's name; add the dye if it is said to be new."""
    return enter_bottle(
        dye_id=_dye_id(dye, is_new=is_new_dye, stamp=stamp),
        strength_percent=strength_percent,
        volume_ml=volume_ml,
        stamp=stamp,
        about=about,
    )


def entered_today() -> tuple[EnteredBottle, ...]:
    """Return what was entered today and not taken back, newest first."""
    rows = reads.bottle_rows().filter(evidence=Evidence.LABELLED)
    found = []
    for row in rows.order_by("-id"):
        line = next(one for one in row.lines.all() if one.act == BottleAct.FILLED)
        bottle = shaped_bottle(row)
        if timezone.localdate(line.written_at) == today() and not bottle.is_void:
            found.append(EnteredBottle(bottle=bottle, deed=line.deed))
    return tuple(found)


def _dye_id(name: str, *, is_new: bool, stamp: Stamp) -> int:
    known = named_dye(name)
    if known is not None:
        return known.id
    if is_new:
        return add_dye(name, stamp).id
    raise NotFoundError(kind="dye", key=name, advice=_advice(name), argument="dye")


def _advice(name: str) -> str:
    by_small_letters = {dye.name.casefold(): dye.name for dye in dyes()}
    near = get_close_matches(name.casefold(), by_small_letters, n=1)
    guess = f"Did you mean {by_small_letters[near[0]]}? " if near else ""
    return f"{guess}To add it, tick “A new dye” and save again."
