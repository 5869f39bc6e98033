"""Where the dye in a bottle came from: the jars behind it, through every pouring.

The ledgers of the bottles that are asked for, and of all that was ever poured into
them, are fetched level by level, so that a long chain of mergers takes a few
questions to the store and not one a bottle.
"""

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from shadewright.core.costing import mixed_shares
from shadewright.core.solutions.ledger import (
    BottleAct,
    BottleState,
    running_states,
    standing,
)
from shadewright.errors import StudioError
from shadewright.records.lot_reads import source_lines
from shadewright.records.models import BottleLine, PowderJar, StockBottle
from shadewright.records.shapes import ledger_line

CAME_IN = (BottleAct.FILLED, BottleAct.POWDER_ADDED, BottleAct.STOCK_ADDED)


@dataclass(frozen=True, kw_only=True)
class Ledgers:
    """The lines that count of some bottles and of all that was poured into them."""

    bottles: Mapping[int, StockBottle]
    lines: Mapping[int, Sequence[BottleLine]]
    jars: Mapping[int, PowderJar]

    def before(self, bottle_id: int, until: int | None) -> Sequence[BottleLine]:
        """Return a bottle's lines before a line of any ledger, or all of them."""
        every = self.lines.get(bottle_id, ())
        return [line for line in every if until is None or line.pk < until]

    def came_in(self, bottle_id: int, until: int | None) -> Sequence[BottleLine]:
        """Return the lines by which dye came into a bottle."""
        return [line for line in self.before(bottle_id, until) if line.act in CAME_IN]

    def state(self, bottle_id: int, until: int | None) -> BottleState | None:
        """Return a bottle as it was then, or None where it does not add up."""
        try:
            return _states(self.before(bottle_id, until))[-1]
        except StudioError:
            return None

    def strength_percent(self, bottle_id: int, until: int | None) -> float | None:
        """Return how strong a bottle was then, or None where it does not add up."""
        state = self.state(bottle_id, until)
        return None if state is None else state.strength_percent

    def shares(self, bottle_id: int, until: int | None) -> dict[int | None, float]:
        """Return the jars of a bottle's dye by their share; None is an unknown one."""
        lines = self.before(bottle_id, until)
        shares: dict[int | None, float] = {}
        for line, (before, _after) in zip(lines, pairwise(_states(lines)), strict=True):
            if line.act in CAME_IN:
                held = 0.0 if line.act == BottleAct.FILLED else before.dye_g
                portion = (_dye_g(line), self._shares_in(line))
                shares = mixed_shares([(held, shares), portion])
        return shares

    def _shares_in(self, line: BottleLine) -> dict[int | None, float]:
        if line.other_id is not None:
            return self.shares(line.other_id, line.pk)
        return {line.jar_id: 1.0}


def ledgers_of(bottle_ids: Collection[int]) -> Ledgers:
    """Fetch the ledgers of some bottles and of everything behind them."""
    lines: dict[int, Sequence[BottleLine]] = {}
    waiting = set(bottle_ids)
    while waiting:
        found = _by_bottle(list(source_lines(waiting)))
        lines |= {bottle_id: found.get(bottle_id, ()) for bottle_id in waiting}
        poured = (x for own in found.values() for x in own if x.act in CAME_IN)
        waiting = {x.other_id for x in poured if x.other_id is not None} - lines.keys()
    every = [line for own in lines.values() for line in own]
    return Ledgers(
        bottles=StockBottle.objects.select_related("dye").in_bulk(list(lines)),
        lines=lines,
        jars={line.jar.pk: line.jar for line in every if line.jar is not None},
    )


def _by_bottle(rows: Sequence[BottleLine]) -> dict[int, Sequence[BottleLine]]:
    own: dict[int, list[BottleLine]] = defaultdict(list)
    for row in rows:
        own[row.bottle_id].append(row)
    return {bottle_id: _standing(found) for bottle_id, found in own.items()}


def _standing(rows: Sequence[BottleLine]) -> Sequence[BottleLine]:
    kept = {line.number for line in standing(ledger_line(row) for row in rows)}
    return [row for row in rows if row.pk in kept]


def _states(lines: Sequence[BottleLine]) -> tuple[BottleState, ...]:
    return running_states([ledger_line(line) for line in lines])


def _dye_g(line: BottleLine) -> float:
    if line.act == BottleAct.POWDER_ADDED:
        return line.dye_g
    return line.volume_ml * line.strength_percent / 100
