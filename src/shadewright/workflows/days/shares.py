"""Which baths and lots are for a line of an order, and how many skeins of each."""

from django.db import transaction

from shadewright.errors import ConflictError, NotFoundError, OutOfRangeError
from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathFor, OrderLine
from shadewright.workflows.days.orders import check_skeins
from shadewright.workflows.days.yields import yield_of


@transaction.atomic
def share_bath(*, line_id: int, number: str, skeins: int) -> None:
    """Let so many skeins of a bath or its lot be for a line; nothing lets it go."""
    recipe_reads.lock_numbers()
    line = _line(line_id)
    check_skeins(skeins, argument="skeins", least=0)
    if skeins:
        _check_free(line, number, skeins)
    bath = Bath.objects.get(number=number)
    BathFor.objects.filter(bath=bath, line=line).exclude(skeins=skeins).delete()
    if skeins:
        BathFor.objects.get_or_create(bath=bath, line=line, defaults={"skeins": skeins})


def line_at(*, number: int, position: int) -> int:
    """Return which line stands at a place of an order."""
    line = OrderLine.objects.filter(order__number=number, position=position).first()
    if line is None:
        raise NotFoundError(kind="line of the order", key=str(position))
    return line.pk


def _line(line_id: int) -> OrderLine:
    line = OrderLine.objects.select_related("order").filter(pk=line_id).first()
    if line is None:
        raise NotFoundError(kind="line of an order", key=str(line_id))
    if line.order.is_closed:
        raise ConflictError(
            why=f"Order {line.order.number} is closed.", advice="Open it again first."
        )
    return line


def _check_free(line: OrderLine, number: str, skeins: int) -> None:
    given = yield_of(number)
    if given.why_none:
        raise ConflictError(
            why=f"{number} cannot serve an order. {given.why_none}",
            advice="Take another lot.",
            argument="skeins",
        )
    most = given.free + given.kept.get(line.pk, 0)
    if skeins > most:
        raise OutOfRangeError(
            name=f"What is taken of {number}",
            given=str(skeins),
            allowed=f"at most {most}",
            advice="The others are promised to someone else, or were never there.",
            argument="skeins",
        )
