"""What a deed wrote, in whichever ledgers."""

from uuid import UUID

from django.db import connection, models
from django.db.models import QuerySet

from shadewright.records.models import (
    BathLine,
    BottleLine,
    ColourReading,
    DayLine,
    DryCheck,
    EvidenceLine,
    FastnessTest,
    JarLine,
    LotLine,
    OrderEdit,
    SkeinsOut,
    Standard,
    ToolCheck,
)
from shadewright.records.models.ledgers import LedgerRow

LEDGERS: tuple[type[LedgerRow], ...] = (
    BottleLine,
    JarLine,
    BathLine,
    LotLine,
    ToolCheck,
    ColourReading,
    EvidenceLine,
    DayLine,
    DryCheck,
    FastnessTest,
    SkeinsOut,
    OrderEdit,
    Standard,
)
"""Every ledger there is, in the order in which a deed is taken back."""

_TABLES = [ledger._meta.db_table for ledger in LEDGERS]  # ruff: ignore[private-member-access]
_IN_ANY = " UNION ALL ".join(
    f"SELECT 1 FROM {table} WHERE deed = %s"  # ruff: ignore[hardcoded-sql-expression]
    for table in _TABLES
)


def is_deed_written(deed: UUID) -> bool:
    """Whether a deed wrote in any ledger; all are asked at once."""
    key = models.UUIDField().get_db_prep_value(deed, connection)
    with connection.cursor() as cursor:
        cursor.execute(_IN_ANY, [key] * len(LEDGERS))
        return cursor.fetchone() is not None


def standing_lines_of(deed: UUID) -> list[LedgerRow]:
    """Return the lines of a deed that nobody took back, the newest first a ledger."""
    standing = {"undone_by": None, "undoes": None}
    return [
        line
        for ledger in LEDGERS
        for line in _rows(ledger).filter(deed=deed, **standing).order_by("-id")
    ]


def _rows(ledger: type[LedgerRow]) -> QuerySet[LedgerRow]:
    return ledger._default_manager.get_queryset()  # ruff: ignore[private-member-access]
