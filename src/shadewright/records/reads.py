"""Questions to the store."""

from collections.abc import Iterable
from uuid import UUID

from django.db.models import Exists, OuterRef, QuerySet

from shadewright.core.solutions.ledger import BottleAct
from shadewright.errors import NotFoundError
from shadewright.records.models import (
    BottleLine,
    CatalogueVersion,
    Dye,
    JarLine,
    Person,
    PowderJar,
    StockBottle,
    StockMaking,
    Studio,
)


def studio_row() -> Studio | None:
    """Return the one studio, or None before it is founded."""
    return Studio.objects.first()


def people_rows() -> QuerySet[Person]:
    """Return everybody who works here now."""
    return Person.objects.filter(is_away=False)


def person_row(person_id: int) -> Person:
    """Return one person."""
    row = Person.objects.filter(pk=person_id).first()
    if row is None:
        raise NotFoundError(kind="person", key=str(person_id), argument="person")
    return row


def dye_rows() -> QuerySet[Dye]:
    """Return the dyes in use."""
    return Dye.objects.filter(is_retired=False)


def dye_row(dye_id: int) -> Dye:
    """Return one dye."""
    row = Dye.objects.filter(pk=dye_id).first()
    if row is None:
        raise NotFoundError(kind="dye", key=str(dye_id), argument="dye")
    return row


def jar_rows() -> QuerySet[PowderJar]:
    """Return the jars in use with their dyes and ledgers."""
    rows = PowderJar.objects.filter(is_retired=False)
    return rows.select_related("dye").prefetch_related("lines")


def jar_row(jar_id: int) -> PowderJar:
    """Return one jar with its dye and ledger."""
    rows = PowderJar.objects.select_related("dye").prefetch_related("lines")
    row = rows.filter(pk=jar_id).first()
    if row is None:
        raise NotFoundError(kind="jar", key=str(jar_id), argument="jar")
    return row


def bottle_rows() -> QuerySet[StockBottle]:
    """Return every bottle there ever was, with dye, jar and ledger."""
    rows = StockBottle.objects.select_related("dye", "jar", "made_by")
    return rows.prefetch_related("lines__other")


def standing_bottle_rows() -> QuerySet[StockBottle]:
    """Return the bottles that nobody has poured away."""
    poured = BottleLine.objects.filter(
        bottle=OuterRef("pk"), act=BottleAct.POURED.value, undone_by=None
    )
    return bottle_rows().filter(~Exists(poured))


def bottle_row(code: str) -> StockBottle:
    """Return the bottle of a code, with dye, jar and ledger."""
    row = bottle_rows().filter(code=code).first()
    if row is None:
        raise NotFoundError(
            kind="bottle",
            key=code,
            advice="Read the code on its label again.",
            argument="code",
        )
    return row


def last_measured_bottle() -> StockBottle | None:
    """Return the newest bottle whose powder was weighed on a scale that was named."""
    return StockBottle.objects.exclude(scale=None).order_by("-id").first()


def lock_shelf() -> None:
    """Let nobody else put something new on the shelf in this transaction."""
    Studio.objects.select_for_update().first()


def lock_bottles(codes: Iterable[str]) -> None:
    """Let nobody else add to these bottles' ledgers in this transaction.

    Locks are taken in the order shelf, a stock in the making, bottles by code,
    jars by number, so that no two verbs wait for each other.
    """
    rows = StockBottle.objects.filter(code__in=list(codes)).order_by("code")
    list(rows.select_for_update().values_list("code"))


def lock_jars(jar_ids: Iterable[int]) -> None:
    """Let nobody else add to these jars' ledgers in this transaction."""
    rows = PowderJar.objects.filter(pk__in=list(jar_ids)).order_by("pk")
    list(rows.select_for_update().values_list("pk"))


def locked_bottle(code: str) -> StockBottle:
    """Return a bottle whose ledger nobody else can add to in this transaction."""
    lock_bottles([code])
    return bottle_row(code)


def locked_jar(jar_id: int) -> PowderJar:
    """Return a jar whose ledger nobody else can add to in this transaction."""
    lock_jars([jar_id])
    return jar_row(jar_id)


def ledger_rows(bottle: StockBottle) -> QuerySet[BottleLine]:
    """Return a bottle's ledger, oldest first, with who and what else took part."""
    rows = BottleLine.objects.filter(bottle=bottle)
    return rows.select_related("by", "other", "jar", "tool", "undone_by").order_by("id")


def jar_ledger_rows(jar: PowderJar) -> QuerySet[JarLine]:
    """Return a jar's ledger, oldest first."""
    rows = JarLine.objects.filter(jar=jar)
    return rows.select_related("by", "undone_by").order_by("id")


def bottle_lines_of(deed: UUID) -> QuerySet[BottleLine]:
    """Return the lines in bottles' ledgers that one deed wrote."""
    rows = BottleLine.objects.filter(deed=deed).order_by("id")
    return rows.select_related("bottle")


def jar_lines_of(deed: UUID) -> QuerySet[JarLine]:
    """Return the lines in jars' ledgers that one deed wrote."""
    return JarLine.objects.filter(deed=deed).select_related("jar").order_by("id")


def making_rows() -> QuerySet[StockMaking]:
    """Return the stocks in the making, newest first."""
    rows = StockMaking.objects.filter(bottle=None, abandoned_at=None)
    return rows.select_related("dye", "jar", "started_by")


def lock_making(making_id: int) -> None:
    """Let nobody else go on with a stock in the making in this transaction."""
    StockMaking.objects.select_for_update().filter(pk=making_id).first()


def making_row(making_id: int) -> StockMaking:
    """Return one stock in the making, finished or not."""
    rows = StockMaking.objects.select_related("dye", "jar", "bottle", "started_by")
    row = rows.filter(pk=making_id).first()
    if row is None:
        raise NotFoundError(kind="stock in the making", key=str(making_id))
    return row


def version_rows(kind: str, item_id: int) -> QuerySet[CatalogueVersion]:
    """Return an item's earlier versions, newest first."""
    rows = CatalogueVersion.objects.filter(kind=kind, item_id=item_id)
    return rows.select_related("replaced_by")
