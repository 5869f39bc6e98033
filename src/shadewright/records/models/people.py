"""The studio and the people in it."""

from typing import Any

from django.db import models
from django.db.models.functions import Lower
from django.utils import timezone


def _usual(model: str) -> models.ForeignKey[Any, Any]:
    """Return a link to what the studio uses where nothing else is said."""
    return models.ForeignKey(
        f"records.{model}", null=True, on_delete=models.PROTECT, related_name="+"
    )


class Studio(models.Model):
    """The one studio that a database holds."""

    name = models.CharField(max_length=80)
    is_demo = models.BooleanField(default=False)
    water = models.CharField(max_length=80, blank=True)
    dead_volume_ml = models.FloatField(default=10.0)
    rate_per_hour = models.DecimalField(
        max_digits=9, decimal_places=2, null=True, blank=True
    )
    altitude_m = models.FloatField(default=0.0)
    usual_water = _usual("Water")
    powder_scale = _usual("MeasuringTool")
    yarn_scale = _usual("MeasuringTool")
    fill_tool = _usual("MeasuringTool")
    dose_tool = _usual("MeasuringTool")
    doses_by_weight = models.BooleanField(default=False)
    created_at = models.DateTimeField(default=timezone.now)

    def __str__(self) -> str:
        """Return its name."""
        return self.name


class Person(models.Model):
    """Somebody who works in the studio."""

    name = models.CharField(max_length=40)
    is_away = models.BooleanField(default=False)
    created_at = models.DateTimeField(default=timezone.now)

    class Meta:
        ordering = ["name"]
        constraints = [
            models.UniqueConstraint(Lower("name"), name="one_person_a_name"),
        ]

    def __str__(self) -> str:
        """Return the name."""
        return self.name
