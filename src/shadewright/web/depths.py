"""How sure a depth is on a page: its ±, what spoils it, what is not known."""

from dataclasses import dataclass

from shadewright.core.uncertainty import BudgetLine, budget
from shadewright.web.parts import Measured, measured
from shadewright.workflows.depths import DepthNow, depths_of
from shadewright.workflows.dosing import HowSure
from shadewright.workflows.sure_words import (
    depth_words,
    lacking_words,
    most_words,
    reach_rel,
    spread_words,
)


@dataclass(frozen=True, kw_only=True)
class Sureness:
    """How sure a depth is: the number with its ±, what weighs most, what is lacking."""

    depth: Measured
    mostly: str
    lacking: str
    budget: tuple[BudgetLine, ...]


def sureness(how: HowSure, depth_percent: float) -> Sureness:
    """Return how sure a depth is, as a page shows it."""
    return Sureness(
        depth=_depth(how, depth_percent),
        mostly=_mostly(how),
        lacking=lacking_words(how),
        budget=() if how.sure is None else budget(how.sure.depth),
    )


@dataclass(frozen=True, kw_only=True)
class DepthRow:
    """One dye: its depth with its spread, and whether that is what went in."""

    dye: str
    said: str
    sureness: Sureness | None


def depth_rows(number: str) -> tuple[DepthRow, ...]:
    """Return a row for each dye of a bath."""
    return tuple(_row(depth) for depth in depths_of(number))


def _row(depth: DepthNow) -> DepthRow:
    if not depth.depth_percent:
        return DepthRow(dye=depth.dye_name, said="left out", sureness=None)
    return DepthRow(
        dye=depth.dye_name,
        said="as it went in" if depth.is_given else "as planned",
        sureness=sureness(depth.how_sure, depth.depth_percent),
    )


def _depth(how: HowSure, depth_percent: float) -> Measured:
    bare = measured(depth_percent, "%")
    if how.sure is None:
        return bare
    return Measured(
        number=bare.number,
        unit=bare.unit,
        spread=spread_words(how.sure),
        relative_spread=reach_rel(how.sure),
        is_part=bool(how.lacks),
    )


def _mostly(how: HowSure) -> str:
    """Return what weighs most, and both ends where they are not even."""
    if how.sure is None:
        return ""
    most = f"Mostly: {most_words(how)}."
    return f"{depth_words(how)}. {most}" if how.sure.is_drawn else most
