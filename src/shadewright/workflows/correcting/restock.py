"""A shop wants the same again: find the old lot, and say what to dye now.

The lot is known by its number, or by the colour of an old skein. What went into its
bath then need not give its colour now; the same dyes are searched for what would.
"""

from dataclasses import dataclass
from datetime import date

from shadewright.core.colour import Lab, ciede2000, difference_words
from shadewright.core.recipes import Recipe as FoundRecipe
from shadewright.core.recipes import Wishes, matches
from shadewright.errors import StudioError
from shadewright.records import lot_reads, selling_reads
from shadewright.records.models import Lot
from shadewright.workflows.correcting.off_shade import (
    OffShade,
    off_shade,
    version_sold_as,
)
from shadewright.workflows.lot_differences import Compared, compare_lots
from shadewright.workflows.shades.find_wishes import at_shelf, palette_base
from shadewright.workflows.shades.offering import noted_lot
from shadewright.workflows.shades.palettes import gone_dyes, palette_or_refuse
from shadewright.workflows.shades.swatches import DyeDoses, swatches_now
from shadewright.workflows.shades.wanted import Wanted, target_of

MOST_LOTS = 8


@dataclass(frozen=True, kw_only=True)
class NearLot:
    """A lot whose colour lies near that of an old skein."""

    number: str
    recipe_name: str
    base_name: str
    dyed_on: date
    lab: Lab
    difference: float
    words: str


@dataclass(frozen=True, kw_only=True)
class Restock:
    """An old lot, what has changed since, and the recipe that would give it now.

    ``newest`` is the newest lot of the same colourway and base, to compare with; it is
    empty where this one is the newest. ``now`` is None where no palette can say.
    """

    off: OffShade
    newest: str
    changed: tuple[Compared, ...]
    untold: tuple[Compared, ...]
    now: FoundRecipe | None
    doses: DyeDoses
    why_not: str


def lots_near(wanted: Wanted, *, base_id: int | None = None) -> tuple[NearLot, ...]:
    """Return the lots whose colours lie nearest to a colour, the nearest first."""
    read = {
        each.bath_number: each.reading.lab
        for each in swatches_now()
        if each.is_lot and each.reading is not None
    }
    found = [
        _near(row, lab, wanted)
        for row in lot_reads.coloured_lot_rows(list(read))
        if base_id in {None, row.bath.base_id}
        and (lab := read.get(row.number) or _noted(row)) is not None
    ]
    found.sort(key=lambda each: each.difference)
    return tuple(found[:MOST_LOTS])


def version_of_lot(number: str) -> int:
    """Return the version by which a lot would be dyed again, as it was written."""
    return version_sold_as(lot_reads.lot_row(number).bath).pk


def restock(number: str) -> Restock:
    """Return an old lot with what has changed since, and what to dye now."""
    off = off_shade(number)
    newest = _newest_like(off)
    compared = compare_lots(number, newest) if newest else None
    now, doses, why_not = _now(off)
    return Restock(
        off=off,
        newest=newest,
        changed=() if compared is None else compared.differ,
        untold=() if compared is None else compared.untold,
        now=now,
        doses=doses,
        why_not=why_not,
    )


def _noted(row: Lot) -> Lab | None:
    noted = noted_lot(row)
    return None if noted is None else noted.lab


def _near(row: Lot, lab: Lab, wanted: Wanted) -> NearLot:
    return NearLot(
        number=row.number,
        recipe_name=selling_reads.sold_as(row.bath).name,
        base_name=row.bath.base.name,
        dyed_on=row.bath.dyed_on,
        lab=lab,
        difference=ciede2000(wanted.lab, lab),
        words=difference_words(wanted.lab, lab),
    )


def _newest_like(off: OffShade) -> str:
    lot = lot_reads.lot_row(off.number)
    rows = lot_reads.lots_that_stand().filter(
        bath__version__recipe_id=off.recipe_id,
        bath__base_id=off.base_id,
        bath__dyed_on__gte=lot.bath.dyed_on,
    )
    row = rows.exclude(pk=lot.pk).order_by("-bath__dyed_on", "-pk").first()
    return "" if row is None else row.number


def _now(off: OffShade) -> tuple[FoundRecipe | None, DyeDoses, str]:
    """Return the recipe of the same dyes that comes nearest to the lot now."""
    try:
        palette = palette_or_refuse().palette
        base = palette_base(palette, off.base_id)
    except StudioError as error:
        return None, (), error.sentence
    own = {dye for dye, _depth in off.doses}
    gone = own & set(gone_dyes(palette)) | own - set(palette.names.dyes)
    if gone:
        return None, (), f"The palette has no {', '.join(sorted(gone))} any more."
    others = tuple(dye for dye in palette.names.dyes if dye not in own)
    found = matches(
        palette,
        base=base,
        target=target_of(off.measured, lights=()),
        wishes=Wishes(wanted=tuple(own), unwanted=others, most_dyes=max(1, len(own))),
        top=1,
    ).recipes
    if not found:
        return None, (), "The same dyes give nothing near it now."
    at = at_shelf(palette, base_id=off.base_id, batch_g=off.fibre_g)
    doses = tuple((at.dyes[dye].pk, depth) for dye, depth in found[0].doses)
    return found[0], doses, ""
