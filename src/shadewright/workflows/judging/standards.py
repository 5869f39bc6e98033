"""The real piece that lots of a recipe on a base are held against.

One holds of each recipe and base. Another replaces it and what it replaced stays to be
read, with its reason; so a standard is never changed and never lost. One made by
mistake is taken back the same day, and the one before it holds again.
"""

from dataclasses import dataclass, replace
from datetime import date, datetime
from uuid import UUID

from django.db import transaction

from shadewright.core.colour import Lab
from shadewright.errors import ConflictError, MissingError, NotFoundError
from shadewright.records import judging_reads, lot_reads, selling_reads
from shadewright.records.models import (
    Base,
    Bath,
    ColourReading,
    Recipe,
    Standard,
)
from shadewright.records.models.swatches import ReadBy
from shadewright.records.writes import keep_line
from shadewright.workflows.judging.worth import u_of
from shadewright.workflows.shades.entering_swatches import swatch_id_of_bath
from shadewright.workflows.shades.readings import ReadWords, reading_from, row_of
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.stamps import Stamp, past_date, today
from shadewright.workflows.undo import may_undo


@dataclass(frozen=True, kw_only=True)
class StandardNow:
    """A standard; ``u`` is its standard uncertainty as a CIELAB distance."""

    id: int
    recipe_id: int
    recipe_name: str
    base_id: int
    base_name: str
    lot: str
    where: str
    made_on: date | None
    lab: Lab | None
    u: float | None
    read_by: ReadBy | None
    why: str
    by: str
    at: datetime
    deed: UUID
    is_undone: bool
    may_undo: bool

    @property
    def age_days(self) -> int | None:
        """How old the piece is: its colour may have changed since it was read."""
        return None if self.made_on is None else (today() - self.made_on).days


@dataclass(frozen=True, kw_only=True)
class Piece:
    """What is said of a piece that becomes a standard."""

    where: str = ""
    made_on: date | None = None
    why: str = ""


@dataclass(frozen=True, kw_only=True)
class OfWhat:
    """A recipe and a base, by number and by name."""

    recipe_id: int
    recipe_name: str
    base_id: int
    base_name: str


@dataclass(frozen=True, kw_only=True)
class _Colour:
    lab: Lab
    u: float | None
    read_by: ReadBy
    reading_id: int | None = None


def standards() -> tuple[StandardNow, ...]:
    """Return the standards that hold, by recipe and base."""
    rows = judging_reads.standard_rows().order_by("recipe__name", "base__name")
    return tuple(map(shaped_standard, rows))


def standard_of(*, recipe_id: int, base_id: int) -> StandardNow | None:
    """Return the standard that holds of a recipe on a base, if there is one."""
    row = judging_reads.standard_row(recipe_id=recipe_id, base_id=base_id)
    return None if row is None else shaped_standard(row)


def trail_of(*, recipe_id: int, base_id: int) -> tuple[StandardNow, ...]:
    """Return every standard that there was, taken back or not, the newest first."""
    rows = judging_reads.standards_ever(recipe_id=recipe_id, base_id=base_id)
    return tuple(map(shaped_standard, rows))


def of_what(*, recipe_id: int, base_id: int) -> OfWhat:
    """Return a recipe and a base by their numbers."""
    recipe = Recipe.objects.filter(pk=recipe_id).first()
    base = Base.objects.filter(pk=base_id).first()
    if recipe is None or base is None:
        raise NotFoundError(
            kind="recipe and base", key=f"{recipe_id}, {base_id}", argument="recipe"
        )
    return OfWhat(
        recipe_id=recipe_id,
        recipe_name=recipe.name,
        base_id=base_id,
        base_name=base.name,
    )


def judged_as(bath: Bath) -> OfWhat:
    """Return what a lot of a bath is held against; one corrected as it was before."""
    recipe = selling_reads.sold_as(bath)
    return OfWhat(
        recipe_id=recipe.pk,
        recipe_name=recipe.name,
        base_id=bath.base_id,
        base_name=bath.base.name,
    )


def of_lot(number: str) -> OfWhat:
    """Return what a lot is held against."""
    return judged_as(lot_reads.lot_row(number).bath)


