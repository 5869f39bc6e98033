"""Questions to the store about dye days and orders."""

from datetime import date, datetime, timedelta
from uuid import UUID

from django.db.models import Max, QuerySet

from shadewright.records import recipe_reads
from shadewright.records.models import (
    Bath,
    BathLine,
    Circuit,
    ClosedDays,
    DayLine,
    DaySchedule,
    DyeDay,
    DyeRoom,
    HeatSource,
    Order,
    ParLevel,
    Pot,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.days import DayAct


def room_row() -> DyeRoom | None:
    """Return the dye room as it was described, if ever."""
    return DyeRoom.objects.first()


def day_row(day: date) -> DyeDay | None:
    """Return what was said of a day, if anything, with who is in and what is out."""
    rows = DyeDay.objects.prefetch_related(
        "presences__person", "outages__pot", "outages__source"
    )
    return rows.filter(day=day).first()


def days_from(day: date) -> QuerySet[DyeDay]:
    """Return the days that were described, from a date on, the soonest first."""
    return DyeDay.objects.filter(day__gte=day).order_by("day")


def closed_rows(*, since: date) -> QuerySet[ClosedDays]:
    """Return the closed days that are not over by a date, the soonest first."""
    return ClosedDays.objects.filter(last_on__gte=since)


def days_with_plan(since: date) -> list[date]:
    """Return the days from a date on of which a plan was made."""
    rows = DyeDay.objects.filter(day__gte=since, schedules__isnull=False)
    return list(rows.values_list("day", flat=True).distinct())


def baths_of_day(day: date) -> QuerySet[Bath]:
    """Return the baths planned for a date, with wishes and ledgers, oldest first."""
    rows = recipe_reads.bath_rows().filter(dyed_on=day).order_by("id")
    rows = rows.select_related("day_wish__pot", "day_wish__source")
    return rows.prefetch_related("lines", "for_lines__line__order")


def baths_before(day: date, *, days: int) -> QuerySet[Bath]:
    """Return the baths of so many days before a date, oldest first."""
    rows = recipe_reads.bath_rows().filter(
        dyed_on__lt=day, dyed_on__gte=day - timedelta(days=days)
    )
    rows = rows.select_related("day_wish__pot", "day_wish__source")
    return rows.prefetch_related("lines").order_by("dyed_on", "id")


def schedule_row(day: date) -> DaySchedule | None:
    """Return the newest plan of a day, if one was made."""
    rows = DaySchedule.objects.select_related("dye_day", "made_by")
    return rows.filter(dye_day__day=day).first()


def schedule_of_deed(deed: UUID) -> DaySchedule | None:
    """Return the plan that a deed made already, if any."""
    return DaySchedule.objects.filter(deed=deed).first()


def day_lines(day: date) -> QuerySet[DayLine]:
    """Return what was written of a day itself, in order."""
    return DayLine.objects.filter(dye_day__day=day).select_related("by")


def day_lines_of(deed: UUID) -> QuerySet[DayLine]:
    """Return the lines in days' ledgers that one deed wrote."""
    return DayLine.objects.filter(deed=deed).select_related("dye_day").order_by("id")


def heated_at(day: date) -> datetime | None:
    """Return when a heat was last put on that day, as far as it stands."""
    lines = BathLine.objects.filter(
        act=BathAct.HEAT_ON, at__date=day, undone_by=None, undoes=None
    )
    last: datetime | None = lines.aggregate(last=Max("at"))["last"]
    return last


def all_off_at(day: date) -> datetime | None:
    """Return when it was last said that all is off that day, as far as it stands."""
    lines = day_lines(day).filter(act=DayAct.ALL_OFF, undone_by=None)
    last: datetime | None = lines.aggregate(last=Max("at"))["last"]
    return last


def pot_rows() -> QuerySet[Pot]:
    """Return the pots in use, by name."""
    return Pot.objects.filter(is_retired=False)


def source_rows() -> QuerySet[HeatSource]:
    """Return the heat sources in use with their circuits, by name."""
    return HeatSource.objects.filter(is_retired=False).select_related("circuit")


def circuit_rows() -> QuerySet[Circuit]:
    """Return the circuits in use, by name."""
    return Circuit.objects.filter(is_retired=False)


def order_rows() -> QuerySet[Order]:
    """Return orders with their lines and the baths for them, the soonest due first."""
    return Order.objects.prefetch_related(
        "lines__recipe", "lines__base", "lines__baths__bath"
    )


def par_rows() -> QuerySet[ParLevel]:
    """Return what the shelf should hold."""
    return ParLevel.objects.select_related("recipe", "base")
