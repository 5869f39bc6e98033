"""How sure a strength is on a page: its ±, what spoils it, what is not known."""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.uncertainty import BudgetLine, Value, budget
from shadewright.web.parts import Measured, measured_value
from shadewright.workflows.shelf import ShelfBottle

_MOST_NAMED = 2


@dataclass(frozen=True, kw_only=True)
class SureStrength:
    """A strength with its spread; ``lacking`` names what no term is known for."""

    value: Measured
    mostly: str
    lacking: str
    budget: tuple[BudgetLine, ...]


def sure_strength(strength: Value, lacks: Sequence[str]) -> SureStrength:
    """Return a strength as a page shows it."""
    lines = budget(strength)
    return SureStrength(
        value=measured_value(strength, "%", is_part=bool(lacks)),
        mostly=f"Mostly: {lines[0].name}." if lines else "",
        lacking=_lacking(lacks, is_known=bool(lines)),
        budget=lines,
    )


def bottle_strength(bottle: ShelfBottle) -> SureStrength:
    """Return how strong a bottle is, and how sure that is."""
    return sure_strength(bottle.strength, bottle.lacks)


def _lacking(lacks: Sequence[str], *, is_known: bool) -> str:
    named = "; ".join(lacks[:_MOST_NAMED])
    if len(lacks) > _MOST_NAMED:
        named += f"; and {len(lacks) - _MOST_NAMED} more"
    if is_known:
        return f"Left out: {named}." if lacks else ""
    return f"How sure is not known: {named or 'nothing was said'}."
