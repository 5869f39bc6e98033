"""Swatches: pieces of yarn whose colour teaches, and how each colour was come by."""

from django.db import models
from django.utils import timezone

from shadewright.records.models.baths import Bath
from shadewright.records.models.catalogue import Base, CatalogueItem, Dye
from shadewright.records.models.ledgers import LedgerRow, LedgerRows
from shadewright.records.models.people import Person
from shadewright.records.models.recipes import Recipe


class MeterLight(models.TextChoices):
    """The daylight that a meter reckons its Lab for."""

    D65 = "D65", "D65"
    D50 = "D50", "D50"


class MeterObserver(models.TextChoices):
    """The field of view that a meter reckons its Lab for."""

    TEN = "10", "10°"
    TWO = "2", "2°"


class Meter(CatalogueItem):
    """A meter for colour; ``spread`` is one reading’s standard deviation in Lab."""

    light = models.CharField(
        max_length=4, choices=MeterLight.choices, default=MeterLight.D65
    )
    observer = models.CharField(
        max_length=4, choices=MeterObserver.choices, default=MeterObserver.TEN
    )
    geometry = models.CharField(max_length=40, blank=True)
    spread = models.FloatField(null=True, blank=True)


class ReadBy(models.TextChoices):
    """How a colour was come by, the poorest first."""

    CHART = "chart", "off a maker’s chart"
    EYE = "eye", "picked on a screen beside the yarn"
    PHOTO = "photo", "off a photo"
    PHOTO_CARD = "photo with card", "off a photo with a grey card in it"
    METER = "meter", "read by a meter"
    LIGHTS = "lights", "read by a meter under three lights"
    SPECTRUM = "spectrum", "a spectrum"


class Swatch(models.Model):
    """Yarn whose colour teaches: bare, a swatch, or an end of a lot.

    With a ``bath`` its doses are those that the bath really got; without one they
    are its own rows. ``label`` is what stands on its tag; ``session`` names the
    dyeing that it shares with others where no day is known.
    """

    deed = models.UUIDField(db_index=True)
    label = models.CharField(max_length=60)
    base = models.ForeignKey(Base, on_delete=models.PROTECT, related_name="swatches")
    bath = models.OneToOneField(
        Bath, null=True, on_delete=models.PROTECT, related_name="swatch"
    )
    dyed_on = models.DateField(null=True)
    session = models.CharField(max_length=60, blank=True)
    note = models.CharField(max_length=300, blank=True)
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return its label."""
        return self.label


class SwatchDose(models.Model):
    """A dye of a swatch that no bath of the studio tells of."""

    swatch = models.ForeignKey(Swatch, on_delete=models.PROTECT, related_name="doses")
    position = models.PositiveIntegerField()
    dye = models.ForeignKey(Dye, on_delete=models.PROTECT, related_name="swatch_doses")
    depth_percent = models.FloatField()

    class Meta:
        ordering = ["swatch", "position"]

    def __str__(self) -> str:
        """Return the dye and its depth."""
        return f"{self.dye} {self.depth_percent:g} %"


class ColourReading(LedgerRow):
    """A colour that was read of a swatch; the newest that stands holds.

    ``labs`` is Lab (10°) by light, D65 always among them; ``spectrum`` 31
    reflectances from 400 to 700 nm, or empty. ``each`` holds the single readings as
    they were typed, in the meter’s own light; ``sd`` is the standard deviation of one
    of them as a CIELAB distance. A wet reading is kept and teaches nothing.
    """

    swatch = models.ForeignKey(
        Swatch, on_delete=models.PROTECT, related_name="readings"
    )
    read_by = models.CharField(max_length=16, choices=ReadBy.choices)
    meter = models.ForeignKey(
        Meter, null=True, on_delete=models.PROTECT, related_name="readings"
    )
    labs = models.JSONField(default=dict)
    spectrum = models.JSONField(default=list)
    each = models.JSONField(default=list)
    repeat = models.PositiveIntegerField(default=1)
    sd = models.FloatField(null=True)
    is_wet = models.BooleanField(default=False)
    as_typed = models.CharField(max_length=200, blank=True)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["ColourReading"].as_manager()
    counter_keeps = ("swatch", "read_by")

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the swatch and how it was read."""
        return f"{self.swatch} {self.read_by}"


class EvidenceAct(models.TextChoices):
    """Whether a swatch teaches; the newest line that stands holds."""

    COUNTS = "counts", "Teaches"
    TRUSTED = "trusted", "Teaches, for it was looked at again"
    SET_ASIDE = "set aside", "Set aside"
    UNDO = "undone", "Undone"


class EvidenceLine(LedgerRow):
    """What somebody said of a swatch as evidence."""

    swatch = models.ForeignKey(
        Swatch, on_delete=models.PROTECT, related_name="evidence_lines"
    )
    act = models.CharField(max_length=12, choices=EvidenceAct.choices)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["EvidenceLine"].as_manager()
    counter_keeps = ("swatch",)
    counter_act = EvidenceAct.UNDO

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the swatch and what was said."""
        return f"{self.swatch} {self.act}"


class WantedColour(CatalogueItem):
    """A colour that somebody wants: by name, on a yarn or on any."""

    base = models.ForeignKey(
        Base, null=True, blank=True, on_delete=models.PROTECT, related_name="+"
    )
    read_by = models.CharField(max_length=16, choices=ReadBy.choices)
    labs = models.JSONField(default=dict)
    spectrum = models.JSONField(default=list, blank=True)
    as_typed = models.CharField(max_length=200, blank=True)


class PlanKind(models.TextChoices):
    """What a set of swatches is for."""

    LADDER = "ladder", "Depths of single dyes"
    MIXES = "mixes", "Mixes"
    NEXT = "next", "What would help most"
    BRACKET = "bracket", "Trials around a colour"


class SwatchPlan(models.Model):
    """A set of swatches that were planned together.

    Each is a version of ``recipe``, which is no colourway and stands in no list of
    them; the baths dyed from it are the swatches.
    """

    deed = models.UUIDField(unique=True)
    kind = models.CharField(max_length=12, choices=PlanKind.choices)
    recipe = models.OneToOneField(
        Recipe, on_delete=models.PROTECT, related_name="swatch_plan"
    )
    base = models.ForeignKey(Base, on_delete=models.PROTECT, related_name="+")
    yarn_g = models.FloatField()
    wanted = models.ForeignKey(
        WantedColour, null=True, on_delete=models.PROTECT, related_name="plans"
    )
    created_at = models.DateTimeField(default=timezone.now)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return the name of its set."""
        return str(self.recipe)
