"""Demand: what was ordered, what the shelf should hold, and which baths are for it."""

from datetime import date
from typing import Any, Self

from django.db import models
from django.utils import timezone

from shadewright.records.models.baths import Bath
from shadewright.records.models.catalogue import Base
from shadewright.records.models.ledgers import LedgerRow, LedgerRows
from shadewright.records.models.people import Person
from shadewright.records.models.recipes import Recipe


class Order(models.Model):
    """What somebody wants, or the studio itself for a club or a fair.

    ``number`` is given once; ``promised_on`` is what was told to whoever asked.
    """

    number = models.PositiveIntegerField(unique=True)
    deed = models.UUIDField(unique=True)
    for_whom = models.CharField(max_length=80)
    due_on = models.DateField(null=True)
    promised_on = models.DateField(null=True)
    notes = models.TextField(max_length=2000, blank=True)
    is_closed = models.BooleanField(default=False)
    why_closed = models.CharField(max_length=120, blank=True)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["is_closed", "due_on", "number"]

    def __str__(self) -> str:
        """Return its number and for whom it is."""
        return f"{self.number} {self.for_whom}"

    def said(self) -> dict[str, Any]:
        """Return all that it says, as JSON holds it; its lines in their order."""
        lines = self.lines.order_by("position")
        return {
            "for_whom": self.for_whom,
            "due_on": _iso(self.due_on),
            "promised_on": _iso(self.promised_on),
            "notes": self.notes,
            "is_closed": self.is_closed,
            "why_closed": self.why_closed,
            "lines": [{name: getattr(x, name) for name in _LINE} for x in lines],
        }


_LINE = ("recipe_id", "base_id", "skeins", "skein_g", "as_said", "is_dropped")


class OrderEdit(LedgerRow):
    """A line of an order's ledger: what the order said before, and what after.

    Both are as ``Order.said`` gives them.
    """

    order = models.ForeignKey(Order, on_delete=models.PROTECT, related_name="edits")
    before = models.JSONField(default=dict)
    after = models.JSONField(default=dict)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["OrderEdit"].as_manager()
    counter_keeps = ("order",)

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return which order was edited."""
        return f"{self.order} edited"

    def counter(self) -> Self:
        """Return the line by which the order says again what it said before."""
        back = super().counter()
        back.before, back.after = self.after, self.before
        return back

    @property
    def is_closing(self) -> bool:
        """Whether it closed the order or opened it again."""
        return bool(self.before["is_closed"] != self.after["is_closed"])


def _iso(day: date | str | None) -> str | None:
    return None if day is None else str(day)


class OrderLine(models.Model):
    """One colourway on one base of an order, in skeins of so many grams.

    ``as_said`` is what the customer asked for in their own words.
    """

    order = models.ForeignKey(Order, on_delete=models.PROTECT, related_name="lines")
    position = models.PositiveIntegerField()
    recipe = models.ForeignKey(
        Recipe, on_delete=models.PROTECT, related_name="order_lines"
    )
    base = models.ForeignKey(Base, on_delete=models.PROTECT, related_name="order_lines")
    skeins = models.PositiveIntegerField()
    skein_g = models.FloatField()
    as_said = models.CharField(max_length=300, blank=True)
    is_dropped = models.BooleanField(default=False)

    class Meta:
        ordering = ["order", "position"]

    def __str__(self) -> str:
        """Return what it asks for."""
        return f"{self.skeins} of {self.recipe} on {self.base}"


class ParLevel(models.Model):
    """How many skeins of a colourway on a base the studio wants on its shelf."""

    recipe = models.ForeignKey(
        Recipe, on_delete=models.PROTECT, related_name="par_levels"
    )
    base = models.ForeignKey(Base, on_delete=models.PROTECT, related_name="par_levels")
    skeins = models.PositiveIntegerField()
    skein_g = models.FloatField()

    class Meta:
        ordering = ["recipe", "base"]
        constraints = [
            models.UniqueConstraint(
                fields=["recipe", "base"], name="one_par_a_recipe_and_base"
            ),
        ]

    def __str__(self) -> str:
        """Return what and how many."""
        return f"{self.skeins} of {self.recipe} on {self.base}"


class BathFor(models.Model):
    """How many skeins of a bath are dyed for an order's line; the rest is for stock."""

    bath = models.ForeignKey(Bath, on_delete=models.PROTECT, related_name="for_lines")
    line = models.ForeignKey(OrderLine, on_delete=models.PROTECT, related_name="baths")
    skeins = models.PositiveIntegerField()

    class Meta:
        ordering = ["bath", "id"]
        constraints = [
            models.UniqueConstraint(
                fields=["bath", "line"], name="one_share_a_bath_and_line"
            ),
        ]

    def __str__(self) -> str:
        """Return which bath is for what."""
        return f"{self.bath}: {self.skeins} for {self.line.order}"
