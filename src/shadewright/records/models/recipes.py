"""Recipes: a colourway's versions, none of which is ever changed.

A version has one or more *parts* (a share of the yarn and its doses), so that
painted and speckled yarn can come later; kettle dyeing is one part. An old
recipe is taken in as it was written and marked incomplete.
"""

from typing import Any, Never

from django.db import models
from django.db.models.functions import Lower
from django.utils import timezone

from shadewright.errors import ConflictError
from shadewright.records.models.catalogue import Auxiliary, Dye
from shadewright.records.models.people import Person


class Technique(models.TextChoices):
    """How the dye comes to the yarn."""

    KETTLE = "kettle", "Kettle"


class AmountUnit(models.TextChoices):
    """What an auxiliary's amount is counted in."""

    ON_FIBRE = "% owf", "% on weight of fibre"
    PER_LITRE = "g/l", "g per litre of bath"


class When(models.TextChoices):
    """When an auxiliary goes in."""

    START = "start", "at the start, before the yarn"
    AFTER_DYE = "after dye", "after the dye, before the heat"
    ON_THE_WAY = "on the way", "on the way up, at a temperature"
    AT_TOP = "at top", "at the top temperature"
    TWO_HALVES = "two halves", "half before the heat, half at the top"


class Purpose(models.TextChoices):
    """How well a colour must come out, and so which bottles it may take."""

    MUST_REPEAT = "must repeat", "Must repeat"
    USUAL = "usual", "As usual"
    PLAY = "play", "Play"


class Written(models.Model):
    """A row that is written once and never changed."""

    class Meta:
        abstract = True

    def save(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        """Add the row; refuse to change one that stands."""
        if not self._state.adding:
            raise ConflictError(
                why="A recipe’s version is never changed.",
                advice="Write a new version instead.",
            )
        super().save(*args, **kwargs)

    def delete(self, *_args: Any, **_kwargs: Any) -> Never:  # ruff: ignore[any-type]
        """Refuse: a version that was dyed from must stay readable."""
        raise ConflictError(why="A recipe’s version is never deleted.")


class Recipe(models.Model):
    """A colourway: a name that its versions share."""

    name = models.CharField(max_length=60)
    was_named = models.CharField(max_length=200, blank=True)
    is_retired = models.BooleanField(default=False)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["name"]
        constraints = [
            models.UniqueConstraint(Lower("name"), name="one_recipe_a_name"),
        ]

    def __str__(self) -> str:
        """Return its name."""
        return self.name


class RecipeVersion(Written):
    """One version of a recipe, whole and for good."""

    recipe = models.ForeignKey(
        Recipe, on_delete=models.PROTECT, related_name="versions"
    )
    number = models.PositiveIntegerField()
    parent = models.ForeignKey(
        "self", null=True, on_delete=models.PROTECT, related_name="children"
    )
    deed = models.UUIDField(unique=True)
    liquor_ratio = models.FloatField(null=True)
    start_c = models.FloatField(null=True)
    rise_c_per_min = models.FloatField(null=True)
    top_c = models.FloatField(null=True)
    hold_min = models.FloatField(null=True)
    curve = models.JSONField(default=list)
    purpose = models.CharField(
        max_length=12, choices=Purpose.choices, default=Purpose.USUAL
    )
    ties = models.CharField(max_length=200, blank=True)
    stirring = models.CharField(max_length=200, blank=True)
    look_at_15 = models.CharField(max_length=200, blank=True)
    notes = models.TextField(max_length=4000, blank=True)
    as_written = models.TextField(max_length=4000, blank=True)
    what_is_missing = models.CharField(max_length=300, blank=True)
    why_changed = models.CharField(max_length=300, blank=True)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["recipe__name", "-number"]
        constraints = [
            models.UniqueConstraint(
                fields=["recipe", "number"], name="one_version_number_a_recipe"
            ),
        ]

    def __str__(self) -> str:
        """Return the recipe and the version."""
        return f"{self.recipe} v{self.number}"


class RecipePart(Written):
    """A share of the yarn that gets its own doses."""

    version = models.ForeignKey(
        RecipeVersion, on_delete=models.PROTECT, related_name="parts"
    )
    position = models.PositiveIntegerField(default=1)
    name = models.CharField(max_length=40, default="all of it")
    technique = models.CharField(
        max_length=20, choices=Technique.choices, default=Technique.KETTLE
    )
    share_percent = models.FloatField(default=100.0)

    class Meta:
        ordering = ["version", "position"]

    def __str__(self) -> str:
        """Return the version and the part."""
        return f"{self.version}: {self.name}"


class RecipeDose(Written):
    """One dye of a part; the words as written where the depth is not known."""

    part = models.ForeignKey(RecipePart, on_delete=models.PROTECT, related_name="doses")
    position = models.PositiveIntegerField()
    dye = models.ForeignKey(
        Dye, null=True, on_delete=models.PROTECT, related_name="recipe_doses"
    )
    depth_percent = models.FloatField(null=True)
    as_written = models.CharField(max_length=120, blank=True)

    class Meta:
        ordering = ["part", "position"]

    def __str__(self) -> str:
        """Return the dye and the depth, or the words."""
        return self.as_written or f"{self.dye} {self.depth_percent:g} %"


class RecipeAuxiliary(Written):
    """An acid, a salt or another helper of a version, and when it goes in."""

    version = models.ForeignKey(
        RecipeVersion, on_delete=models.PROTECT, related_name="auxiliaries"
    )
    position = models.PositiveIntegerField()
    auxiliary = models.ForeignKey(
        Auxiliary, on_delete=models.PROTECT, related_name="recipe_uses"
    )
    amount = models.FloatField()
    unit = models.CharField(max_length=8, choices=AmountUnit.choices)
    when = models.CharField(max_length=12, choices=When.choices)
    at_c = models.FloatField(null=True)

    class Meta:
        ordering = ["version", "position"]

    def __str__(self) -> str:
        """Return what and how much."""
        return f"{self.auxiliary} {self.amount:g} {self.unit}"
