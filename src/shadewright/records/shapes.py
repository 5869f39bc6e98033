"""A row as a frozen core value, and back."""

from collections.abc import Iterable

from shadewright.core.solutions.ledger import (
    BottleAct,
    BottleState,
    LedgerLine,
    bottle_state,
)
from shadewright.records.models import BottleLine, JarLine, StockBottle
from shadewright.records.models.ledgers import JarAct


def ledger_line(row: BottleLine) -> LedgerLine:
    """Return a line of a bottle's ledger as core reads it."""
    return LedgerLine(
        number=row.pk,
        act=BottleAct(row.act),
        volume_ml=row.volume_ml,
        strength_percent=row.strength_percent,
        dye_g=row.dye_g,
        is_guess=row.is_guess,
        undoes=row.undoes_id,
    )


def state_of(bottle: StockBottle) -> BottleState:
    """Return what is left in a bottle by its ledger."""
    return bottle_state(ledger_line(row) for row in bottle.lines.all())


def standing_lines(rows: Iterable[JarLine]) -> tuple[JarLine, ...]:
    """Return the lines of a jar's ledger that nobody took back."""
    kept = tuple(rows)
    undone = {row.undoes_id for row in kept if row.undoes_id is not None}
    return tuple(r for r in kept if r.undoes_id is None and r.pk not in undone)


def jar_left_g(rows: Iterable[JarLine]) -> float:
    """Return the powder left in a jar by its ledger, in grams."""
    left_g = 0.0
    for row in standing_lines(rows):
        left_g = _after(left_g, row)
    return left_g


def _after(left_g: float, row: JarLine) -> float:
    match row.act:
        case JarAct.FILLED:
            return left_g + row.amount_g
        case JarAct.WEIGHED_OUT:
            return left_g - row.amount_g
        case JarAct.COUNTED:
            return row.amount_g
        case _:
            return 0.0
