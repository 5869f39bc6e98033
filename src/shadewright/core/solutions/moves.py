"""What one line of a bottle's ledger does to the bottle.

A bottle is two numbers: the volume in it, V, and the dye dissolved in that
volume, m. Its strength is c = 100 m / V (g per 100 ml). Each line of the
ledger moves one or both of them:

======================  ==================  =========================
what happened           volume              dye
======================  ==================  =========================
filled (made, entered)  V := v              m := v c / 100
drawn                   V := V - v          m := m - v m / V
given to a bottle       V := V - v          m := m - g
evaporated to v         V := v              m stays: it grows stronger
counted at v            V := v              m := v m / V
water added             V := V + v          m stays: it grows weaker
powder added            V stays             m := m + g
stock added             V := V + v          m := m + v c / 100
strength tested at c    V stays             m := V c / 100
weighed, looked at      V stays             m stays
poured away             V := 0              m := 0
======================  ==================  =========================

What is given to another bottle keeps the grams g that came in over there. They
must be v m / V here: so no earlier line can be taken back that would make the
two bottles disagree about the dye that went over.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from math import isclose

from shadewright.core.quantities import MOST_STRENGTH_PERCENT, amount_text
from shadewright.core.solutions.acts import BottleAct, BottleState, LedgerLine
from shadewright.core.solutions.carrying import carried
from shadewright.errors import ConflictError, OutOfRangeError

_TRACE_ML = 1e-9


def after(state: BottleState, line: LedgerLine) -> BottleState:
    """Return a bottle after one more line that counts.

    Parameters
    ----------
    state : BottleState
        The bottle before. [mL, g, %]
    line : LedgerLine
        What happens to it. [mL, %, g]

    Returns
    -------
    BottleState
        The bottle after. [mL, g, %]

    Raises
    ------
    OutOfRangeError
        If more is drawn than there is, or the stock would be stronger than any
        can be.
    ConflictError
        If the bottle is not filled, poured away, or empty where stock is needed.

    Notes
    -----
    Source: conservation of mass; no published example used.

    Examples
    --------
    >>> line = LedgerLine(
    ...     number=1, act=BottleAct.FILLED, volume_ml=500, strength_percent=1
    ... )
    >>> after(BottleState(), line).dye_g
    5.0
    """
    if state.is_poured:
        raise ConflictError(
            why="The bottle was poured away, so nothing more can happen to it."
        )
    if not state.is_filled and line.act is not BottleAct.FILLED:
        raise ConflictError(why="The bottle was never filled.")
    move = _MOVES.get(line.act)
    if move is None:
        return state
    return carried(state, _dissolved(move(state, line), line), line)


def _dissolved(state: BottleState, line: LedgerLine) -> BottleState:
    if state.strength_percent <= MOST_STRENGTH_PERCENT * (1 + 1e-9):
        return state
    raise OutOfRangeError(
        name="The strength that results",
        given=amount_text(state.strength_percent, "%"),
        allowed=f"at most {amount_text(MOST_STRENGTH_PERCENT, '%')}",
        advice="Look at the grams and the millilitres again.",
        argument=_AT_FAULT.get(line.act, "volume_ml"),
    )


def _holding(state: BottleState, volume_ml: float, dye_g: float) -> BottleState:
    strength = 100 * dye_g / volume_ml if volume_ml > 0 else state.strength_percent
    return replace(
        state,
        volume_ml=float(volume_ml),
        dye_g=float(dye_g),
        strength_percent=strength,
    )


def _at(state: BottleState, strength_percent: float, volume_ml: float) -> BottleState:
    return replace(
        state,
        volume_ml=float(volume_ml),
        dye_g=volume_ml * strength_percent / 100,
        strength_percent=float(strength_percent),
    )


def _filled(state: BottleState, line: LedgerLine) -> BottleState:
    filled = replace(state, is_filled=True, is_guess=line.is_guess)
    return _at(filled, line.strength_percent, line.volume_ml)


def _drawn(state: BottleState, line: LedgerLine) -> BottleState:
    if line.volume_ml > state.volume_ml + _TRACE_ML:
        raise OutOfRangeError(
            name="What is drawn",
            given=amount_text(line.volume_ml, "ml"),
            allowed=f"at most the {amount_text(state.volume_ml, 'ml')} that are left",
            advice="If the bottle really holds more, read its level first.",
            argument="volume_ml",
        )
    left_ml = max(state.volume_ml - line.volume_ml, 0.0)
    return _at(state, state.strength_percent, left_ml)


def _given(state: BottleState, line: LedgerLine) -> BottleState:
    left = _drawn(state, line)
    if not isclose(state.dye_g - left.dye_g, line.dye_g, rel_tol=1e-6, abs_tol=1e-9):
        raise ConflictError(
            why="Another bottle was filled from this one at the strength that "
            "it had then."
        )
    return left


def _evaporated(state: BottleState, line: LedgerLine) -> BottleState:
    if not 0 < line.volume_ml <= state.volume_ml + _TRACE_ML:
        raise OutOfRangeError(
            name="The level after evaporation",
            given=amount_text(line.volume_ml, "ml"),
            allowed=(
                "above 0 and at most the "
                f"{amount_text(state.volume_ml, 'ml')} of the ledger"
            ),
            advice="Where more than that stands in the bottle, count it anew.",
            argument="volume_ml",
        )
    return _holding(state, line.volume_ml, state.dye_g)


def _counted(state: BottleState, line: LedgerLine) -> BottleState:
    return _at(state, state.strength_percent, line.volume_ml)


def _watered(state: BottleState, line: LedgerLine) -> BottleState:
    _refuse_empty(state, "water")
    return _holding(state, state.volume_ml + line.volume_ml, state.dye_g)


def _powdered(state: BottleState, line: LedgerLine) -> BottleState:
    _refuse_empty(state, "powder")
    return _holding(state, state.volume_ml, state.dye_g + line.dye_g)


def _refuse_empty(state: BottleState, what: str) -> None:
    if state.volume_ml <= 0:
        raise ConflictError(
            why=f"The bottle is empty, so {what} finds no stock to join.",
            advice="Make a new stock, or read the level if some is left.",
        )


def _joined(state: BottleState, line: LedgerLine) -> BottleState:
    dye_g = state.dye_g + line.volume_ml * line.strength_percent / 100
    joined = replace(
        state,
        is_guess=line.is_guess or (state.is_guess and state.volume_ml > 0),
        is_tested=False,
        is_mixed=True,
    )
    return _holding(joined, state.volume_ml + line.volume_ml, dye_g)


def _tested(state: BottleState, line: LedgerLine) -> BottleState:
    known = replace(state, is_tested=True, is_mixed=False, is_guess=False)
    return _at(known, line.strength_percent, state.volume_ml)


def _poured(state: BottleState, _line: LedgerLine) -> BottleState:
    return replace(state, volume_ml=0.0, dye_g=0.0, is_poured=True)


def _looked_at(state: BottleState, line: LedgerLine) -> BottleState:
    return replace(state, is_settled=line.act is BottleAct.SETTLED)


_MOVES: Mapping[BottleAct, Callable[[BottleState, LedgerLine], BottleState]] = {
    BottleAct.FILLED: _filled,
    BottleAct.DRAWN: _drawn,
    BottleAct.GIVEN: _given,
    BottleAct.EVAPORATED: _evaporated,
    BottleAct.COUNTED: _counted,
    BottleAct.WATER_ADDED: _watered,
    BottleAct.POWDER_ADDED: _powdered,
    BottleAct.STOCK_ADDED: _joined,
    BottleAct.TESTED: _tested,
    BottleAct.POURED: _poured,
    BottleAct.CLEAR: _looked_at,
    BottleAct.SETTLED: _looked_at,
}
_AT_FAULT: Mapping[BottleAct, str] = {
    BottleAct.FILLED: "strength_percent",
    BottleAct.POWDER_ADDED: "powder_g",
    BottleAct.TESTED: "strength_percent",
}
