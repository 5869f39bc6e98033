"""What stands on the shelf: powder jars, stock bottles, a stock in the making.

How much is left of a jar or a bottle, and how strong it is, is not kept here:
it follows from the ledgers.
"""

import uuid

from django.db import models
from django.utils import timezone

from shadewright.records.models.catalogue import Dye, MeasuringTool
from shadewright.records.models.people import Person


class PowderJar(models.Model):
    """A jar of dye powder, with the supplier's lot on it."""

    code = models.CharField(max_length=12, unique=True)
    dye = models.ForeignKey(Dye, on_delete=models.PROTECT, related_name="jars")
    lot = models.CharField(max_length=40, blank=True)
    opened_on = models.DateField(null=True, blank=True)
    price = models.DecimalField(max_digits=9, decimal_places=2, null=True, blank=True)
    strength_percent = models.FloatField(default=100.0)
    notes = models.TextField(max_length=2000, blank=True)
    is_retired = models.BooleanField(default=False)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["dye__name", "code"]

    def __str__(self) -> str:
        """Return its code."""
        return self.code


class Evidence(models.TextChoices):
    """What a bottle's first strength rests on."""

    WEIGHED = "weighed", "weighed"
    LABELLED = "labelled", "as labelled: a guess"
    MIXED = "mixed", "mixed from other bottles"


class StockBottle(models.Model):
    """A bottle of stock; ``strength_percent`` is the true strength at the start.

    ``labelled_percent`` is what its newest printed label says; None before one.
    ``spread`` holds the terms of its first strength, ``gross_g`` what the full
    bottle weighed.
    """

    code = models.CharField(max_length=4, unique=True)
    dye = models.ForeignKey(Dye, on_delete=models.PROTECT, related_name="bottles")
    jar = models.ForeignKey(
        PowderJar, null=True, on_delete=models.PROTECT, related_name="bottles"
    )
    wanted_percent = models.FloatField(null=True)
    powder_g = models.FloatField(null=True)
    powder_strength_percent = models.FloatField(null=True)
    final_ml = models.FloatField()
    strength_percent = models.FloatField()
    evidence = models.CharField(max_length=10, choices=Evidence.choices)
    made_on = models.DateField(null=True)
    is_date_about = models.BooleanField(default=False)
    made_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )
    water = models.CharField(max_length=80, blank=True)
    place = models.CharField(max_length=40, blank=True)
    discard_by = models.DateField(null=True)
    dead_volume_ml = models.FloatField(default=0.0)
    labelled_percent = models.FloatField(null=True)
    scale = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    ware = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    is_by_weight = models.BooleanField(default=False)
    gross_g = models.FloatField(null=True)
    spread = models.JSONField(default=list)
    spread_method = models.CharField(max_length=40, blank=True)
    notes = models.TextField(max_length=2000, blank=True)
    method = models.CharField(max_length=40)
    created_at = models.DateTimeField(default=timezone.now)

    class Meta:
        ordering = ["dye__name", "code"]

    def __str__(self) -> str:
        """Return its code."""
        return self.code


class StockMaking(models.Model):
    """A stock in the making: what was typed so far, kept at every step."""

    deed = models.UUIDField(default=uuid.uuid4, unique=True)
    dye = models.ForeignKey(Dye, on_delete=models.PROTECT, related_name="+")
    jar = models.ForeignKey(
        PowderJar, null=True, on_delete=models.PROTECT, related_name="+"
    )
    wanted_percent = models.FloatField()
    volume_ml = models.FloatField()
    step = models.CharField(max_length=12)
    scale = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    ware = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    is_by_weight = models.BooleanField(default=False)
    powder_g = models.FloatField(null=True)
    filled_g = models.FloatField(null=True)
    final_ml = models.FloatField(null=True)
    water = models.CharField(max_length=80, blank=True)
    place = models.CharField(max_length=40, blank=True)
    discard_by = models.DateField(null=True)
    notes = models.TextField(max_length=2000, blank=True)
    started_at = models.DateTimeField(default=timezone.now)
    started_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )
    bottle = models.OneToOneField(
        StockBottle, null=True, on_delete=models.PROTECT, related_name="making"
    )
    abandoned_at = models.DateTimeField(null=True)

    class Meta:
        ordering = ["-started_at"]

    def __str__(self) -> str:
        """Return what is being made."""
        return f"{self.dye} {self.volume_ml:g} ml at {self.wanted_percent:g} %"
