"""Spreads as they are kept, and back."""

import json

from shadewright.core.solutions.ledger import BottleAct
from shadewright.core.uncertainty import Shape, Term
from shadewright.records.models import BottleLine
from shadewright.records.shapes import (
    ledger_line,
    line_spread,
    terms_from_json,
    terms_to_json,
)

SCALE = Term(name="scale", source="tool 1 powder", u=0.004, shape=Shape.TRIANGULAR)
MARK = Term(name="mark", source="tool 2 stock", u=-5.8, shape=Shape.RECTANGULAR)


def test_terms_come_back_as_they_were_kept() -> None:
    kept = json.dumps(terms_to_json([SCALE, MARK]))
    assert terms_from_json(json.loads(kept)) == (SCALE, MARK)


def test_a_line_keeps_strength_and_amount_apart_and_what_is_not_known() -> None:
    kept = line_spread(strength=[SCALE], amount=[MARK], lacks=["the powder’s scale"])
    row = BottleLine(act=BottleAct.FILLED.value, volume_ml=500.0, spread=kept)
    line = ledger_line(row)
    assert (line.strength_terms, line.amount_terms) == ((SCALE,), (MARK,))
    assert line.lacks == ("the powder’s scale",)
    assert terms_from_json(kept) == (SCALE,)


def test_a_line_from_before_has_no_terms() -> None:
    line = ledger_line(BottleLine(act=BottleAct.FILLED.value, volume_ml=500.0))
    assert (line.strength_terms, line.amount_terms, line.lacks) == ((), (), ())
