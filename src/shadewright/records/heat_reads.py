"""Questions to the store about heat: who heats what, and how long it took."""

from django.db.models import Exists, OuterRef, QuerySet

from shadewright.errors import NotFoundError
from shadewright.records.models import Bath, BathLine, HeatSource
from shadewright.records.models.baths import BathAct

_NEWEST = 20


def source_row(source_id: int) -> HeatSource:
    """Return one heat source."""
    row = HeatSource.objects.filter(pk=source_id).first()
    if row is None:
        raise NotFoundError(kind="burner", key=str(source_id), argument="source")
    return row


def last_source_of(pot_id: int) -> HeatSource | None:
    """Return what a pot stood on the last time that this was said, if ever."""
    rows = Bath.objects.filter(pot_id=pot_id, source__is_retired=False)
    row = rows.select_related("source").order_by("-dyed_on", "-id").first()
    return None if row is None else row.source


def heated_baths(*, pot_id: int, source_id: int) -> QuerySet[Bath]:
    """Return the newest baths whose way to the top was timed in a pot on a source."""
    rows = Bath.objects.filter(pot_id=pot_id, source_id=source_id)
    rows = rows.select_related("version", "pot")
    timed = rows.filter(_has(BathAct.HEAT_ON), _has(BathAct.AT_TOP))
    return timed.order_by("-dyed_on", "-id")[:_NEWEST]


def timed_places() -> set[tuple[int, int]]:
    """Return every pot on every source that a way to the top was ever timed with."""
    rows = Bath.objects.filter(pot__isnull=False, source__isnull=False)
    timed = rows.filter(_has(BathAct.HEAT_ON), _has(BathAct.AT_TOP))
    return set(timed.order_by().values_list("pot_id", "source_id").distinct())


def heat_lines(baths: list[Bath]) -> QuerySet[BathLine]:
    """Return what was ticked and read of the heat in some baths, in order."""
    acts = (BathAct.HEAT_ON, BathAct.AT_TOP, BathAct.TEMPERATURE)
    return _standing().filter(bath__in=baths, act__in=acts).order_by("id")


def _has(act: BathAct) -> Exists:
    return Exists(_standing().filter(bath=OuterRef("pk"), act=act))


def _standing() -> QuerySet[BathLine]:
    return BathLine.objects.filter(undone_by=None)
