"""Questions to the store about swatches, their colours, and palettes."""

from django.db.models import Prefetch, QuerySet

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    ColourReading,
    EvidenceLine,
    PaletteFit,
    Swatch,
    SwatchDose,
    SwatchPlan,
)
from shadewright.records.models.palettes import FitState


def swatch_rows() -> QuerySet[Swatch]:
    """Return every swatch with its doses, its readings and what was said of it."""
    readings = ColourReading.objects.select_related("meter", "by", "undone_by")
    said = EvidenceLine.objects.select_related("by", "undone_by")
    doses = SwatchDose.objects.select_related("dye")
    return Swatch.objects.select_related(
        "base", "bath__version__recipe__swatch_plan"
    ).prefetch_related(
        Prefetch("readings", readings.order_by("id")),
        Prefetch("evidence_lines", said.order_by("id")),
        Prefetch("doses", doses.order_by("position")),
    )


def swatch_row(swatch_id: int) -> Swatch:
    """Return one swatch."""
    row = swatch_rows().filter(pk=swatch_id).first()
    if row is None:
        raise NotFoundError(kind="swatch", key=str(swatch_id), argument="swatch")
    return row


def swatch_plan_rows() -> QuerySet[SwatchPlan]:
    """Return every set of swatches that was planned, the newest first."""
    return SwatchPlan.objects.select_related("recipe", "base", "wanted", "created_by")


def newest_fit() -> PaletteFit | None:
    """Return the fit that holds: the newest that came to its end."""
    return PaletteFit.objects.filter(state=FitState.DONE).exclude(palette="").first()
