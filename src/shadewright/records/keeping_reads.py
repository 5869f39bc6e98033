"""Questions to the store about how stocks keep."""

from collections.abc import Collection

from django.db.models import QuerySet

from shadewright.core.solutions.ledger import BottleAct
from shadewright.records.models import BottleLine

LOOKS = (BottleAct.CLEAR, BottleAct.SETTLED, BottleAct.REWARMED)
"""What says whether a stock is clear: the looks, and what sets it back."""


def look_lines(dye_ids: Collection[int] | None = None) -> QuerySet[BottleLine]:
    """Return the looks at bottles whose day is known, oldest first.

    Of every dye, or of some; bottles that are gone are among them.
    """
    rows = BottleLine.objects.filter(
        act__in=[act.value for act in LOOKS],
        undone_by=None,
        bottle__made_on__isnull=False,
        bottle__is_date_about=False,
    )
    if dye_ids is not None:
        rows = rows.filter(bottle__dye__in=dye_ids)
    return rows.select_related("bottle").order_by("id")
