"""Questions to the store about lots, and about what a bath's dye came from."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from django.db.models import (
    Exists,
    F,
    OuterRef,
    Prefetch,
    Q,
    QuerySet,
    Subquery,
)

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Bath,
    BathDose,
    BathLine,
    BottleLine,
    Lot,
    LotLine,
    StockBottle,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.recipe_reads import bath_rows

# Not ``undoes=None``: SQLite would take the index of nothing for a short way.
_STANDING = Q(undone_by=None) & ~Q(act="undone")
_CAME_IN = ("filled", "powder added", "stock added")
_TOLD = (BathAct.DOSED, BathAct.MISSED)
_COLUMNS = {
    "lot": "number",
    "recipe": "bath__version__recipe__name",
    "base": "bath__base__name",
    "day": "bath__dyed_on",
    "grade": "grade",
    "place": "place",
    "grams": "grams",
}


@dataclass(frozen=True, kw_only=True)
class DyeFrom:
    """The bottles that some dye came into.

    ``since`` numbers the line by which it came; ``filled`` are the bottles that
    hold it from their first drop on.
    """

    since: Mapping[int, int]
    filled: frozenset[int]


@dataclass(frozen=True, kw_only=True)
class ReachedBath:
    """A bath that dye went into, as a trace names it."""

    number: str
    recipe_name: str
    has_lot: bool


_FIRST = "bath__version__recipe__correction__lot"
"""The lot that a corrected lot was before."""


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


def locked_lot_row(number: str) -> Lot:
    """Return a lot to whose ledgers nobody else can add in this transaction."""
    Lot.objects.select_for_update().filter(number=number).first()
    return lot_row(number)


def listed_lot_rows(words: Collection[str], order: str) -> QuerySet[Lot]:
    """Return the lots that stand and say every word, in an order.

    A corrected or overdyed lot says its colourway too.
    """
    rows = lot_rows().annotate(
        grade=_newest("graded"), place=_newest("placed"), grams=_weighed()
    )
    rows = rows.filter(Exists(LotLine.objects.filter(_STANDING, lot=OuterRef("pk"))))
    for word in words:
        rows = rows.filter(
            Q(number__icontains=word)
            | Q(bath__version__recipe__name__icontains=word)
            | Q(bath__version__recipe__correction__becomes__name__icontains=word)
            | Q(**{f"{_FIRST}__bath__version__recipe__name__icontains": word})
            | Q(bath__base__name__icontains=word)
            | Q(place__icontains=word)
            | Q(grade__icontains=word)
        )
    rows = rows.select_related("bath__version__recipe__correction__becomes", _FIRST)
    column, is_down = order.removeprefix("-"), order.startswith("-")
    key = F(_COLUMNS[column])
    sense = key.desc(nulls_last=True) if is_down else key.asc(nulls_last=True)
    return rows.order_by(sense, "-pk")


def lots_that_stand() -> QuerySet[Lot]:
    """Return the lots that were not taken back, with their lines that stand."""
    lines = LotLine.objects.filter(_STANDING, lot=OuterRef("pk"))
    return lot_rows().filter(Exists(lines))


def coloured_lot_rows(numbers: Collection[str]) -> QuerySet[Lot]:
    """Return the lots whose colour was noted, and those of some numbers."""
    noted = LotLine.objects.filter(_STANDING, lot=OuterRef("pk"), act="coloured")
    rows = lot_rows().filter(Exists(noted) | Q(number__in=numbers))
    return rows.filter(Exists(LotLine.objects.filter(_STANDING, lot=OuterRef("pk"))))


def _newest(act: str) -> Subquery:
    lines = LotLine.objects.filter(_STANDING, lot=OuterRef("pk"), act=act)
    return Subquery(lines.order_by("-id").values("words")[:1])


def _weighed() -> Subquery:
    lines = LotLine.objects.filter(_STANDING, lot=OuterRef("pk"), act="weighed")
    return Subquery(lines.order_by("-id").values("value")[:1])


def baths_without(acts: Collection[str]) -> QuerySet[Bath]:
    """Return the baths in whose ledgers none of these acts stands."""
    lines = BathLine.objects.filter(_STANDING, bath=OuterRef("pk"), act__in=acts)
    return bath_rows().filter(~Exists(lines))


def lot_of_bath(bath: Bath) -> Lot | None:
    """Return the lot that a bath has, also one whose lines were all taken back."""
    return Lot.objects.filter(bath=bath).first()


def bath_ledgers(baths: Collection[Bath]) -> Mapping[int, list[BathLine]]:
    """Return the ledgers of some baths, newest first, what was taken back too."""
    lines = BathLine.objects.filter(bath__in=baths).order_by("-id")
    found: dict[int, list[BathLine]] = {}
    for line in lines.select_related("by", "bottle__dye", "undone_by"):
        found.setdefault(line.bath_id, []).append(line)
    return found


def baths_with_lot(baths: Collection[Bath]) -> set[int]:
    """Return which of some baths have a lot that was not taken back."""
    lines = LotLine.objects.filter(_STANDING, lot__bath__in=baths)
    return set(lines.values_list("lot__bath_id", flat=True))


def lot_ledger_rows(lot: Lot) -> QuerySet[LotLine]:
    """Return a lot's ledger, newest first, what was taken back too."""
    rows = LotLine.objects.filter(lot=lot)
    return rows.select_related("by", "undone_by", "undoes").order_by("-id")


