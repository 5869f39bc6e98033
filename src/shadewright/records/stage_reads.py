"""Questions to the store about when each stage of a bath was ticked."""

from datetime import datetime

from django.db.models import Exists, OuterRef, QuerySet

from shadewright.records.models import Bath, BathLine, LotLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import LotAct

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


def hung_lines(*, until: datetime) -> QuerySet[BathLine]:
    """Return what was hung or called dry by a time, as far as it stands, in order.

    A lot that was weighed dry hangs no more, whatever else was ticked.
    """
    weighed = LotLine.objects.filter(
        lot__bath=OuterRef("bath"), act=LotAct.WEIGHED, undone_by=None, at__lte=until
    )
    rows = BathLine.objects.filter(
        ~Exists(weighed),
        undone_by=None,
        act__in=(BathAct.HUNG, BathAct.DRY),
        at__lte=until,
    )
    return rows.select_related("bath__version__recipe", "bath__base").order_by(
        "at", "id"
    )
