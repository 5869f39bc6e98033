"""What is left in a bottle, reckoned from everything that happened to it.

A bottle is two numbers: the volume in it, V, and the dye dissolved in that
volume, m. Its strength is c = 100 m / V (g per 100 ml). Each line of the
ledger moves one or both of them:

======================  ==================  =========================
what happened           volume              dye
======================  ==================  =========================
filled (made, entered)  V := v              m := v c / 100
drawn, given            V := V - v          m := m - v m / V
evaporated to v         V := v              m stays: it grows stronger
counted at v            V := v              m := v m / V
water added             V := V + v          m stays: it grows weaker
powder added            V stays             m := m + g
stock added             V := V + v          m := m + v c / 100
strength tested at c    V stays             m := V c / 100
poured away             V := 0              m := 0
======================  ==================  =========================

Nothing is ever rubbed out. An undo is a line of its own that names the line
it takes back; both stay in the ledger and neither counts.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from shadewright.errors import ConflictError, OutOfRangeError

_TRACE_ML = 1e-9


class BottleAct(StrEnum):
    """What can happen to a bottle of stock."""

    FILLED = "filled"
    DRAWN = "drawn"
    GIVEN = "given"
    EVAPORATED = "evaporated"
    COUNTED = "counted"
    WATER_ADDED = "water added"
    POWDER_ADDED = "powder added"
    STOCK_ADDED = "stock added"
    TESTED = "strength tested"
    STIRRED = "stirred"
    REWARMED = "re-warmed"
    CLEAR = "checked clear"
    SETTLED = "checked settled"
    POURED = "poured away"
    UNDO = "undone"


@dataclass(frozen=True, kw_only=True)
class LedgerLine:
    """One line of a bottle's ledger.

    ``volume_ml`` is what moved or, for evaporated and counted, what was read;
    ``strength_percent`` belongs to the liquid that came in or was tested;
    ``dye_g`` is standard dye added as powder; ``is_guess`` marks a strength that
    nobody weighed or tested; ``undoes`` numbers a line.
    """

    number: int
    act: BottleAct
    volume_ml: float = 0.0
    strength_percent: float = 0.0
    dye_g: float = 0.0
    is_guess: bool = False
    undoes: int | None = None


@dataclass(frozen=True, kw_only=True)
class BottleState:
    """A bottle as its ledger leaves it.

    ``strength_percent`` is the last that was known, also once it is empty.
    ``is_settled`` is None while nobody has looked.
    """

    volume_ml: float = 0.0
    dye_g: float = 0.0
    strength_percent: float = 0.0
    is_settled: bool | None = None
    is_filled: bool = False
    is_poured: bool = False
    is_tested: bool = False
    is_guess: bool = False


def standing(lines: Iterable[LedgerLine]) -> tuple[LedgerLine, ...]:
    """Return the lines that count: neither undone nor an undo.

    Parameters
    ----------
    lines : iterable of LedgerLine
        A ledger, oldest first.

    Returns
    -------
    tuple of LedgerLine
        The same order, without the lines taken back and their counter-lines.
    """
    kept = tuple(lines)
    undone = {line.undoes for line in kept if line.undoes is not None}
    return tuple(
        line for line in kept if line.undoes is None and line.number not in undone
    )


def bottle_state(lines: Iterable[LedgerLine]) -> BottleState:
    """Return a bottle as its ledger leaves it.

    Parameters
    ----------
    lines : iterable of LedgerLine
        The whole ledger, oldest first.

    Returns
    -------
    BottleState
        Volume [mL], dye [g] and strength [%] that are left.

    Raises
    ------
    OutOfRangeError
        If more is drawn than the bottle holds.
    ConflictError
        If something happens to a bottle that is empty or poured away.

    Notes
    -----
    Volumes are taken as additive, which holds at the strength of a stock.
    Source: conservation of mass; no published example used.

    Examples
    --------
    >>> made = LedgerLine(
    ...     number=1, act=BottleAct.FILLED, volume_ml=500, strength_percent=1
    ... )
    >>> drawn = LedgerLine(number=2, act=BottleAct.DRAWN, volume_ml=35)
    >>> bottle_state([made, drawn]).volume_ml
    465.0
    """
    return running_states(standing(lines))[-1]


def running_states(lines: Sequence[LedgerLine]) -> tuple[BottleState, ...]:
    """Return the state before the first line and after each line that counts.

    Parameters
    ----------
    lines : sequence of LedgerLine
        Standing lines, oldest first.

    Returns
    -------
    tuple of BottleState
        One more than there are lines.
    """
    states = [BottleState()]
    for line in lines:
        states.append(_after(states[-1], line))
    return tuple(states)


def _after(state: BottleState, line: LedgerLine) -> BottleState:
    if state.is_poured:
        raise ConflictError(
            why="The bottle was poured away, so nothing more can happen to it."
        )
    move = _MOVES.get(line.act)
    return state if move is None else move(state, line)


def _holding(state: BottleState, volume_ml: float, dye_g: float) -> BottleState:
    strength = 100 * dye_g / volume_ml if volume_ml > 0 else state.strength_percent
    return replace(
        state,
        volume_ml=float(volume_ml),
        dye_g=float(dye_g),
        strength_percent=strength,
    )


def _filled(state: BottleState, line: LedgerLine) -> BottleState:
    filled = replace(
        state,
        is_filled=True,
        is_guess=line.is_guess,
        strength_percent=float(line.strength_percent),
    )
    return _holding(
        filled, line.volume_ml, line.volume_ml * line.strength_percent / 100
    )


def _drawn(state: BottleState, line: LedgerLine) -> BottleState:
    if line.volume_ml > state.volume_ml + _TRACE_ML:
        raise OutOfRangeError(
            name="What is drawn",
            given=f"{line.volume_ml:g} ml",
            allowed=f"at most the {state.volume_ml:.4g} ml left by the ledger",
            advice="If the bottle really holds more, read its level first.",
            argument="volume_ml",
        )
    left_ml = max(state.volume_ml - line.volume_ml, 0.0)
    return _holding(state, left_ml, left_ml * state.strength_percent / 100)


def _evaporated(state: BottleState, line: LedgerLine) -> BottleState:
    if not 0 < line.volume_ml <= state.volume_ml + _TRACE_ML:
        raise OutOfRangeError(
            name="The level after evaporation",
            given=f"{line.volume_ml:g} ml",
            allowed=f"above 0 and at most the {state.volume_ml:.4g} ml by the ledger",
            advice="Where more stands in the bottle than that, count it anew.",
            argument="volume_ml",
        )
    return _holding(state, line.volume_ml, state.dye_g)


def _counted(state: BottleState, line: LedgerLine) -> BottleState:
    return _holding(
        state, line.volume_ml, line.volume_ml * state.strength_percent / 100
    )


def _watered(state: BottleState, line: LedgerLine) -> BottleState:
    return _holding(state, state.volume_ml + line.volume_ml, state.dye_g)


def _powdered(state: BottleState, line: LedgerLine) -> BottleState:
    return _holding(state, state.volume_ml, state.dye_g + line.dye_g)


def _joined(state: BottleState, line: LedgerLine) -> BottleState:
    dye_g = state.dye_g + line.volume_ml * line.strength_percent / 100
    joined = replace(state, is_guess=state.is_guess or line.is_guess)
    return _holding(joined, state.volume_ml + line.volume_ml, dye_g)


def _tested(state: BottleState, line: LedgerLine) -> BottleState:
    known = replace(
        state,
        is_tested=True,
        is_guess=False,
        strength_percent=float(line.strength_percent),
    )
    return _holding(
        known, state.volume_ml, state.volume_ml * line.strength_percent / 100
    )


def _poured(state: BottleState, _line: LedgerLine) -> BottleState:
    return replace(state, volume_ml=0.0, dye_g=0.0, is_poured=True)


def _looked_at(state: BottleState, line: LedgerLine) -> BottleState:
    return replace(state, is_settled=line.act is BottleAct.SETTLED)


_MOVES: Mapping[BottleAct, Callable[[BottleState, LedgerLine], BottleState]] = {
    BottleAct.FILLED: _filled,
    BottleAct.DRAWN: _drawn,
    BottleAct.GIVEN: _drawn,
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
