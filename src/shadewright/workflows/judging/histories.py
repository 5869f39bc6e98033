"""The lots of a recipe on one base, with what each was dyed with, out of the ledgers.

One row a lot, the oldest first, as ``shadewright lot causes`` reads them. A lot has one
jar, one bottle and one bottle's age there, but most recipes have several dyes. So the
jars of all dyes stand together as one name, and so do the bottles: whichever of them is
another makes it a new name, and ``dyes`` tells which. The age is that of the dye with
most depth, the one that moves the colour most. A dye whose jar is not known in most of
its lots stays out of the name in all of them, and so with bottles; else a name of which
a part is not known is not known.

Colours count that were read by a meter, once there are enough, of lots whose recipe had
the doses of the last lot: what a version changed on purpose is no drift.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from shadewright.core.colour import Lab
from shadewright.core.quality import PastLot
from shadewright.core.quality.causes.usual import FEWEST
from shadewright.errors import NotFoundError
from shadewright.exchange.lot_history import history_text
from shadewright.records import judging_reads
from shadewright.records.models import Bath, BathLine, Lot
from shadewright.workflows.judging.pot_facts import pot_facts
from shadewright.workflows.judging.standards import OfWhat, of_lot, of_what
from shadewright.workflows.poured import Poured, PouredBath, poured_baths
from shadewright.workflows.shades.lot_colours import LotColour, lot_colours
from shadewright.workflows.shades.own_lots import planned_doses

TOGETHER = " + "


@dataclass(frozen=True, kw_only=True)
class DyeThen:
    """One dye of a lot: how deep, from which bottle and jar, how old that was."""

    name: str
    depth_percent: float | None
    bottle: str | None
    bottle_id: int | None
    jar: str | None
    age_days: float | None
    strength_percent: float | None


@dataclass(frozen=True, kw_only=True)
class LotThen:
    """A lot of the history: what core is asked of, and what is only told.

    ``planned`` are the depths that its recipe asked for, by dye. [%]
    """

    past: PastLot
    dyed_on: date
    version: int
    planned: frozenset[tuple[str, float]]
    dyes: tuple[DyeThen, ...]
    colour: LotColour | None

    @property
    def number(self) -> str:
        """The lot’s number."""
        return self.past.number


@dataclass(frozen=True, kw_only=True)
class History:
    """The lots of a recipe on a base, the oldest first.

    ``is_by_meter`` where colours that no meter read are left out of the reckoning.
    """

    what: OfWhat
    lots: tuple[LotThen, ...]
    is_by_meter: bool

    @property
    def past(self) -> tuple[PastLot, ...]:
        """The lots as core takes them."""
        return tuple(lot.past for lot in self.lots)

    @property
    def read(self) -> tuple[LotThen, ...]:
        """The lots whose colours count."""
        return tuple(lot for lot in self.lots if lot.past.colour is not None)

    @property
    def shown(self) -> tuple[LotThen, ...]:
        """The lots that can be drawn, by whatever version they were dyed."""
        return tuple(lot for lot in self.lots if _is_read(lot, self.is_by_meter))

    def up_to(self, number: str) -> "History":
        """Return the history as it stood with a lot."""
        numbers = [lot.number for lot in self.lots]
        if number not in numbers:
            raise NotFoundError(
                kind="lot with a history",
                key=number,
                advice="A swatch, a corrected lot or one taken back has none.",
                argument="lot",
            )
        return _history(self.what, self.lots[: numbers.index(number) + 1])

    @property
    def text(self) -> str:
        """The history as a table, for the terminal or a spreadsheet."""
        return history_text(self.past, dates=[lot.dyed_on for lot in self.lots])


def history_of(*, recipe_id: int, base_id: int) -> History:
    """Return every lot of a recipe on a base."""
    rows = list(judging_reads.lots_of(recipe_id=recipe_id, base_id=base_id))
    poured = poured_baths([row.bath for row in rows])
    lines = _by_bath(list(judging_reads.pot_lines([row.bath for row in rows])))
    colours = lot_colours(rows)
    order = _deepest_first(poured)
    lots = [
        _lot(
            row,
            lines.get(row.bath_id, ()),
            poured[row.bath_id],
            colours.get(row.pk),
            order,
        )
        for row in rows
    ]
    return _history(of_what(recipe_id=recipe_id, base_id=base_id), tuple(_named(lots)))


def history_up_to(number: str) -> History:
    """Return a lot’s history with the lot as its last."""
    what = of_lot(number)
    whole = history_of(recipe_id=what.recipe_id, base_id=what.base_id)
    return whole.up_to(number)


def _history(what: OfWhat, lots: Sequence[LotThen]) -> History:
    """Return lots with the colours that count."""
    by_meter = [x for x in lots if x.colour is not None and x.colour.is_by_meter]
    is_by_meter = len(by_meter) > FEWEST
    counted = (
        _is_read(lot, is_by_meter) and lot.planned == lots[-1].planned for lot in lots
    )
    return History(
        what=what,
        lots=tuple(
            replace(lot, past=replace(lot.past, colour=_lab(lot) if counts else None))
            for lot, counts in zip(lots, counted, strict=True)
        ),
        is_by_meter=is_by_meter,
    )


def _is_read(lot: LotThen, is_by_meter: bool) -> bool:  # ruff: ignore[boolean-type-hint-positional-argument]
    return lot.colour is not None and (lot.colour.is_by_meter or not is_by_meter)


def _lab(lot: LotThen) -> Lab | None:
    return None if lot.colour is None else lot.colour.lab


def _named(lots: Sequence[LotThen]) -> Iterator[LotThen]:
    """Return lots with their jars and their bottles, of all dyes together."""
    jars = _mostly_told(lots, lambda dye: dye.jar)
    bottles = _mostly_told(lots, lambda dye: dye.bottle)
    return (
        replace(
            lot,
            past=replace(
                lot.past,
                jar=_together([x.jar for x in lot.dyes if x.name in jars]),
                bottle=_together([x.bottle for x in lot.dyes if x.name in bottles]),
            ),
        )
        for lot in lots
    )


def _mostly_told(
    lots: Sequence[LotThen], told: Callable[[DyeThen], str | None]
) -> set[str]:
    """Return the dyes of which something is known in half of their lots at least."""
    known: dict[str, list[bool]] = {}
    for lot in lots:
        for dye in lot.dyes:
            known.setdefault(dye.name, []).append(told(dye) is not None)
    return {name for name, each in known.items() if 2 * sum(each) >= len(each)}


def _by_bath(lines: Sequence[BathLine]) -> Mapping[int, Sequence[BathLine]]:
    found: dict[int, list[BathLine]] = {}
    for line in lines:
        found.setdefault(line.bath_id, []).append(line)
    return found


def _deepest_first(poured: Mapping[int, PouredBath]) -> Callable[[str], float]:
    """Return a key that puts the dye with most depth in all lots first."""
    sums: dict[str, float] = {}
    for bath in poured.values():
        for dye in bath.dyes:
            sums[dye] = sums.get(dye, 0.0) + (bath.depth_percent(dye) or 0.0)
    return lambda dye: -sums.get(dye, 0.0)


def _lot(
    row: Lot,
    lines: Sequence[BathLine],
    poured: PouredBath,
    colour: LotColour | None,
    order: Callable[[str], float],
) -> LotThen:
    bath = row.bath
    dyes = tuple(_dyes(bath, poured, order))
    facts = pot_facts(bath, lines, poured)
    return LotThen(
        past=PastLot(
            number=row.number,
            bottle_age_days=dyes[0].age_days if dyes else None,
            mill_lot=None if bath.mill_lot is None else bath.mill_lot.lot,
            water=None if bath.water is None else bath.water.name,
            pot=None if bath.pot is None else bath.pot.name,
            load_g_per_l=facts.load_g_per_l,
            ramp_c_per_min=facts.ramp_c_per_min,
            hold_min=facts.hold_min,
            acid_after_min=facts.acid_after_min,
            person=facts.person,
        ),
        dyed_on=bath.dyed_on,
        version=bath.version.number,
        planned=planned_doses(bath),
        dyes=dyes,
        colour=colour,
    )


def _dyes(
    bath: Bath, poured: PouredBath, order: Callable[[str], float]
) -> Iterator[DyeThen]:
    for name in sorted(poured.dyes, key=order):
        doses = [x for x in poured.of(name) if x.is_told and not x.is_missed]
        ages = [_age(dose, bath.dyed_on) for dose in doses]
        known = [age for age in ages if age is not None]
        ids = {dose.bottle_id for dose in doses}
        strengths = {dose.strength_percent for dose in doses}
        yield DyeThen(
            name=name,
            depth_percent=poured.depth_percent(name),
            bottle=_together([dose.bottle or "dry powder" for dose in doses]),
            bottle_id=ids.pop() if len(ids) == 1 else None,
            jar=_together([_jars(dose, poured) for dose in doses]),
            age_days=max(known) if known and len(known) == len(ages) else None,
            strength_percent=strengths.pop() if len(strengths) == 1 else None,
        )


def _age(dose: Poured, dyed_on: date) -> float | None:
    return None if dose.made_on is None else float((dyed_on - dose.made_on).days)


def _jars(dose: Poured, poured: PouredBath) -> str | None:
    """Return the jars behind a dose; None where one of them is not known."""
    if dose.bottle_id is None:
        return None
    shares = poured.ledgers.shares(dose.bottle_id, dose.until)
    jars = [None if pk is None else poured.ledgers.jars[pk].code for pk in shares]
    return _together(sorted(jars, key=str))


def _together(names: Sequence[str | None]) -> str | None:
    """Return names as one; None where there is none or one is not known."""
    known = [name for name in names if name is not None]
    if not known or len(known) < len(names):
        return None
    return TOGETHER.join(dict.fromkeys(known))
