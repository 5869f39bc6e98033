"""Lots: what came out of a bath, and what became of it, line by line."""

from django.db import models
from django.utils import timezone

from shadewright.records.models.baths import Bath
from shadewright.records.models.ledgers import LedgerRow, LedgerRows
from shadewright.records.models.people import Person


class Grade(models.TextChoices):
    """How a lot may be sold."""

    FIRST = "first", "First"
    SECOND = "second", "Second"
    ONE_OFF = "one-off", "One-off"
    SWATCH = "swatch", "Swatch, not for sale"


class ColourEvidence(models.TextChoices):
    """What a colour that was noted rests on, the poorest first."""

    HEX = "hex", "picked on a screen"
    PHOTO = "photo", "taken from a photo"
    METER = "meter", "read by a meter"


class Lot(models.Model):
    """What came out of one bath; it carries the bath's number for good."""

    bath = models.OneToOneField(Bath, on_delete=models.PROTECT, related_name="lot")
    number = models.CharField(max_length=16, unique=True)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["-bath__dyed_on", "-id"]

    def __str__(self) -> str:
        """Return its number."""
        return self.number


class LotAct(models.TextChoices):
    """What can be written of a lot; the newest line of each kind holds."""

    GRADED = "graded", "Graded"
    PLACED = "placed", "Put away"
    WEIGHED = "weighed", "Weighed dry"
    COUNTED = "counted", "Skeins counted"
    COLOURED = "coloured", "Colour noted"
    PHOTO = "photo", "Photo"
    TIMED = "timed", "Minutes of the hands"
    SNIPPED = "snipped", "A snip is drying"
    DECIDED = "decided", "Decided"
    NOTE = "note", "Note"
    UNDO = "undone", "Undone"


class LotLine(LedgerRow):
    """A line of a lot's ledger."""

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="lines")
    act = models.CharField(max_length=12, choices=LotAct.choices)
    value = models.FloatField(null=True)
    words = models.CharField(max_length=300, blank=True)
    colour_l = models.FloatField(null=True)
    colour_a = models.FloatField(null=True)
    colour_b = models.FloatField(null=True)
    evidence = models.CharField(
        max_length=8, choices=ColourEvidence.choices, blank=True
    )
    photo = models.FileField(upload_to="lots/", blank=True)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["LotLine"].as_manager()
    counter_keeps = ("lot",)
    counter_act = LotAct.UNDO

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the lot and what was written."""
        return f"{self.lot} {self.act}"
