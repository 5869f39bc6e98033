"""What a studio owns or buys: dyes, bases, acids and helpers, measuring tools.

An edit keeps the version before in ``CatalogueVersion``; nothing is deleted,
what is no longer used is retired.
"""

from django.core.validators import URLValidator
from django.db import models
from django.db.models.functions import Lower
from django.utils import timezone

from shadewright.records.models.people import Person


class DyeClass(models.TextChoices):
    """How a dye behaves on wool, in the trade's words."""

    LEVELLING = "levelling", "Levelling"
    HALF_MILLING = "half-milling", "Half-milling (fast acid)"
    MILLING = "milling", "Milling"
    SUPER_MILLING = "super-milling", "Super-milling"
    METAL_COMPLEX_1_2 = "metal-complex 1:2", "1:2 metal-complex (pre-metallised)"
    METAL_COMPLEX_1_1 = "metal-complex 1:1", "1:1 metal-complex"
    REACTIVE = "reactive for wool", "Reactive for wool"
    UNKNOWN = "unknown", "Not known, or a mixture"


class AuxiliaryKind(models.TextChoices):
    """What an auxiliary is for."""

    ACID = "acid", "Acid"
    ACID_SALT = "acid donor", "Ammonium salt (turns acid when hot)"
    SALT = "salt", "Glauber’s salt"
    LEVELLER = "levelling agent", "Levelling agent"
    WETTER = "wetting agent", "Wetting agent"
    OTHER = "other", "Something else"


class ToolKind(models.TextChoices):
    """A thing to measure with."""

    BALANCE = "balance", "Scale"
    CYLINDER = "cylinder", "Measuring cylinder"
    FLASK = "flask", "Volumetric flask"
    PIPETTE = "pipette", "Graduated pipette"
    SYRINGE = "syringe", "Syringe"
    BEAKER = "beaker", "Beaker"
    JUG = "jug", "Kitchen jug"
    BOTTLE_MARK = "bottle-mark", "Mark on a bottle"
    THERMOMETER = "thermometer", "Thermometer"


class CatalogueItem(models.Model):
    """Anything in the catalogue: a name of its own, notes, who and when."""

    name = models.CharField(max_length=60)
    notes = models.TextField(max_length=2000, blank=True)
    is_retired = models.BooleanField(default=False)
    created_at = models.DateTimeField(default=timezone.now, editable=False)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+", editable=False
    )

    class Meta:
        abstract = True
        ordering = ["name"]
        constraints = [
            models.UniqueConstraint(Lower("name"), name="one_%(class)s_a_name"),
        ]

    def __str__(self) -> str:
        """Return its name."""
        return self.name


class Dye(CatalogueItem):
    """A dye, under the studio's own name for it."""

    ci_name = models.CharField("C.I. name", max_length=60, blank=True)
    dye_class = models.CharField(
        max_length=20, choices=DyeClass.choices, default=DyeClass.UNKNOWN
    )
    is_metal_complex = models.BooleanField("Holds a metal", default=False)
    solubility_g_per_l = models.FloatField(null=True, blank=True)
    solubility_at_c = models.FloatField(null=True, blank=True)
    solubility_source = models.CharField(max_length=120, blank=True)
    is_mix_fresh = models.BooleanField("Mix fresh for the day", default=False)
    hazard_words = models.CharField(max_length=160, blank=True)
    data_sheet_link = models.CharField(
        max_length=300, blank=True, validators=[URLValidator(schemes=["http", "https"])]
    )
    data_sheet_file = models.FileField(upload_to="data-sheets/", blank=True)
    chart_hex = models.CharField(max_length=7, blank=True)


class Base(CatalogueItem):
    """A bare yarn."""

    fibres = models.CharField(max_length=120)
    is_superwash = models.BooleanField("Superwash treated", default=False)
    undyeable_percent = models.FloatField(default=0.0)
    skein_g = models.FloatField(null=True, blank=True)
    metres_per_100_g = models.FloatField(null=True, blank=True)
    price_per_kg = models.DecimalField(
        max_digits=9, decimal_places=2, null=True, blank=True
    )