def lot_as_standard(number: str, *, piece: Piece, stamp: Stamp) -> StandardNow:
    """Make a lot the standard of its recipe and base, by its newest dry colour."""
    lot = lot_reads.lot_row(number)
    if not lot.lines.all():
        raise ConflictError(why=f"Lot {number} was taken back.")
    swatch_id = swatch_id_of_bath(number)
    reading = None if swatch_id is None else swatch_now(swatch_id).reading
    if reading is None:
        raise MissingError(
            name=f"The colour of lot {number}",
            advice="Check it dry first.",
            argument="number",
        )
    made_on = piece.made_on or lot.bath.dyed_on
    return _keep(
        judged_as(lot.bath),
        _of_row(ColourReading.objects.select_related("meter").get(pk=reading.id)),
        replace(piece, made_on=made_on),
        stamp,
        lot_id=lot.pk,
    )


def piece_as_standard(
    what: OfWhat, *, piece: Piece, read: ReadWords, stamp: Stamp
) -> StandardNow:
    """Make a piece that is no lot here the standard; its colour is read dry."""
    past_date(piece.made_on, name="The day it was made", argument="made_on")
    if read.is_wet:
        raise ConflictError(
            why="A wet piece cannot be a standard.",
            advice="Dry it, then read it.",
            argument="is_wet",
        )
    new = reading_from(read)
    return _keep(what, _of_row(row_of(new)), piece, stamp)


@transaction.atomic
def hold_again(standard_id: int, *, stamp: Stamp) -> StandardNow:
    """Let a standard that was replaced hold again, as a new entry of the trail."""
    old = Standard.objects.select_related("recipe", "base").filter(pk=standard_id)
    row = old.first()
    if row is None:
        raise NotFoundError(kind="standard", key=str(standard_id), argument="standard")
    now = shaped_standard(row)
    what = of_what(recipe_id=now.recipe_id, base_id=now.base_id)
    held = judging_reads.standard_row(recipe_id=now.recipe_id, base_id=now.base_id)
    if held is not None and held.pk == row.pk:
        return now
    if now.lab is None or now.read_by is None:
        raise ConflictError(why="Its colour was never read.", argument="standard")
    colour = _Colour(
        lab=now.lab, u=now.u, read_by=now.read_by, reading_id=row.reading_id
    )
    piece = Piece(where=now.where, made_on=now.made_on, why="Holds again.")
    return _keep(what, colour, piece, stamp, lot_id=row.lot_id)


def shaped_standard(row: Standard) -> StandardNow:
    """Return a row as frozen values."""
    parts = (row.colour_l, row.colour_a, row.colour_b)
    known = [part for part in parts if part is not None]
    return StandardNow(
        id=row.pk,
        recipe_id=row.recipe_id,
        recipe_name=row.recipe.name,
        base_id=row.base_id,
        base_name=row.base.name,
        lot="" if row.lot is None else row.lot.number,
        where=row.where,
        made_on=row.made_on,
        lab=Lab(*known) if len(known) == len(parts) else None,
        u=row.sd,
        read_by=ReadBy(row.read_by) if row.read_by else None,
        why=row.note,
        by="" if row.by is None else row.by.name,
        at=row.at,
        deed=row.deed,
        is_undone=not row.is_standing,
        may_undo=may_undo(row),
    )


def _of_row(row: ColourReading) -> _Colour:
    return _Colour(
        lab=Lab(*row.labs["D65"]),
        u=u_of(row),
        read_by=ReadBy(row.read_by),
        reading_id=row.pk,
    )


@transaction.atomic
def _keep(
    what: OfWhat,
    colour: _Colour,
    piece: Piece,
    stamp: Stamp,
    *,
    lot_id: int | None = None,
) -> StandardNow:
    # Two at once, or the same one sent twice.
    Recipe.objects.select_for_update().filter(pk=what.recipe_id).first()
    kept = Standard.objects.filter(deed=stamp.deed).first()
    if kept is not None:
        return shaped_standard(kept)
    row = Standard(
        recipe_id=what.recipe_id,
        base_id=what.base_id,
        lot_id=lot_id,
        reading_id=colour.reading_id,
        where=" ".join(piece.where.split())[:120],
        made_on=piece.made_on,
        colour_l=colour.lab.L,
        colour_a=colour.lab.a,
        colour_b=colour.lab.b,
        sd=colour.u,
        read_by=colour.read_by,
        note=piece.why.strip()[:300],
    )
    keep_line(row, stamp)
    return shaped_standard(row)
