"""What waits to be put on a day: the lines of orders behind what is to be dyed."""

from collections.abc import Iterable
from dataclasses import dataclass

from shadewright.records import recipe_reads
from shadewright.records.models import Base, OrderLine
from shadewright.workflows.days.demand import ToDye


@dataclass(frozen=True, kw_only=True)
class LineWaiting:
    """A line of an order that still wants skeins of a colourway on a base."""

    line_id: int
    recipe_id: int
    base_id: int
    order_number: int
    for_whom: str
    skeins: int
    skein_g: float


def lines_waiting(to_dye: Iterable[ToDye]) -> tuple[LineWaiting, ...]:
    """Return every line that still wants skeins, the most urgent first."""
    wanted = [(each, *pair) for each in to_dye for pair in each.for_lines]
    ids = [line_id for _, line_id, _ in wanted]
    rows = OrderLine.objects.select_related("order").in_bulk(ids)
    return tuple(
        LineWaiting(
            line_id=line_id,
            recipe_id=each.recipe_id,
            base_id=each.base_id,
            order_number=rows[line_id].order.number,
            for_whom=rows[line_id].order.for_whom,
            skeins=skeins,
            skein_g=each.skein_g,
        )
        for each, line_id, skeins in wanted
    )


def newest_version_id(recipe_id: int) -> int:
    """Return the version of a recipe that holds now."""
    return int(recipe_reads.recipe_row(recipe_id).versions.all()[0].pk)


def usual_skein_g(base_id: int) -> float | None:
    """Return what a skein of a base usually weighs, as far as it was said."""
    found = Base.objects.filter(pk=base_id).values_list("skein_g", flat=True)
    return found.first()