class MillLot(models.Model):
    """One delivery of a base: the mill's own batch."""

    base = models.ForeignKey(Base, on_delete=models.PROTECT, related_name="lots")
    lot = models.CharField(max_length=40)
    received_on = models.DateField(null=True, blank=True)
    received_g = models.FloatField(null=True, blank=True)
    notes = models.TextField(max_length=2000, blank=True)
    created_at = models.DateTimeField(default=timezone.now, editable=False)
    created_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+", editable=False
    )

    class Meta:
        ordering = ["-received_on", "lot"]
        constraints = [
            models.UniqueConstraint("base", Lower("lot"), name="one_lot_a_base"),
        ]

    def __str__(self) -> str:
        """Return the base and the lot."""
        return f"{self.base} {self.lot}"


class Auxiliary(CatalogueItem):
    """Anything in the bath that is not dye."""

    kind = models.CharField(
        max_length=20, choices=AuxiliaryKind.choices, default=AuxiliaryKind.ACID
    )
    is_liquid = models.BooleanField(default=False)
    strength_g_per_100_ml = models.FloatField(null=True, blank=True)
    price_per_kg = models.DecimalField(
        max_digits=9, decimal_places=2, null=True, blank=True
    )
    hazard_words = models.CharField(max_length=160, blank=True)
    data_sheet_link = models.CharField(
        max_length=300, blank=True, validators=[URLValidator(schemes=["http", "https"])]
    )


class Water(CatalogueItem):
    """A water that baths are filled with, as its report or a test has it."""

    alkalinity_mg_per_l = models.FloatField("Alkalinity", null=True, blank=True)
    hardness_mg_per_l = models.FloatField("Hardness", null=True, blank=True)
    ph = models.FloatField("pH", null=True, blank=True)
    tested_on = models.DateField(null=True, blank=True)


class SourceKind(models.TextChoices):
    """How a heat source warms a pot."""

    GAS = "gas", "Gas"
    COIL = "coil", "Electric ring or hot plate"
    INDUCTION = "induction", "Induction"
    STEAMER = "steamer", "Steamer"


class Circuit(CatalogueItem):
    """Sources behind one fuse, and what it bears."""

    limit_kw = models.FloatField()


class HeatSource(CatalogueItem):
    """A burner, a ring, a plate, a steamer; ``room_g`` is the yarn a steamer takes."""

    kind = models.CharField(max_length=12, choices=SourceKind.choices)
    power_kw = models.FloatField()
    circuit = models.ForeignKey(
        Circuit,
        null=True,
        blank=True,
        on_delete=models.PROTECT,
        related_name="sources",
    )
    room_g = models.FloatField(null=True, blank=True)


class MeasuringTool(CatalogueItem):
    """A scale, a cylinder, a syringe: what a number was read from.

    ``own_error`` is how far it may be off by its sheet, a half-width in its unit.
    """

    kind = models.CharField(max_length=20, choices=ToolKind.choices)
    size = models.FloatField(null=True, blank=True)
    readability = models.FloatField(null=True, blank=True)
    tool_class = models.CharField("Class", max_length=4, blank=True)
    standard = models.CharField(max_length=40, blank=True)
    checked_on = models.DateField(null=True, blank=True)
    own_error = models.FloatField(null=True, blank=True)
    price = models.DecimalField(max_digits=9, decimal_places=2, null=True, blank=True)


class CatalogueVersion(models.Model):
    """An item of the catalogue as it stood before an edit."""

    kind = models.CharField(max_length=20)
    item_id = models.PositiveBigIntegerField()
    number = models.PositiveIntegerField()
    values = models.JSONField()
    replaced_at = models.DateTimeField(default=timezone.now)
    replaced_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        ordering = ["kind", "item_id", "-number"]
        constraints = [
            models.UniqueConstraint(
                fields=["kind", "item_id", "number"], name="one_version_a_number"
            ),
        ]

    def __str__(self) -> str:
        """Return what it is a version of."""
        return f"{self.kind} {self.item_id}, version {self.number}"