def numbers_of_recipe(recipe_id: int, *, besides: Lot) -> list[str]:
    """Return the numbers of a recipe's other lots, the newest twelve."""
    rows = lot_rows().filter(bath__version__recipe_id=recipe_id).exclude(pk=besides.pk)
    rows = rows.filter(Exists(LotLine.objects.filter(_STANDING, lot=OuterRef("pk"))))
    return list(rows.values_list("number", flat=True)[:12])


def places() -> list[str]:
    """Return the places that lots were put, the newest first."""
    rows = LotLine.objects.filter(act="placed").exclude(words="").order_by("-id")
    return list(dict.fromkeys(rows.values_list("words", flat=True)[:200]))


def told_lines(bath_ids: Collection[int]) -> QuerySet[BathLine]:
    """Return the doses of baths that went in or were left out, in order."""
    rows = BathLine.objects.filter(_STANDING, bath__in=bath_ids, act__in=_TOLD)
    return rows.select_related("bottle__dye", "by").order_by("id")


def source_lines(bottle_ids: Collection[int]) -> QuerySet[BottleLine]:
    """Return the whole ledgers of some bottles, with what came in from where."""
    rows = BottleLine.objects.filter(bottle_id__in=bottle_ids).order_by("id")
    return rows.select_related("jar", "other")


def bottles_from_jar(jar_id: int) -> list[BottleLine]:
    """Return the lines by which powder of a jar came into bottles."""
    rows = BottleLine.objects.filter(_STANDING, jar_id=jar_id, act__in=_CAME_IN)
    found = rows.select_related("bottle__dye").order_by("id")
    return [line for line in found if line.other_id is None]


def poured_on(bottle_ids: Collection[int]) -> QuerySet[BottleLine]:
    """Return the lines by which stock of some bottles came into others."""
    rows = BottleLine.objects.filter(
        _STANDING, other_id__in=bottle_ids, act__in=_CAME_IN
    )
    return rows.select_related("bottle__dye").order_by("id")


def bath_pairs(dye: DyeFrom) -> set[tuple[int, int]]:
    """Return every bottle with every bath that took from it, both as row numbers.

    From the moment on that the dye was in the bottle.
    """
    is_from = Q(bottle_id__in=dye.filled)
    for bottle_id in dye.since.keys() - dye.filled:
        is_later = Q(drawn_id__gt=dye.since[bottle_id]) | Q(drawn=None)
        is_from |= Q(bottle_id=bottle_id) & is_later
    rows = BathLine.objects.filter(_STANDING, is_from, act=BathAct.DOSED)
    return set(rows.order_by().values_list("bottle_id", "bath_id"))


def untold_pairs(dye: DyeFrom, *, most: int) -> list[tuple[int, int]]:
    """Return bottles with the baths that were planned from them and tell of no dose.

    Only baths that have a lot.
    """
    told = BathLine.objects.filter(_STANDING, bath=OuterRef("bath"), act__in=_TOLD)
    rows = BathDose.objects.filter(bottle_id__in=dye.since).filter(~Exists(told))
    with_lot = rows.filter(bath__lot__isnull=False).order_by("-bath_id", "position")
    return list(with_lot.values_list("bottle_id", "bath_id")[:most])


def reached_baths(bath_ids: Collection[int]) -> dict[int, ReachedBath]:
    """Return baths by row number, each with whether its lot stands."""
    lines = LotLine.objects.filter(_STANDING, lot__bath=OuterRef("pk"))
    rows = Bath.objects.filter(pk__in=bath_ids).annotate(has_lot=Exists(lines))
    found = rows.values_list("pk", "number", "version__recipe__name", "has_lot")
    return {
        pk: ReachedBath(number=number, recipe_name=name, has_lot=has_lot)
        for pk, number, name, has_lot in found
    }


def bottles_without_jar(dye_id: int) -> list[str]:
    """Return the codes of a dye's bottles that stand without a jar, newest first."""
    filled = BottleLine.objects.filter(
        _STANDING, bottle=OuterRef("pk"), act="filled", other_id__isnull=True
    )
    rows = StockBottle.objects.filter(Exists(filled), dye_id=dye_id, jar=None)
    return list(rows.order_by("-id").values_list("code", flat=True))


def dry_dose_count(dye_id: int) -> int:
    """Return how many doses of a dye were planned dry, in baths that have a lot."""
    rows = BathDose.objects.filter(dye_id=dye_id, bottle=None)
    return rows.filter(bath__lot__isnull=False).count()
