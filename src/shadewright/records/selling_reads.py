"""Questions to the store about skeins that went out, complaints, corrections, tags."""

from uuid import UUID

from django.db.models import QuerySet

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Bath,
    Complaint,
    Correction,
    Maker,
    OrderLine,
    SkeinsOut,
    TagRegion,
    TagText,
)


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


def baths_correcting(lot_number: str) -> list[tuple[str, str]]:
    """Return the baths that a lot went back into, each with what for, in order."""
    rows = Bath.objects.filter(version__recipe__correction__lot__number=lot_number)
    kinds = rows.order_by("id").values_list("number", "version__recipe__name")
    return list(kinds)


def maker_row() -> Maker | None:
    """Return what tags say of the maker, if anything."""
    return Maker.objects.first()


def region_rows() -> QuerySet[TagRegion]:
    """Return the regions' checklists, by name."""
    return TagRegion.objects.all()


def tag_text_row(base_id: int) -> TagText | None:
    """Return what the tags of a base say, if that was written."""
    return TagText.objects.filter(base_id=base_id).first()
