"""The ledgers of jars and bottles: lines are added, never changed or deleted.

A *deed* is one act of the dyer; it may write several lines (a merge writes in
two bottles) and is undone as one. Its key comes with the tap or the form, so
that the same deed sent twice is written once.
"""

from typing import Any, ClassVar, Never, Self, TypeVar

from django.db import models
from django.utils import timezone

from shadewright.core.solutions.ledger import BottleAct
from shadewright.errors import ConflictError
from shadewright.records.models.catalogue import MeasuringTool
from shadewright.records.models.people import Person
from shadewright.records.models.shelf import PowderJar, StockBottle

Line = TypeVar("Line", bound="LedgerRow")


class LedgerRows(models.QuerySet[Line]):
    """Many lines at once are no easier to change than one."""

    def update(self, **_kwargs: Any) -> Never:  # ruff: ignore[any-type]
        """Refuse: a line that stands is not changed."""
        raise ConflictError(why="A ledger line cannot be changed, only undone.")

    def bulk_update(self, *_args: Any, **_kwargs: Any) -> Never:  # ruff: ignore[any-type]
        """Refuse likewise."""
        raise ConflictError(why="A ledger line cannot be changed, only undone.")

    def delete(self) -> Never:
        """Refuse: undo is a line of its own."""
        raise ConflictError(why="A ledger line cannot be deleted, only undone.")


class LedgerRow(models.Model):
    """A line of any ledger: when it happened, when it was written, by whom."""

    deed = models.UUIDField(db_index=True)
    at = models.DateTimeField(default=timezone.now)
    written_at = models.DateTimeField(default=timezone.now)
    by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )
    note = models.CharField(max_length=300, blank=True)

    counter_keeps: ClassVar[tuple[str, ...]] = ()
    """The columns that a counter-entry shares with the line that it takes back."""
    counter_act: ClassVar[str] = ""
    """What a counter-entry says that it is, where lines say so."""

    class Meta:
        abstract = True

    def save(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        """Add the line; refuse to change one that stands."""
        if not self._state.adding:
            raise ConflictError(why="A ledger line cannot be changed, only undone.")
        super().save(*args, **kwargs)

    def delete(self, *_args: Any, **_kwargs: Any) -> Never:  # ruff: ignore[any-type]
        """Refuse: undo is a line of its own."""
        raise ConflictError(why="A ledger line cannot be deleted, only undone.")

    @property
    def is_standing(self) -> bool:
        """Whether it takes nothing back and nobody took it back."""
        is_counter = self.undoes_id is not None  # type: ignore[attr-defined]
        return not is_counter and not hasattr(self, "undone_by")

    def counter(self) -> Self:
        """Return the line, not yet kept, that takes this one back."""
        columns = {name: getattr(self, name) for name in self.counter_keeps}
        if self.counter_act:
            columns["act"] = self.counter_act
        return type(self)(**columns, undoes=self)


class JarAct(models.TextChoices):
    """What can happen to a jar of powder."""

    FILLED = "filled", "Filled"
    WEIGHED_OUT = "weighed out", "Weighed out"
    COUNTED = "counted", "Weighed anew"
    POURED = "poured away", "Handed in or thrown away"
    UNDO = "undone", "Undone"


class JarLine(LedgerRow):
    """A line of a jar's ledger; ``amount_g`` moved or, when counted, was read."""

    jar = models.ForeignKey(PowderJar, on_delete=models.PROTECT, related_name="lines")
    act = models.CharField(max_length=20, choices=JarAct.choices)
    amount_g = models.FloatField(default=0.0)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["JarLine"].as_manager()
    counter_keeps = ("jar",)
    counter_act = JarAct.UNDO

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the jar and what happened."""
        return f"{self.jar} {self.act}"


class BottleLine(LedgerRow):
    """A line of a bottle's ledger, as ``core.solutions.ledger`` reads it."""

    bottle = models.ForeignKey(
        StockBottle, on_delete=models.PROTECT, related_name="lines"
    )
    act = models.CharField(
        max_length=20, choices=[(act.value, act.value) for act in BottleAct]
    )
    volume_ml = models.FloatField(default=0.0)
    strength_percent = models.FloatField(default=0.0)
    powder_g = models.FloatField(default=0.0)
    dye_g = models.FloatField(default=0.0)
    is_guess = models.BooleanField(default=False)
    tool = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    gross_g = models.FloatField(null=True)
    spread = models.JSONField(default=list)
    jar = models.ForeignKey(
        PowderJar, null=True, on_delete=models.PROTECT, related_name="+"
    )
    other = models.ForeignKey(
        StockBottle, null=True, on_delete=models.PROTECT, related_name="+"
    )
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["BottleLine"].as_manager()
    counter_keeps = ("bottle", "other")
    counter_act = BottleAct.UNDO.value

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the bottle and what happened."""
        return f"{self.bottle} {self.act}"


class ToolCheck(LedgerRow):
    """A tool looked at: a check weight on a scale, or the water of a mark weighed.

    ``nominal`` is in the tool's unit (g of the weight, ml of the mark) and
    ``tolerance`` its half-width; ``readings`` are what the scale showed, in g.
    """

    tool = models.ForeignKey(
        MeasuringTool, on_delete=models.PROTECT, related_name="checks"
    )
    nominal = models.FloatField(default=0.0)
    tolerance = models.FloatField(default=0.0)
    readings = models.JSONField(default=list)
    scale = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    temperature_c = models.FloatField(null=True)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["ToolCheck"].as_manager()
    counter_keeps = ("tool",)

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the tool and what it was looked at with."""
        return f"{self.tool} at {self.nominal:g}"
