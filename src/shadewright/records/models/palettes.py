"""Palettes: what the swatches taught, what was foretold by it, what came out."""

from django.db import models
from django.utils import timezone

from shadewright.records.models.baths import Bath
from shadewright.records.models.recipes import RecipeVersion, Written
from shadewright.records.models.swatches import ReadBy


class FitState(models.TextChoices):
    """How far a fit is."""

    RUNNING = "running", "Running"
    DONE = "done", "Done"
    FAILED = "failed", "Failed"


class PaletteFit(models.Model):
    """One fit of all swatches of the studio.

    ``used`` lists what it was given: swatch, base, doses, reading and day, as the
    method took them; ``suspects`` what of it was set aside and why; ``left_out``
    CIEDE2000 of each swatch used, foretold without it. ``palette`` is the text of a
    palette’s file; old fits leave it empty, since the same swatches give the same
    palette.
    """

    started_at = models.DateTimeField(default=timezone.now)
    finished_at = models.DateTimeField(null=True)
    state = models.CharField(
        max_length=8, choices=FitState.choices, default=FitState.RUNNING
    )
    why = models.CharField(max_length=120, blank=True)
    stage = models.CharField(max_length=60, blank=True)
    share = models.FloatField(default=0.0)
    fault = models.CharField(max_length=300, blank=True)
    method = models.CharField(max_length=60, blank=True)
    used = models.JSONField(default=list)
    suspects = models.JSONField(default=list)
    left_out = models.JSONField(default=dict)
    is_other_light = models.BooleanField(default=False)
    seconds = models.FloatField(null=True)
    palette = models.TextField(blank=True)

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return its number and its state."""
        return f"fit {self.pk} {self.state}"


class Prediction(Written):
    """What was foretold of a bath before it was dyed.

    ``covariance`` is that of L*, a*, b* (nine numbers, by rows), doses included;
    ``within_90`` the CIEDE2000 that nine in ten should stay under.
    """

    bath = models.OneToOneField(
        Bath, on_delete=models.PROTECT, related_name="prediction"
    )
    fit = models.ForeignKey(
        PaletteFit, on_delete=models.PROTECT, related_name="predictions"
    )
    doses = models.JSONField(default=list)
    colour_l = models.FloatField()
    colour_a = models.FloatField()
    colour_b = models.FloatField()
    covariance = models.JSONField(default=list)
    expected = models.FloatField()
    within_90 = models.FloatField()
    evidence = models.CharField(max_length=16)
    dose_error = models.FloatField()
    made_at = models.DateTimeField(default=timezone.now)

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return the bath and the spread."""
        return f"{self.bath} within {self.within_90:g}"


class FoundFor(Written):
    """For which colour a recipe’s version was found, and how near it should come."""

    version = models.OneToOneField(
        RecipeVersion, on_delete=models.PROTECT, related_name="found_for"
    )
    fit = models.ForeignKey(
        PaletteFit, on_delete=models.PROTECT, related_name="recipes"
    )
    name = models.CharField(max_length=60, blank=True)
    base_name = models.CharField(max_length=60)
    read_by = models.CharField(max_length=16, choices=ReadBy.choices)
    labs = models.JSONField(default=dict)
    spectrum = models.JSONField(default=list)
    foretold = models.JSONField(default=list)
    difference = models.FloatField()
    expected = models.FloatField()
    within_90 = models.FloatField()
    tolerance = models.FloatField()
    chance = models.FloatField()

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return the version and the colour."""
        return f"{self.version} for {self.name}"
