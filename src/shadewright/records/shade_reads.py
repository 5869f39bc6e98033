"""Questions to the store about swatches, their colours, and palettes."""

from collections.abc import Collection
from dataclasses import dataclass
from uuid import UUID

from django.db.models import Count, Exists, OuterRef, Prefetch, QuerySet, Subquery

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Bath,
    BathLine,
    ColourReading,
    DryCheck,
    EvidenceLine,
    Lot,
    LotLine,
    Meter,
    PaletteFit,
    Prediction,
    Swatch,
    SwatchDose,
    SwatchPlan,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.palettes import FitState, FoundFor


def swatch_rows() -> QuerySet[Swatch]:
    """Return every swatch with its doses, its readings and what was said of it."""
    readings = ColourReading.objects.select_related("meter", "by", "undone_by")
    said = EvidenceLine.objects.select_related("by", "undone_by")
    doses = SwatchDose.objects.select_related("dye")
    rows = Swatch.objects.select_related("base", "bath__version__recipe__swatch_plan")
    rows = rows.prefetch_related("bath__doses__dye", "bath__doses__bottle")
    rows = rows.prefetch_related(Prefetch("readings", readings.order_by("id")))
    rows = rows.prefetch_related(Prefetch("evidence_lines", said.order_by("id")))
    return rows.prefetch_related(Prefetch("doses", doses.order_by("position")))


def swatch_row(swatch_id: int) -> Swatch:
    """Return one swatch."""
    row = swatch_rows().filter(pk=swatch_id).first()
    if row is None:
        raise NotFoundError(kind="swatch", key=str(swatch_id), argument="swatch")
    return row


def locked_swatch(swatch_id: int) -> Swatch:
    """Return a swatch of which nobody else can say anything in this transaction."""
    row = Swatch.objects.select_for_update().filter(pk=swatch_id).first()
    return swatch_row(swatch_id) if row is None else row


def meter_rows() -> QuerySet[Meter]:
    """Return every meter, by name."""
    return Meter.objects.all()


def swatch_plan_rows() -> QuerySet[SwatchPlan]:
    """Return every set of swatches that was planned, the newest first."""
    return SwatchPlan.objects.select_related("recipe", "base", "wanted", "created_by")


def open_plans_with(dye_id: int) -> QuerySet[SwatchPlan]:
    """Return the sets that a dye is in, of which a bath has no lot yet."""
    baths = Bath.objects.filter(lot=None, doses__dye_id=dye_id)
    return swatch_plan_rows().filter(recipe__versions__baths__in=baths).distinct()


def colour_readings_of(deed: UUID) -> QuerySet[ColourReading]:
    """Return the readings of swatches that one deed wrote."""
    rows = ColourReading.objects.filter(deed=deed)
    return rows.select_related("swatch", "meter").order_by("id")


def evidence_lines_of(deed: UUID) -> QuerySet[EvidenceLine]:
    """Return what one deed said of swatches as evidence."""
    rows = EvidenceLine.objects.filter(deed=deed)
    return rows.select_related("swatch").order_by("id")


def lots_among(swatch_ids: Collection[int]) -> int:
    """Return how many of some swatches are ends of lots."""
    rows = Swatch.objects.filter(pk__in=swatch_ids, bath__is_swatch=False)
    return rows.count()


def prediction_rows() -> QuerySet[Prediction]:
    """Return what was foretold of baths that were not given up, the newest first."""
    given_up = BathLine.objects.filter(
        bath=OuterRef("bath"), act=BathAct.GIVEN_UP, undone_by=None
    )
    rows = Prediction.objects.filter(~Exists(given_up))
    return rows.select_related("bath__version__recipe", "bath__base").order_by("-id")


def swatches_by_fit(fit_ids: Collection[int]) -> dict[int, frozenset[int]]:
    """Return which swatches some fits were given."""
    rows = PaletteFit.objects.filter(pk__in=fit_ids).values_list("pk", "used")
    return {pk: frozenset(each["swatch"] for each in used) for pk, used in rows}


@dataclass(frozen=True, kw_only=True)
class LoneColour:
    """What was read of a swatch of one dye; ``lab`` is D65/10°."""

    dye_id: int
    depth_percent: float
    lab: tuple[float, float, float]


def lone_colours(dye_ids: Collection[int]) -> list[LoneColour]:
    """Return what was read dry of swatches of one dye alone, the newest last."""
    alone = Swatch.objects.annotate(dyes=Count("doses")).filter(dyes=1)
    rows = ColourReading.objects.filter(
        is_wet=False, undone_by=None, undoes=None, swatch__in=alone
    )
    rows = rows.filter(swatch__doses__dye__in=dye_ids).order_by("pk")
    return [
        LoneColour(dye_id=dye, depth_percent=depth, lab=tuple(labs["D65"]))
        for dye, depth, labs in rows.values_list(
            "swatch__doses__dye", "swatch__doses__depth_percent", "labs"
        )
    ]


def newest_deeds() -> tuple[UUID | None, ...]:
    """Return the newest deed of each ledger that a lot’s colour may stand in.

    While these stay, so does every colour: what is taken back has a line of its own.
    """
    newest = [
        Subquery(rows.order_by("-pk").values("deed")[:1])
        for rows in (
            LotLine.objects.all(),
            ColourReading.objects.all(),
            DryCheck.objects.all(),
        )
    ]
    return PaletteFit.objects.values_list(*newest).first() or ()


def newest_fit() -> PaletteFit | None:
    """Return the fit that holds: the newest that came to its end."""
    return PaletteFit.objects.filter(state=FitState.DONE).exclude(palette="").first()


def lots_of_version(version_id: int) -> dict[str, tuple[str, ...]]:
    """Return the lots of a version by base, the newest first."""
    rows = Lot.objects.filter(bath__version_id=version_id).order_by("-id")
    found: dict[str, tuple[str, ...]] = {}
    for base, number in rows.values_list("bath__base__name", "bath__number"):
        found[base] = (*found.get(base, ()), number)
    return found


def base_found_for(version_id: int) -> str:
    """Return the name of the base that a version was found for, if it was."""
    row = FoundFor.objects.filter(version_id=version_id).first()
    return "" if row is None else row.base_name
