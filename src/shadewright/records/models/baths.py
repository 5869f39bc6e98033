"""Baths: as planned, and, line by line, as they really went."""

from django.db import models
from django.utils import timezone

from shadewright.records.models.catalogue import (
    Base,
    CatalogueItem,
    Dye,
    HeatSource,
    MeasuringTool,
    MillLot,
    Water,
)
from shadewright.records.models.ledgers import BottleLine, LedgerRow, LedgerRows
from shadewright.records.models.people import Person
from shadewright.records.models.recipes import Purpose, RecipeVersion
from shadewright.records.models.shelf import StockBottle


class PotMaterial(models.TextChoices):
    """What a pot is made of."""

    STAINLESS = "stainless", "Stainless steel"
    ENAMEL = "enamel", "Enamel"
    ALUMINIUM = "aluminium", "Aluminium (reacts with acid; can shift a shade)"
    GLASS = "glass", "Glass jar"


class Pot(CatalogueItem):
    """A pot or a jar that yarn is dyed in."""

    volume_l = models.FloatField()
    mass_kg = models.FloatField(null=True, blank=True)
    material = models.CharField(
        max_length=12, choices=PotMaterial.choices, default=PotMaterial.STAINLESS
    )


class Bath(models.Model):
    """A bath as it is planned; what became of it stands in its lines.

    ``number`` is the day and a letter with a number (261125-B2), given once
    and never again; the lot that comes out carries the same number.
    """

    number = models.CharField(max_length=16, unique=True)
    deed = models.UUIDField(unique=True)
    version = models.ForeignKey(
        RecipeVersion, on_delete=models.PROTECT, related_name="baths"
    )
    base = models.ForeignKey(Base, on_delete=models.PROTECT, related_name="baths")
    mill_lot = models.ForeignKey(
        MillLot, null=True, on_delete=models.PROTECT, related_name="baths"
    )
    pot = models.ForeignKey(
        Pot, null=True, on_delete=models.PROTECT, related_name="baths"
    )
    water = models.ForeignKey(
        Water, null=True, on_delete=models.PROTECT, related_name="baths"
    )
    source = models.ForeignKey(
        HeatSource, null=True, on_delete=models.PROTECT, related_name="baths"
    )
    yarn_scale = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    purpose = models.CharField(
        max_length=12, choices=Purpose.choices, default=Purpose.USUAL
    )
    is_by_weight = models.BooleanField(default=False)
    is_swatch = models.BooleanField(default=False)
    dyed_on = models.DateField()
    fibre_g = models.FloatField()
    wet_yarn_g = models.FloatField(null=True)
    skeins = models.PositiveIntegerField(null=True)
    liquor_ratio = models.FloatField()
    notes = models.TextField(max_length=2000, blank=True)
    method = models.CharField(max_length=40)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["-dyed_on", "-id"]
        indexes = [models.Index(fields=["dyed_on"], name="baths_by_day")]

    def __str__(self) -> str:
        """Return its number."""
        return self.number

    @property
    def liquor_ml(self) -> float:
        """All its liquor: litres to a kilogram are millilitres to a gram."""
        return self.fibre_g * self.liquor_ratio


class BathDose(models.Model):
    """A dose as planned: one dye, its depth, and its share from one bottle.

    A dose that is split over two bottles is two rows of one ``position``.
    Without a bottle the dye is weighed dry. ``spread`` holds the terms of the
    depth as planned, the whole dye's, the same on each row of a position.
    """

    bath = models.ForeignKey(Bath, on_delete=models.PROTECT, related_name="doses")
    position = models.PositiveIntegerField()
    dye = models.ForeignKey(Dye, on_delete=models.PROTECT, related_name="bath_doses")
    depth_percent = models.FloatField()
    dye_g = models.FloatField()
    bottle = models.ForeignKey(
        StockBottle, null=True, on_delete=models.PROTECT, related_name="bath_doses"
    )
    volume_ml = models.FloatField(null=True)
    strength_percent = models.FloatField(null=True)
    tool = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    spread = models.JSONField(default=list)
    spread_method = models.CharField(max_length=40, blank=True)

    class Meta:
        ordering = ["bath", "position", "id"]
        indexes = [
            models.Index(
                fields=["dye"],
                condition=models.Q(bottle=None),
                name="dry_doses_by_dye",
            ),
        ]

    def __str__(self) -> str:
        """Return the bath and the dye."""
        return f"{self.bath} {self.dye}"


class BathAct(models.TextChoices):
    """What can happen at a pot."""

    STARTED = "started", "Started"
    DOSED = "dosed", "Dose in"
    MISSED = "missed", "Dose left out"
    ADDED = "added", "Acid or helper in"
    HEAT_ON = "heat on", "Heat on"
    AT_TOP = "at top", "At temperature"
    TEMPERATURE = "temperature", "Temperature read"
    PH = "pH", "pH read"
    CHECKED = "checked", "Bath looked at"
    LEFTOVER = "leftover", "Dye left in the bath"
    RINSED = "rinsed", "Rinsed"
    HUNG = "hung", "On the rack"
    DRY = "dry", "Dry"
    NOTE = "note", "Note"
    PHOTO = "photo", "Photo"
    PROBLEM = "problem", "Problem"
    HEAT_OFF = "heat off", "Heat off"
    FINISHED = "finished", "Finished"
    GIVEN_UP = "given up", "Given up"
    UNDO = "undone", "Undone"


class BathLine(LedgerRow):
    """A line of a bath's ledger: the bath as it really went.

    ``step`` is the key of the step on the card; ``value`` is ml, g, °C, pH or
    minutes, as ``unit`` says; ``drawn`` is the line in the bottle's ledger.
    """

    bath = models.ForeignKey(Bath, on_delete=models.PROTECT, related_name="lines")
    act = models.CharField(max_length=12, choices=BathAct.choices)
    step = models.CharField(max_length=40, blank=True)
    value = models.FloatField(null=True)
    unit = models.CharField(max_length=8, blank=True)
    bottle = models.ForeignKey(
        StockBottle, null=True, on_delete=models.PROTECT, related_name="bath_lines"
    )
    drawn = models.OneToOneField(
        BottleLine, null=True, on_delete=models.PROTECT, related_name="bath_line"
    )
    device = models.CharField(max_length=40, blank=True)
    photo = models.FileField(upload_to="baths/", blank=True)
    tool = models.ForeignKey(
        MeasuringTool, null=True, on_delete=models.PROTECT, related_name="+"
    )
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["BathLine"].as_manager()
    counter_keeps = ("bath", "step")
    counter_act = BathAct.UNDO

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the bath and what happened."""
        return f"{self.bath} {self.act}"
