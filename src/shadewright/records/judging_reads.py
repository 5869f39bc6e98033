"""Questions to the store about standards, dry checks, and bleed and rub tests."""

from collections.abc import Collection
from datetime import datetime
from typing import Final
from uuid import UUID

from django.db.models import Exists, OuterRef, QuerySet

from shadewright.records.lot_reads import lots_that_stand
from shadewright.records.models import (
    Bath,
    BathLine,
    ColourReading,
    DryCheck,
    FastnessTest,
    Lot,
    LotLine,
    Standard,
    Tolerances,
    ToneBand,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import LotAct

_STANDING: Final = {"undone_by": None, "undoes": None}


def tolerances_row() -> Tolerances | None:
    """Return the studio's tolerances, if it said any."""
    return Tolerances.objects.first()


def standard_rows() -> QuerySet[Standard]:
    """Return the standards that hold, by recipe and base."""
    newer = Standard.objects.filter(
        **_STANDING,
        recipe=OuterRef("recipe"),
        base=OuterRef("base"),
        id__gt=OuterRef("id"),
    )
    return _standards().filter(~Exists(newer), undone_by=None)


def standard_row(*, recipe_id: int, base_id: int) -> Standard | None:
    """Return the standard that holds of a recipe on a base, if there is one."""
    return standard_rows().filter(recipe_id=recipe_id, base_id=base_id).first()


def standards_ever(*, recipe_id: int, base_id: int) -> QuerySet[Standard]:
    """Return every standard that a recipe on a base ever had, newest first."""
    return _standards().filter(recipe_id=recipe_id, base_id=base_id).order_by("-id")


def _standards() -> QuerySet[Standard]:
    rows = Standard.objects.select_related("recipe", "base", "lot", "by", "undone_by")
    return rows.filter(undoes=None)


def tone_band_row(recipe_id: int) -> ToneBand | None:
    """Return how uneven a colourway is wanted, if that was said."""
    return ToneBand.objects.filter(recipe_id=recipe_id).first()


def standing_checks() -> QuerySet[DryCheck]:
    """Return the dry checks that nobody took back, in order."""
    rows = DryCheck.objects.filter(undone_by=None, undoes=None)
    return rows.select_related("lot__bath", "standard__undone_by", "meter", "by")


def checks_of(lot: Lot) -> QuerySet[DryCheck]:
    """Return every dry check of a lot, in order."""
    rows = lot.dry_checks.select_related("standard__undone_by", "meter", "by")
    return rows.select_related("undone_by")


def checks_of_deed(deed: UUID) -> QuerySet[DryCheck]:
    """Return the dry checks that one deed wrote."""
    return DryCheck.objects.filter(deed=deed).select_related("lot").order_by("id")


def standing_fastness_tests() -> QuerySet[FastnessTest]:
    """Return the bleed and rub tests that nobody took back, in order."""
    rows = FastnessTest.objects.filter(undone_by=None, undoes=None)
    return rows.select_related("lot__bath", "by")


def fastness_tests_of_deed(deed: UUID) -> QuerySet[FastnessTest]:
    """Return the bleed and rub tests that one deed wrote."""
    return FastnessTest.objects.filter(deed=deed).select_related("lot").order_by("id")


def lots_of(*, recipe_id: int, base_id: int) -> QuerySet[Lot]:
    """Return the lots of a recipe on a base that stand, the oldest first."""
    rows = every_lot().filter(bath__version__recipe_id=recipe_id, bath__base_id=base_id)
    rows = rows.select_related("bath__water", "bath__yarn_scale")
    rows = rows.prefetch_related("bath__version__auxiliaries__auxiliary")
    return rows.order_by("bath__dyed_on", "pk")


def every_lot() -> QuerySet[Lot]:
    """Return the lots that stand and are no swatches, with their doses."""
    rows = lots_that_stand().filter(bath__is_swatch=False)
    return rows.prefetch_related("bath__doses__dye", "bath__doses__bottle")


def coloured_lots() -> QuerySet[Lot]:
    """Return the lots of ``every_lot`` whose colour was read dry or noted."""
    checks = DryCheck.objects.filter(lot=OuterRef("pk"), **_STANDING)
    readings = ColourReading.objects.filter(
        swatch__bath=OuterRef("bath"), is_wet=False, **_STANDING
    )
    noted = LotLine.objects.filter(
        lot=OuterRef("pk"), act=LotAct.COLOURED, undone_by=None
    )
    return every_lot().filter(Exists(checks) | Exists(readings) | Exists(noted))


def snips_unread(since: datetime) -> QuerySet[LotLine]:
    """Return the snips hung from a moment on whose lots were not checked since."""
    checks = DryCheck.objects.filter(
        lot=OuterRef("lot"), at__gte=OuterRef("at"), **_STANDING
    )
    rows = LotLine.objects.filter(act=LotAct.SNIPPED, at__gte=since, undone_by=None)
    return rows.exclude(Exists(checks)).select_related("lot").order_by("at", "id")


def dry_readings(lots: Collection[Lot]) -> QuerySet[ColourReading]:
    """Return what was read dry of ends of some lots and stands, in order."""
    rows = ColourReading.objects.filter(swatch__bath__in=[x.bath_id for x in lots])
    rows = rows.filter(undone_by=None, undoes=None, is_wet=False)
    return rows.select_related("swatch", "meter", "by").order_by("id")


def pot_lines(baths: Collection[Bath]) -> QuerySet[BathLine]:
    """Return all that was written at the pot of some baths and stands, in order."""
    rows = BathLine.objects.filter(bath__in=baths, undone_by=None)
    rows = rows.exclude(act=BathAct.UNDO)
    return rows.select_related("by").order_by("id")
