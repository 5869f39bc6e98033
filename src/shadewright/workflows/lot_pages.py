"""Lots as pages show them: one with its ledger and its bath, and all as a list."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from shadewright.core.baths.rounds import StepKind
from shadewright.core.costing import Cost
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.records import lot_reads, reads, recipe_reads, selling_reads
from shadewright.records.models import Lot, LotLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import Grade, LotAct
from shadewright.workflows.bath_pages import shaped_bath
from shadewright.workflows.bath_shapes import BathNow
from shadewright.workflows.costs import bath_cost
from shadewright.workflows.deviations import deviations
from shadewright.workflows.lot_lines import Held, NotedColour, held, noted_colour
from shadewright.workflows.poured import poured_bath
from shadewright.workflows.undo import may_undo

LOTS_A_PAGE = 100


_WORDS = {
    LotAct.PLACED: "Put away: {words}",
    LotAct.WEIGHED: f"Weighed dry: {{value}}{NO_BREAK}g",
    LotAct.COUNTED: "Skeins counted: {value}",
    LotAct.TIMED: f"Hands: {{value}}{NO_BREAK}min",
    LotAct.PHOTO: "Photo kept",
    LotAct.SNIPPED: "A snip is drying",
    LotAct.DECIDED: "Decided: {words}",
    LotAct.NOTE: "{words}",
}


@dataclass(frozen=True, kw_only=True)
class LotRow:
    """A lot as a list shows it."""

    number: str
    recipe_name: str
    sold_as: str
    version_number: int
    base_name: str
    dyed_on: date
    held: Held


@dataclass(frozen=True, kw_only=True)
class LotsFound:
    """A page of lots, how many there are in all, and which page it is."""

    rows: tuple[LotRow, ...]
    count: int
    page: int
    pages: int


@dataclass(frozen=True, kw_only=True)
class LotEntry:
    """A line of a lot's ledger in words."""

    at: datetime
    by: str
    words: str
    note: str
    deed: UUID
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class LotNow:
    """A lot with everything that is remembered of it.

    ``went`` says in words where the bath went differently from its plan. It is sold as
    a colourway; its yarn was ``was_lot`` before where it was corrected or overdyed, and
    goes or went back into the baths ``into``.
    """

    number: str
    held: Held
    is_void: bool
    bath: BathNow
    recipe_id: int
    base_id: int
    went: tuple[str, ...]
    cost: Cost
    entries: tuple[LotEntry, ...]
    sold_as: str
    was_lot: str
    into: tuple[str, ...]


def lot_now(number: str) -> LotNow:
    """Return one lot."""
    row = lot_reads.lot_row(number)
    bath_row = recipe_reads.bath_row(number)
    bath = shaped_bath(bath_row)
    lines = tuple(row.lines.all())
    said = held(lines)
    return LotNow(
        number=number,
        held=said,
        is_void=not lines,
        bath=bath,
        recipe_id=bath_row.version.recipe_id,
        base_id=bath_row.base_id,
        went=tuple(_went(bath)),
        cost=bath_cost(bath_row, poured_bath(bath_row), minutes=said.minutes),
        entries=tuple(_entry(line) for line in lot_reads.lot_ledger_rows(row)),
        sold_as=selling_reads.sold_as(bath_row).name,
        was_lot=selling_reads.lot_corrected_by(bath_row) or "",
        into=tuple(x.number for x in selling_reads.baths_correcting([number])),
    )


def lots(*, query: str = "", order: str = "-day", page: int = 1) -> LotsFound:
    """Return a page of lots: searched for words, in an order, the newest first."""
    found = lot_reads.listed_lot_rows(query.split(), order)
    count = found.count()
    pages = max(1, -(-count // LOTS_A_PAGE))
    page = min(max(page, 1), pages)
    rows = found[(page - 1) * LOTS_A_PAGE : page * LOTS_A_PAGE]
    return LotsFound(
        rows=tuple(_row(row) for row in rows), count=count, page=page, pages=pages
    )


def lots_like(number: str) -> tuple[str, ...]:
    """Return the newest other lots of the same recipe, to lay beside a lot."""
    row = lot_reads.lot_row(number)
    return tuple(lot_reads.numbers_of_recipe(row.bath.version.recipe_id, besides=row))


def places() -> tuple[str, ...]:
    """Return where lots were put, the newest place first."""
    return tuple(lot_reads.places())


def is_rate_set() -> bool:
    """Whether the studio says what an hour is worth, so that minutes are asked for."""
    studio = reads.studio_row()
    return studio is not None and studio.rate_per_hour is not None


def _row(row: Lot) -> LotRow:
    return LotRow(
        number=row.number,
        recipe_name=row.bath.version.recipe.name,
        sold_as=selling_reads.sold_as(row.bath).name,
        version_number=row.bath.version.number,
        base_name=row.bath.base.name,
        dyed_on=row.bath.dyed_on,
        held=held(row.lines.all()),
    )


def _went(bath: BathNow) -> Iterator[str]:
    for one in deviations(bath):
        yield one.words
    for each in bath.steps:
        if each.step.kind is StepKind.DOSE and not each.is_done:
            yield f"{each.step.title}: not written down whether it went in."
        if each.is_double:
            yield f"{each.step.title}: ticked {len(each.ticks)} times."
    for line in reversed(bath.standing):
        if line.act == BathAct.PROBLEM:
            yield f"Problem: {line.note or 'not said which'}."


def _entry(line: LotLine) -> LotEntry:
    return LotEntry(
        at=line.at,
        by="" if line.by is None else line.by.name,
        words=_words(line),
        note=line.note,
        deed=line.deed,
        is_undone=hasattr(line, "undone_by"),
        may_undo=may_undo(line),
    )


def _words(line: LotLine) -> str:
    act = LotAct(line.act)
    if act is LotAct.UNDO:
        return "Undone: " + ("" if line.undoes is None else _words(line.undoes))
    if act is LotAct.GRADED:
        return f"Graded: {Grade(line.words).label}"
    if act is LotAct.COLOURED:
        return _colour_words(noted_colour(line))
    return _WORDS[act].format(words=line.words, value=f"{line.value or 0:g}")


def _colour_words(colour: NotedColour | None) -> str:
    return "" if colour is None else f"Colour: {colour.words}, {colour.evidence}"
