"""Questions to the store about when each stage of a bath was ticked."""

from django.db.models import QuerySet

from shadewright.records.models import Bath, BathLine
from shadewright.records.models.baths import BathAct

_NEWEST = 60
_ACTS = (
    BathAct.STARTED,
    BathAct.DOSED,
    BathAct.MISSED,
    BathAct.ADDED,
    BathAct.HEAT_ON,
    BathAct.AT_TOP,
    BathAct.CHECKED,
    BathAct.HEAT_OFF,
    BathAct.RINSED,
    BathAct.HUNG,
)


def timed_lines() -> QuerySet[BathLine]:
    """Return the ticks that stand in the newest sixty baths, in order."""
    newest = Bath.objects.order_by("-dyed_on", "-id").values("pk")[:_NEWEST]
    rows = BathLine.objects.filter(undone_by=None, bath__in=newest, act__in=_ACTS)
    return rows.select_related("bath").order_by("at", "id")
