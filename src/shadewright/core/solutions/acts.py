"""What can happen to a bottle: the acts, a line of its ledger, and its state.

A bottle is a volume and a strength. Both were read from something, so both have
terms: what each error puts into them, under the name of where it comes from. What
nobody can say (a level read by eye, a bottle made before spreads were kept) has no
term; it is named among what a spread ``lacks``.
"""

from dataclasses import dataclass
from enum import StrEnum

from shadewright.core.uncertainty import Term, Value


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
    WEIGHED = "weighed"
    CLEAR = "checked clear"
    SETTLED = "checked settled"
    POURED = "poured away"
    UNDO = "undone"


@dataclass(frozen=True, kw_only=True)
class LedgerLine:
    """One line of a bottle's ledger.

    ``volume_ml`` is what moved or, for evaporated and counted, what was read;
    ``strength_percent`` belongs to the liquid that came in or was tested;
    ``dye_g`` is standard dye added as powder or given to another bottle;
    ``is_guess`` marks a strength that nobody weighed or tested; ``undoes``
    numbers a line. ``amount_terms`` are those of the volume [mL] or the dye [g],
    ``strength_terms`` those of the strength [%].
    """

    number: int
    act: BottleAct
    volume_ml: float = 0.0
    strength_percent: float = 0.0
    dye_g: float = 0.0
    is_guess: bool = False
    undoes: int | None = None
    amount_terms: tuple[Term, ...] = ()
    strength_terms: tuple[Term, ...] = ()
    lacks: tuple[str, ...] = ()

    @property
    def volume(self) -> Value:
        """What moved or was read, with its spread. [mL]."""
        return Value(value=self.volume_ml, terms=self.amount_terms)

    @property
    def dye(self) -> Value:
        """Dye that was added as powder, with its spread. [g]."""
        return Value(value=self.dye_g, terms=self.amount_terms)

    @property
    def strength(self) -> Value:
        """Strength of what came in or was tested, with its spread. [%]."""
        return Value(value=self.strength_percent, terms=self.strength_terms)


@dataclass(frozen=True, kw_only=True)
class BottleState:
    """A bottle as its ledger leaves it.

    ``strength_percent`` is the last that was known, also once it is empty.
    ``is_settled`` is None while nobody has looked; ``is_mixed`` means that stock
    from another bottle came in after the last test. ``terms`` are those of the
    strength [%], ``volume_terms`` those of the volume [mL]; ``lacks`` says what no
    term is known for.
    """

    volume_ml: float = 0.0
    dye_g: float = 0.0
    strength_percent: float = 0.0
    is_settled: bool | None = None
    is_filled: bool = False
    is_poured: bool = False
    is_tested: bool = False
    is_mixed: bool = False
    is_guess: bool = False
    terms: tuple[Term, ...] = ()
    volume_terms: tuple[Term, ...] = ()
    lacks: tuple[str, ...] = ()

    @property
    def strength(self) -> Value:
        """Strength with its spread. [%]."""
        return Value(value=self.strength_percent, terms=self.terms)

    @property
    def volume(self) -> Value:
        """Volume with its spread. [mL]."""
        return Value(value=self.volume_ml, terms=self.volume_terms)
