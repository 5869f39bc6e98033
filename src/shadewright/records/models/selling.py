"""From a lot to its buyers and back: skeins that went out, complaints, tags."""

from django.db import models
from django.utils import timezone

from shadewright.records.models.catalogue import Base
from shadewright.records.models.ledgers import LedgerRow, LedgerRows
from shadewright.records.models.lots import Lot
from shadewright.records.models.orders import OrderLine
from shadewright.records.models.people import Person, Studio
from shadewright.records.models.recipes import Recipe


class CorrectionKind(models.TextChoices):
    """Why a lot goes back into a bath."""

    CORRECT = "correct", "To come to shade"
    OVERDYE = "overdye", "Overdyed"


class Correction(models.Model):
    """A lot that goes back into a bath: its additions are a recipe of their own.

    ``recipe`` is no colourway and stands in no list of them; the bath dyed from it has
    its own number and lot. ``foretold`` keeps what was reckoned, and by which method.
    """

    deed = models.UUIDField(unique=True)
    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="corrections")
    recipe = models.OneToOneField(
        Recipe, on_delete=models.PROTECT, related_name="correction"
    )
    kind = models.CharField(max_length=12, choices=CorrectionKind.choices)
    becomes = models.ForeignKey(
        Recipe, null=True, on_delete=models.PROTECT, related_name="overdyed_from"
    )
    foretold = models.JSONField(default=dict)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return which lot and why."""
        return f"{self.lot}: {self.get_kind_display()}"


class SkeinsOut(LedgerRow):
    """Skeins of a lot that went to somebody."""

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="skeins_out")
    skeins = models.PositiveIntegerField()
    to_whom = models.CharField(max_length=80)
    reach = models.CharField(max_length=120, blank=True)
    order_line = models.ForeignKey(
        OrderLine, null=True, on_delete=models.PROTECT, related_name="skeins_out"
    )
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["SkeinsOut"].as_manager()
    counter_keeps = ("lot", "skeins", "to_whom")

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return how many of which lot."""
        return f"{self.skeins} of {self.lot} to {self.to_whom}"


class ComplaintAbout(models.TextChoices):
    """What a buyer writes about."""

    BLEEDS = "bleeds", "It bleeds"
    RUBS = "rubs", "It rubs off"
    NO_MATCH = "no match", "It does not match"
    UNEVEN = "uneven", "It is uneven"
    SHORT = "short", "It is short"
    OTHER = "other", "Something else"


class Complaint(models.Model):
    """What a buyer wrote of a skein, and how it ended."""

    number = models.PositiveIntegerField(unique=True)
    deed = models.UUIDField(unique=True)
    lot = models.ForeignKey(
        Lot, null=True, on_delete=models.PROTECT, related_name="complaints"
    )
    from_whom = models.CharField(max_length=80)
    about = models.CharField(max_length=12, choices=ComplaintAbout.choices)
    said = models.TextField(max_length=4000, blank=True)
    came_on = models.DateField()
    photo = models.FileField(upload_to="complaints/", blank=True)
    is_closed = models.BooleanField(default=False)
    outcome = models.CharField(max_length=300, blank=True)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["is_closed", "-number"]

    def __str__(self) -> str:
        """Return its number and from whom it came."""
        return f"{self.number} {self.from_whom}"


class Maker(models.Model):
    """What every tag says of whoever made the yarn; one row, the studio's."""

    studio = models.OneToOneField(
        Studio, on_delete=models.PROTECT, related_name="maker"
    )
    name = models.CharField(max_length=80, blank=True)
    address = models.CharField(max_length=200, blank=True)
    origin = models.CharField(max_length=160, blank=True)
    care = models.CharField(max_length=300, blank=True)

    def __str__(self) -> str:
        """Return the maker's name."""
        return self.name


class TagRegion(models.Model):
    """What a region asks of a tag, as the studio wrote it down, with its source.

    ``asks`` is a list of sentences to tick off; ``fibre_names`` gives the names that a
    fibre must have there. The studio checks its local rules itself.
    """

    name = models.CharField(max_length=60, unique=True)
    asks = models.JSONField(default=list)
    fibre_names = models.JSONField(default=dict)
    source = models.CharField(max_length=200, blank=True)
    checked_on = models.DateField(null=True)
    is_used = models.BooleanField(default=False)

    class Meta:
        ordering = ["name"]

    def __str__(self) -> str:
        """Return its name."""
        return self.name


class TagText(models.Model):
    """What the tags of a base say of its fibres and its care, in words for a buyer."""

    base = models.OneToOneField(Base, on_delete=models.PROTECT, related_name="tag_text")
    fibre_content = models.CharField(max_length=200, blank=True)
    care = models.CharField(max_length=300, blank=True)

    def __str__(self) -> str:
        """Return whose tags they are."""
        return f"Tags of {self.base}"
