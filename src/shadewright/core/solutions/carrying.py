"""What one line of a bottle's ledger does to the spread of its strength.

A bottle's errors stay with it. Drawing takes none away and adds none: what is left
is as strong as what went. Water, powder and stock bring what they were measured
with; a level that was read turns what is known of the volume into strength; a test
puts an end to all of it and starts anew.

======================  ==================================  ====================
what happened           strength                            volume
======================  ==================================  ====================
filled                  the terms it was filled with        those of the mark
drawn, given            stays                               stays
evaporated to v         c V / v, with the terms of all      those of v
counted at v            stays                               those of v
water added             of both, by their shares            of both
powder added            of both                             stays
stock added             of both, by their shares            of both
strength tested         those of the test                   stays
======================  ==================================  ====================

What each draw was off is left out: some are too large, some too small.
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import replace

from shadewright.core.solutions.acts import BottleAct, BottleState, LedgerLine
from shadewright.core.solutions.shares import (
    diluted_strength,
    joined_strength,
    strengthened_strength,
)
from shadewright.core.solutions.sureness import labelled_strength
from shadewright.core.uncertainty import Value, exact, total

BEFORE_SPREADS = "made before spreads were kept"
NO_TEST_SPREAD = "how well it was tested"
_NO_TOOL = {
    BottleAct.EVAPORATED: "what the level was read from",
    BottleAct.WATER_ADDED: "what the water was measured with",
    BottleAct.POWDER_ADDED: "what the added powder was weighed on",
    BottleAct.STOCK_ADDED: "what the added stock was measured with",
}


def carried(before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    """Return a bottle's new state with the spread that it has from here on.

    Parameters
    ----------
    before : BottleState
        The bottle before the line, with its spread. [mL, g, %]
    now : BottleState
        The bottle after it; the spread is still that of before. [mL, g, %]
    line : LedgerLine
        What happened. [mL, g, %]

    Returns
    -------
    BottleState
        The bottle after the line, with its spread. [mL, g, %]

    Notes
    -----
    To first order [jcgm100]_. A line that brings an amount without a term is
    named among what the spread lacks.

    Examples
    --------
    >>> line = LedgerLine(
    ...     number=1,
    ...     act=BottleAct.FILLED,
    ...     volume_ml=500,
    ...     strength_percent=1,
    ...     is_guess=True,
    ... )
    >>> now = BottleState(volume_ml=500, strength_percent=1)
    >>> carried(BottleState(), now, line).strength.u_rel
    0.1
    """
    carry = _CARRIED.get(line.act)
    found = now if carry is None else carry(before, now, line)
    return found if found.volume_ml > 0 else replace(found, volume_terms=())


def as_known(strength: Value, *, lacks: Collection[str]) -> Value:
    """Return a strength without its terms where what nobody knows outweighs them.

    Parameters
    ----------
    strength : Value
        A strength with the terms that are known. [%]
    lacks : collection of str
        What no term is known for. [-]

    Returns
    -------
    Value
        The same, or the bare number where nobody knows how the stock was made or
        tested: a spread of the rest alone would look tight and mean nothing. [%]

    Examples
    --------
    >>> from shadewright.core.uncertainty import Term
    >>> term = Term(name="level", source="level", u=0.001)
    >>> made = Value(value=1.0, terms=(term,))
    >>> as_known(made, lacks=[BEFORE_SPREADS]).terms
    ()
    """
    is_open = BEFORE_SPREADS in lacks or NO_TEST_SPREAD in lacks
    return exact(strength.value) if is_open else strength


def _filled(_before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    strength = _brought(line)
    return replace(
        now,
        terms=strength.terms,
        volume_terms=line.amount_terms,
        lacks=line.lacks or (() if strength.terms else (BEFORE_SPREADS,)),
    )


def _evaporated(before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    strength = diluted_strength(
        stock_percent=before.strength, stock_ml=before.volume, filled=line.volume
    )
    return replace(
        now,
        terms=strength.terms,
        volume_terms=line.amount_terms,
        lacks=_lacking(before, line),
    )


def _counted(_before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    return replace(now, volume_terms=line.amount_terms)


def _watered(before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    return _joined_with(exact(0.0), before, now, line)


def _stocked(before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    strength = _brought(line)
    first = before if before.volume_ml > 0 else replace(before, lacks=())
    joined = _joined_with(strength, first, now, line)
    if strength.terms or line.lacks:
        return joined
    return replace(joined, lacks=_once(*joined.lacks, BEFORE_SPREADS))


def _joined_with(
    second: Value, before: BottleState, now: BottleState, line: LedgerLine
) -> BottleState:
    together = joined_strength(
        first_percent=before.strength,
        first_ml=before.volume,
        second_percent=second,
        second_ml=line.volume,
    )
    return replace(
        now,
        terms=together.terms,
        volume_terms=total(before.volume, line.volume).terms,
        lacks=_lacking(before, line),
    )


def _powdered(before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    strength = strengthened_strength(
        have_percent=before.strength, volume=before.volume, dye=line.dye
    )
    return replace(now, terms=strength.terms, lacks=_lacking(before, line))


def _tested(_before: BottleState, now: BottleState, line: LedgerLine) -> BottleState:
    lacks = line.lacks or (() if line.strength_terms else (NO_TEST_SPREAD,))
    return replace(now, terms=line.strength_terms, lacks=lacks)


def _brought(line: LedgerLine) -> Value:
    """Return the strength that came in; as labelled where it is a bare guess."""
    if line.is_guess and not line.strength_terms:
        return labelled_strength(
            strength_percent=line.strength_percent, key=f"of line {line.number}"
        )
    return line.strength


def _lacking(before: BottleState, line: LedgerLine) -> tuple[str, ...]:
    unknown = () if line.amount_terms else (_NO_TOOL[line.act],)
    return _once(*before.lacks, *line.lacks, *unknown)


def _once(*words: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(words))


_Carry = Callable[[BottleState, BottleState, LedgerLine], BottleState]
_CARRIED: Mapping[BottleAct, _Carry] = {
    BottleAct.FILLED: _filled,
    BottleAct.EVAPORATED: _evaporated,
    BottleAct.COUNTED: _counted,
    BottleAct.WATER_ADDED: _watered,
    BottleAct.POWDER_ADDED: _powdered,
    BottleAct.STOCK_ADDED: _stocked,
    BottleAct.TESTED: _tested,
}
