"""Changes to the store that must keep a promise beyond the row itself."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from shadewright.core.solutions.ledger import bottle_state
from shadewright.records.models import (
    BottleLine,
    CatalogueVersion,
    ColourReading,
    PowderJar,
    StockBottle,
)
from shadewright.records.models.ledgers import LedgerRow
from shadewright.records.reads import bottle_rows, jar_ledger_rows
from shadewright.records.shapes import jar_left_g, ledger_line, state_of


@dataclass(frozen=True, kw_only=True)
class Stamp:
    """Who did it (None: nobody said), when it happened, and the deed's own key."""

    by: int | None
    at: datetime
    deed: UUID
    written_at: datetime


def keep_line(line: LedgerRow, stamp: Stamp) -> None:
    """Add a line to its ledger; core's error if a bottle no longer adds up.

    Call inside a transaction: an error leaves nothing behind.
    """
    _sign(line, stamp)
    line.save()
    if isinstance(line, BottleLine):
        check_bottle(line.bottle)


def keep_colour_readings(rows: Sequence[ColourReading], stamp: Stamp) -> None:
    """Add many readings of one deed at once."""
    for row in rows:
        _sign(row, stamp)
    ColourReading.objects.bulk_create(rows)


def check_bottle(bottle: StockBottle) -> None:
    """Raise core's own error if a bottle's ledger does not add up."""
    rows = BottleLine.objects.filter(bottle=bottle).order_by("id")
    bottle_state(ledger_line(row) for row in rows)


def check_every_bottle() -> None:
    """Raise core's own error if the ledger of any bottle does not add up."""
    for bottle in bottle_rows():
        state_of(bottle)


def left_in_jar_g(jar: PowderJar) -> float:
    """Return the powder left in a jar now, asked anew, in grams."""
    return jar_left_g(jar_ledger_rows(jar))


def keep_version(
    *,
    kind: str,
    item_id: int,
    values: Mapping[str, object],
    by: int | None,
    at: datetime,
) -> None:
    """Keep an item of the catalogue as it stood before an edit."""
    earlier = CatalogueVersion.objects.filter(kind=kind, item_id=item_id).count()
    CatalogueVersion.objects.create(
        kind=kind,
        item_id=item_id,
        number=earlier + 1,
        values=dict(values),
        replaced_by_id=by,
        replaced_at=at,
    )


def _sign(line: LedgerRow, stamp: Stamp) -> None:
    line.deed = stamp.deed
    line.at = stamp.at
    line.written_at = stamp.written_at
    line.by_id = stamp.by
