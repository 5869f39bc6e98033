"""Judging a lot: its standard, the dry check, bleed and rub tests."""

from django.db import models

from shadewright.records.models.catalogue import Base
from shadewright.records.models.ledgers import LedgerRow, LedgerRows
from shadewright.records.models.lots import Lot
from shadewright.records.models.people import Studio
from shadewright.records.models.recipes import Recipe
from shadewright.records.models.swatches import ColourReading, Meter, ReadBy


class Formula(models.TextChoices):
    """By which published formula a difference is counted."""

    CIEDE2000 = "CIEDE2000", "CIEDE2000"
    CMC_2_1 = "CMC(2:1)", "CMC(2:1)"


class Tolerances(models.Model):
    """How far a lot may be off before something is done; one row, the studio's.

    Up to ``match_de`` a lot is the same; up to ``alternate_de`` skeins of both are to
    be knitted in turn; beyond it is a lot of its own, and beyond ``mend_de`` it is to
    be corrected or sold as a one-off.
    """

    studio = models.OneToOneField(
        Studio, on_delete=models.PROTECT, related_name="tolerances"
    )
    formula = models.CharField(
        max_length=12, choices=Formula.choices, default=Formula.CIEDE2000
    )
    match_de = models.FloatField(default=1.0)
    alternate_de = models.FloatField(default=2.0)
    mend_de = models.FloatField(default=3.0)

    def __str__(self) -> str:
        """Return whose they are."""
        return f"Tolerances of {self.studio}"


class Standard(LedgerRow):
    """The real piece that lots of a recipe on a base are held against.

    The newest of a recipe and base that stands holds; what it replaced stays readable,
    and the note says why. The colour is Lab for D65 and 10°, ``sd`` its spread as a
    CIELAB distance.
    """

    recipe = models.ForeignKey(
        Recipe, on_delete=models.PROTECT, related_name="standards"
    )
    base = models.ForeignKey(Base, on_delete=models.PROTECT, related_name="standards")
    lot = models.ForeignKey(
        Lot, null=True, on_delete=models.PROTECT, related_name="standards"
    )
    reading = models.ForeignKey(
        ColourReading, null=True, on_delete=models.PROTECT, related_name="standards"
    )
    where = models.CharField(max_length=120, blank=True)
    made_on = models.DateField(null=True)
    colour_l = models.FloatField(null=True)
    colour_a = models.FloatField(null=True)
    colour_b = models.FloatField(null=True)
    sd = models.FloatField(null=True)
    read_by = models.CharField(max_length=16, choices=ReadBy.choices, blank=True)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["Standard"].as_manager()
    counter_keeps = ("recipe", "base")

    class Meta:
        ordering = ["recipe", "base", "-id"]

    def __str__(self) -> str:
        """Return what it is the standard of."""
        return f"The standard of {self.recipe} on {self.base}"


class ToneBand(models.Model):
    """How uneven a colourway is wanted: its spread within a lot, as CIELAB distance.

    A tonal yarn is scored against this band, not against nought.
    """

    recipe = models.OneToOneField(
        Recipe, on_delete=models.PROTECT, related_name="tone_band"
    )
    least_de = models.FloatField()
    most_de = models.FloatField()

    def __str__(self) -> str:
        """Return whose band it is."""
        return f"{self.recipe}: {self.least_de:g} to {self.most_de:g}"


class DryCheck(LedgerRow):
    """A lot held against its standard, dry: the spots read and what was made of them.

    ``spots`` lists what was read: ``{"skein": 1, "lab": [L, a, b]}``; ``inside_de`` is
    the spread within the lot, ``de`` the difference of the mean, ``de_u`` its standard
    uncertainty. The verdict is what the tolerances say; what was decided is a line of
    the lot’s own.
    """

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="dry_checks")
    standard = models.ForeignKey(
        Standard, null=True, on_delete=models.PROTECT, related_name="dry_checks"
    )
    reading = models.ForeignKey(
        ColourReading, null=True, on_delete=models.PROTECT, related_name="dry_checks"
    )
    read_by = models.CharField(max_length=16, choices=ReadBy.choices)
    meter = models.ForeignKey(
        Meter, null=True, on_delete=models.PROTECT, related_name="+"
    )
    seen_under = models.CharField(max_length=60, blank=True)
    spots = models.JSONField(default=list)
    colour_l = models.FloatField()
    colour_a = models.FloatField()
    colour_b = models.FloatField()
    inside_de = models.FloatField(null=True)
    formula = models.CharField(max_length=12, choices=Formula.choices)
    de = models.FloatField(null=True)
    de_u = models.FloatField(null=True)
    words = models.CharField(max_length=160, blank=True)
    verdict = models.CharField(max_length=24, blank=True)
    method = models.CharField(max_length=60, blank=True)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["DryCheck"].as_manager()
    counter_keeps = ("lot", "read_by", "formula", "colour_l", "colour_a", "colour_b")

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the lot and the verdict."""
        return f"{self.lot}: {self.verdict}"


class FastnessKind(models.TextChoices):
    """What was tried on a snip."""

    BLEED = "bleed", "Bleed, wet on white"
    WASH = "wash", "Washed with white cloths"
    RUB_DRY = "rub dry", "Rubbed dry"
    RUB_WET = "rub wet", "Rubbed wet"


class FastnessTest(LedgerRow):
    """A bleed or rub test: grades from 1 to 5 by the grey scales, in halves.

    ``cloths`` lists ``{"cloth": "wool", "staining": 4.5}``; ``change`` is how the yarn
    itself changed.
    """

    lot = models.ForeignKey(
        Lot, on_delete=models.PROTECT, related_name="fastness_tests"
    )
    kind = models.CharField(max_length=12, choices=FastnessKind.choices)
    cloths = models.JSONField(default=list)
    change = models.FloatField(null=True)
    photo = models.FileField(upload_to="cloths/", blank=True)
    undoes = models.OneToOneField(
        "self", null=True, on_delete=models.PROTECT, related_name="undone_by"
    )

    objects = LedgerRows["FastnessTest"].as_manager()
    counter_keeps = ("lot", "kind")

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        """Return the lot and what was tried."""
        return f"{self.lot} {self.kind}"
