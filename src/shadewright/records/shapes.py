"""A row as a frozen core value, and back."""

from collections.abc import Iterable, Mapping
from typing import Any, TypeVar

from shadewright.core.solutions.ledger import (
    BottleAct,
    BottleState,
    LedgerLine,
    bottle_state,
)
from shadewright.core.uncertainty import Shape, Term
from shadewright.records.models import (
    BathLine,
    BottleLine,
    JarLine,
    StockBottle,
    ToolCheck,
)
from shadewright.records.models.ledgers import JarAct

SpreadRow = Mapping[str, Any]
"""A term as it is kept: name, source, u and shape, and what it is ``of``."""

_Line = TypeVar("_Line", BathLine, BottleLine, JarLine, ToolCheck)
_STRENGTH, _AMOUNT, _LACKING = "strength", "amount", "lacking"


def terms_to_json(terms: Iterable[Term], *, of: str = _STRENGTH) -> list[SpreadRow]:
    """Return terms as they are kept; ``of`` is said where it is no strength."""
    kind = {} if of == _STRENGTH else {"of": of}
    return [
        {
            "name": term.name,
            "source": term.source,
            "u": term.u,
            "shape": term.shape.value,
            **kind,
        }
        for term in terms
    ]


def terms_from_json(
    rows: Iterable[SpreadRow], *, of: str = _STRENGTH
) -> tuple[Term, ...]:
    """Return the terms that were kept, of a strength or of an amount."""
    return tuple(
        Term(
            name=row["name"],
            source=row["source"],
            u=row["u"],
            shape=Shape(row["shape"]),
        )
        for row in rows
        if row.get("of", _STRENGTH) == of
    )


def line_spread(
    *,
    strength: Iterable[Term] = (),
    amount: Iterable[Term] = (),
    lacks: Iterable[str] = (),
) -> list[SpreadRow]:
    """Return what a line keeps: terms of both, and what no term is known for."""
    return [
        *terms_to_json(strength),
        *terms_to_json(amount, of=_AMOUNT),
        *({"name": words, "of": _LACKING} for words in lacks),
    ]


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
        strength_terms=terms_from_json(row.spread),
        amount_terms=terms_from_json(row.spread, of=_AMOUNT),
        lacks=lacks_of(row.spread),
    )


def lacks_of(rows: Iterable[SpreadRow]) -> tuple[str, ...]:
    """Return what no term is known for."""
    return tuple(row["name"] for row in rows if row.get("of") == _LACKING)


def state_of(bottle: StockBottle) -> BottleState:
    """Return what is left in a bottle by its ledger."""
    return bottle_state(ledger_line(row) for row in bottle.lines.all())


def standing_lines(rows: Iterable[_Line]) -> tuple[_Line, ...]:
    """Return the lines of a ledger that nobody took back, in their order."""
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
