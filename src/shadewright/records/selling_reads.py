"""Questions to the store about skeins that went out, complaints, corrections, tags."""

from collections.abc import Collection
from dataclasses import dataclass
from uuid import UUID

from django.db.models import Exists, F, OuterRef, QuerySet

from shadewright.errors import NotFoundError
from shadewright.records import lot_reads
from shadewright.records.models import (
    Bath,
    BathLine,
    Complaint,
    Correction,
    LotLine,
    Maker,
    OrderLine,
    Recipe,
    SkeinsOut,
    TagRegion,
    TagText,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import LotAct


@dataclass(frozen=True, kw_only=True)
class BathAfter:
    """A bath that a lot went back into; ``skeins`` is None where all of it did."""

    lot: str
    number: str
    name: str
    skeins: int | None
    has_lot: bool


def order_line_row(line_id: int) -> OrderLine:
    """Return one line of an order that may still be served."""
    rows = OrderLine.objects.select_related("order", "recipe", "base")
    row = rows.filter(pk=line_id, is_dropped=False, order__is_closed=False).first()
    if row is None:
        raise NotFoundError(
            kind="line of an open order", key=str(line_id), argument="line"
        )
    return row


def open_lines_for(*, recipe_id: int, base_id: int) -> QuerySet[OrderLine]:
    """Return the lines of open orders that a lot of a recipe on a base may serve."""
    rows = OrderLine.objects.select_related("order").filter(
        recipe_id=recipe_id, base_id=base_id, is_dropped=False, order__is_closed=False
    )
    return rows.order_by("order__due_on", "id")


def standing_skeins_out() -> QuerySet[SkeinsOut]:
    """Return what went out and was not taken back, in order."""
    rows = SkeinsOut.objects.filter(undone_by=None, undoes=None)
    return rows.select_related("lot__bath", "order_line__order", "by").order_by("id")


def skeins_out_of_deed(deed: UUID) -> QuerySet[SkeinsOut]:
    """Return what one deed wrote of skeins that went out."""
    return SkeinsOut.objects.filter(deed=deed).select_related("lot").order_by("id")


def complaint_rows() -> QuerySet[Complaint]:
    """Return complaints, the open ones first, newest first."""
    return Complaint.objects.select_related("lot__bath__version__recipe")


def complaint_row(number: int) -> Complaint:
    """Return one complaint."""
    row = complaint_rows().filter(number=number).first()
    if row is None:
        raise NotFoundError(kind="complaint", key=str(number), argument="complaint")
    return row


def corrections() -> QuerySet[Correction]:
    """Return corrections with their lots, recipes and baths."""
    rows = Correction.objects.select_related("lot__bath", "recipe", "becomes")
    return rows.prefetch_related("recipe__versions__baths")


def lot_corrected_by(bath: Bath) -> str | None:
    """Return the lot whose yarn a bath takes up again, if it does."""
    rows = Correction.objects.filter(recipe_id=bath.version.recipe_id)
    return rows.values_list("lot__number", flat=True).first()


def correction_bath_of(deed: UUID) -> Bath | None:
    """Return the bath that a deed planned for a lot to go back into, if it did."""
    rows = Bath.objects.filter(deed=deed, version__recipe__correction__deed=deed)
    return rows.first()


def yarn_chain(bath: Bath) -> list[Bath]:
    """Return a bath and those that its yarn was in before, the newest first."""
    baths = [bath]
    while (before := lot_corrected_by(baths[-1])) is not None:
        baths.append(lot_reads.lot_row(before).bath)
    return baths


def sold_as(bath: Bath) -> Recipe:
    """Return the colourway that yarn of a bath is sold as.

    Of a corrected lot that of the first one, of an overdyed one what it became.
    """
    recipe = bath.version.recipe
    row: Correction | None = getattr(recipe, "correction", None)
    if row is None:
        return recipe
    return row.becomes or sold_as(lot_reads.lot_row(row.lot.number).bath)


def baths_correcting(lot_numbers: Collection[str]) -> list[BathAfter]:
    """Return the baths that lots went back into, in order; none that was given up."""
    acts = BathLine.objects.filter(bath=OuterRef("pk"), undone_by=None)
    lines = LotLine.objects.filter(lot__bath=OuterRef("pk"), undone_by=None)
    rows = Bath.objects.annotate(
        lot_before=F("version__recipe__correction__lot__number"),
        has_lot=Exists(lines.exclude(act=LotAct.UNDO)),
    ).filter(lot_before__in=lot_numbers)
    found = rows.exclude(Exists(acts.filter(act=BathAct.GIVEN_UP))).order_by("id")
    return [
        BathAfter(lot=lot, number=number, name=name, skeins=skeins, has_lot=has_lot)
        for lot, number, name, skeins, has_lot in found.values_list(
            "lot_before", "number", "version__recipe__name", "skeins", "has_lot"
        )
    ]


def numbers_with_after(lot_numbers: Collection[str]) -> set[str]:
    """Return lots with every lot that their yarn became in later baths."""
    found, fresh = set(lot_numbers), set(lot_numbers)
    while fresh:
        after = {each.number for each in baths_correcting(fresh) if each.has_lot}
        fresh = after - found
        found |= fresh
    return found


def maker_row() -> Maker | None:
    """Return what tags say of the maker, if anything."""
    return Maker.objects.first()


def region_rows() -> QuerySet[TagRegion]:
    """Return the regions' checklists, by name."""
    return TagRegion.objects.all()


def tag_text_row(base_id: int) -> TagText | None:
    """Return what the tags of a base say, if that was written."""
    return TagText.objects.filter(base_id=base_id).first()
