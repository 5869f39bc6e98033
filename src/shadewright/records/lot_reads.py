"""Questions to the store about lots, and about what a bath's dye came from."""

from collections.abc import Collection

from django.db.models import Count, Exists, Max, OuterRef, Prefetch, Q, QuerySet

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Bath,
    BathDose,
    BathLine,
    BottleLine,
    Lot,
    LotLine,
)
from shadewright.records.models.baths import BathAct

_STANDING = Q(undone_by=None, undoes=None)
_TOLD = (BathAct.DOSED, BathAct.MISSED)


def lot_rows() -> QuerySet[Lot]:
    """Return lots with their baths and the lines that nobody took back."""
    rows = Lot.objects.select_related(
        "bath__version__recipe", "bath__base", "bath__mill_lot", "bath__pot"
    )
    return rows.prefetch_related(
        Prefetch("lines", queryset=LotLine.objects.filter(_STANDING))
    )


def lot_row(number: str) -> Lot:
    """Return the lot of a number."""
    row = lot_rows().filter(number=number).first()
    if row is None:
        raise NotFoundError(
            kind="lot",
            key=number,
            advice="Read the number on its tag again.",
            argument="number",
        )
    return row


def lot_of_bath(bath: Bath) -> Lot | None:
    """Return the lot that a bath has, also one whose lines were all taken back."""
    return Lot.objects.filter(bath=bath).first()


def has_standing_lot(bath: Bath) -> bool:
    """Whether a bath has a lot that was not taken back."""
    return LotLine.objects.filter(_STANDING, lot__bath=bath).exists()


def lot_ledger_rows(lot: Lot) -> QuerySet[LotLine]:
    """Return a lot's ledger, newest first, what was taken back too."""
    rows = LotLine.objects.filter(lot=lot)
    return rows.select_related("by", "undone_by", "undoes").order_by("-id")


def places() -> list[str]:
    """Return the places that lots were put, the newest first."""
    rows = LotLine.objects.filter(act="placed").exclude(words="").order_by("-id")
    return list(dict.fromkeys(rows.values_list("words", flat=True)[:200]))


def told_lines(bath: Bath) -> QuerySet[BathLine]:
    """Return the doses of a bath that went in or were left out, in order."""
    rows = BathLine.objects.filter(_STANDING, bath=bath, act__in=_TOLD)
    return rows.select_related("bottle__dye", "by").order_by("id")


def source_lines(bottle_ids: Collection[int]) -> QuerySet[BottleLine]:
    """Return the whole ledgers of some bottles, with what came in from where."""
    rows = BottleLine.objects.filter(bottle_id__in=bottle_ids).order_by("id")
    return rows.select_related("jar", "other")


def bottles_from_jar(jar_id: int) -> QuerySet[BottleLine]:
    """Return the lines by which powder of a jar came into bottles."""
    rows = BottleLine.objects.filter(_STANDING, jar_id=jar_id, other=None)
    return rows.select_related("bottle__dye").order_by("id")


def poured_on(bottle_ids: Collection[int]) -> QuerySet[BottleLine]:
    """Return the lines by which stock of some bottles came into others."""
    came_in = ("filled", "stock added")
    rows = BottleLine.objects.filter(
        _STANDING, other_id__in=bottle_ids, act__in=came_in
    )
    return rows.select_related("bottle__dye").order_by("id")


def bath_counts(bottle_ids: Collection[int]) -> dict[int, tuple[int, str]]:
    """Return how many baths each bottle went into, and the newest one's number."""
    rows = _doses_from(bottle_ids).values("bottle_id").order_by("bottle_id")
    found = rows.annotate(baths=Count("bath_id", distinct=True), newest=Max("bath_id"))
    newest = Bath.objects.in_bulk([row["newest"] for row in found])
    return {
        row["bottle_id"]: (row["baths"], newest[row["newest"]].number) for row in found
    }


def doses_of_baths(
    bottle_ids: Collection[int], *, first: int, count: int
) -> list[BathLine]:
    """Return doses from some bottles, bath by bath, the newest bath first.

    Counted in baths: ``first`` baths are passed over, ``count`` are returned.
    """
    baths = _doses_from(bottle_ids).values("bath_id").distinct().order_by("-bath_id")
    wanted = [row["bath_id"] for row in baths[first : first + count]]
    rows = _doses_from(bottle_ids).filter(bath_id__in=wanted)
    every = rows.select_related("bath__version__recipe", "bath__lot")
    return list(every.order_by("-bath_id", "id"))


def untold_doses(bottle_ids: Collection[int], *, most: int) -> list[BathDose]:
    """Return doses planned from some bottles in baths that tell of no dose at all."""
    told = BathLine.objects.filter(_STANDING, bath=OuterRef("bath"), act__in=_TOLD)
    rows = BathDose.objects.filter(bottle_id__in=bottle_ids, bath__lot__isnull=False)
    rows = rows.filter(~Exists(told)).select_related("bath__version__recipe")
    return list(rows.order_by("-bath_id", "position")[:most])


def _doses_from(bottle_ids: Collection[int]) -> QuerySet[BathLine]:
    rows = BathLine.objects.filter(_STANDING, act=BathAct.DOSED)
    return rows.filter(bottle_id__in=bottle_ids)
