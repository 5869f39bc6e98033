"""Dye days: the room, who is in, what is wished of each bath, and the plans made.

The baths of a day are the baths planned for its date; a row here says what the day
itself needs to know. Nothing here is needed to dye: a day without a row has the room's
usual hours and places.
"""

from datetime import time

from django.db import models
from django.utils import timezone

from shadewright.records.models.baths import Bath, Pot
from shadewright.records.models.catalogue import HeatSource
from shadewright.records.models.ledgers import LedgerRow, LedgerRows
from shadewright.records.models.people import Person, Studio


class DyeRoom(models.Model):
    """The room's own limits and habits; one row, the studio's.

    ``rack_slots`` are places for a skein. ``dry_hours`` is how long yarn takes to dry
    on the rack, ``pack_days`` what reskeining, tags and packing take after that.
    """

    studio = models.OneToOneField(
        Studio, on_delete=models.PROTECT, related_name="dye_room"
    )
    opens_at = models.TimeField(default=time(8))
    closes_at = models.TimeField(default=time(18))
    sinks = models.PositiveIntegerField(default=1)
    rack_slots = models.PositiveIntegerField(default=40)
    washout_min = models.FloatField(default=10.0)
    dry_hours = models.FloatField(default=36.0)
    pack_days = models.FloatField(default=2.0)
    seconds_percent = models.FloatField(default=5.0)
    spare_percent = models.FloatField(default=10.0)
    look_every_min = models.FloatField(default=20.0)
    cools_overnight = models.BooleanField(default=True)

    def __str__(self) -> str:
        """Return whose room it is."""
        return f"The dye room of {self.studio}"


class DyeDay(models.Model):
    """One date on which is dyed; empty fields are as the room has them."""

    day = models.DateField(unique=True)
    opens_at = models.TimeField(null=True)
    closes_at = models.TimeField(null=True)
    sinks = models.PositiveIntegerField(null=True)
    rack_slots = models.PositiveIntegerField(null=True)
    rack_used = models.PositiveIntegerField(null=True)
    notes = models.TextField(max_length=2000, blank=True)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["-day"]

    def __str__(self) -> str:
        """Return its date."""
        return f"{self.day:%d %B %Y}"


class ClosedDays(models.Model):
    """Days, from the first to the last, on which nobody works in the studio."""

    first_on = models.DateField()
    last_on = models.DateField()
    why = models.CharField(max_length=80, blank=True)

    class Meta:
        ordering = ["first_on", "id"]

    def __str__(self) -> str:
        """Return from when to when."""
        return f"{self.first_on:%d %B %Y} to {self.last_on:%d %B %Y}"


class DayPresence(models.Model):
    """When somebody is in on a day; a helper may be no person of the studio.

    Somebody may come twice a day. A day without any row has the studio's people in
    from its opening to its close.
    """

    dye_day = models.ForeignKey(
        DyeDay, on_delete=models.CASCADE, related_name="presences"
    )
    person = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )
    name = models.CharField(max_length=40)
    starts_at = models.TimeField()
    ends_at = models.TimeField()

    class Meta:
        ordering = ["starts_at", "id"]

    def __str__(self) -> str:
        """Return who and when."""
        return f"{self.name} {self.starts_at:%H:%M} to {self.ends_at:%H:%M}"


class DayOutage(models.Model):
    """A pot or a source that cannot be used on a day, from a time on or all day."""

    dye_day = models.ForeignKey(
        DyeDay, on_delete=models.CASCADE, related_name="outages"
    )
    pot = models.ForeignKey(
        Pot, null=True, on_delete=models.PROTECT, related_name="outages"
    )
    source = models.ForeignKey(
        HeatSource, null=True, on_delete=models.PROTECT, related_name="outages"
    )
    starts_at = models.TimeField(null=True)
    why = models.CharField(max_length=120, blank=True)

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return what is out."""
        return f"{self.pot or self.source} out"


class DayWish(models.Model):
    """What is wished of a bath within its day; empty where the plan may choose.

    ``batch`` is shared by baths that one wish was split into: one batch, separate lots.
    ``is_overnight`` and ``cools_on_source`` are None where habit and weight decide.
    """

    bath = models.OneToOneField(Bath, on_delete=models.PROTECT, related_name="day_wish")
    batch = models.UUIDField(null=True, db_index=True)
    is_overnight = models.BooleanField(null=True)
    cools_on_source = models.BooleanField(null=True)
    is_steamed = models.BooleanField(default=False)
    due_at = models.TimeField(null=True)
    family = models.CharField(max_length=20, blank=True)
    pot = models.ForeignKey(Pot, null=True, on_delete=models.PROTECT, related_name="+")
    source = models.ForeignKey(
        HeatSource, null=True, on_delete=models.PROTECT, related_name="+"
    )
    starts_at = models.TimeField(null=True)

    class Meta:
        ordering = ["bath"]

    def __str__(self) -> str:
        """Return whose wish it is."""
        return f"{self.bath}: wishes"


class DaySchedule(models.Model):
    """A plan of a day, once made never changed; the newest holds.

    ``asked`` and ``plan`` are the day and its plan as ``shadewright day plan`` reads
    and writes them, baths by number, so that an old plan still explains itself.
    """

    dye_day = models.ForeignKey(
        DyeDay, on_delete=models.PROTECT, related_name="schedules"
    )
    deed = models.UUIDField(unique=True)
    why = models.CharField(max_length=200, blank=True)
    asked = models.JSONField()
    plan = models.JSONField()
    method = models.CharField(max_length=60)
    made_at = models.DateTimeField(default=timezone.now)
    made_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return its day and when it was made."""
        return f"{self.dye_day}, made {self.made_at:%H:%M}"


class DayAct(models.TextChoices):
    """What can be written of a day itself."""

    ALL_OFF = "all off", "All off"
    WATER = "water", "Water read"
    POWER = "power", "Power read"
    NOTE = "note", "Note"
    UNDO = "undone", "Undone"


class DayLine(LedgerRow):
    """A line of a day's ledger: all off, a meter read, a note."""

    dye_day = models.ForeignKey(DyeDay, on_delete=models.PROTECT, related_name="lines")
    act = models.CharField(max_length=12, choices=DayAct.choices)
    value = models.FloatField(null=True)
    unit = models.CharField(max_length=8, blank=True)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["DayLine"].as_manager()
    counter_keeps = ("dye_day",)
    counter_act = DayAct.UNDO

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the day and what was written."""
        return f"{self.dye_day} {self.act}"
