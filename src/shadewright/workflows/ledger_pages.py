"""The ledger of a bottle or a jar, in words, newest first."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from shadewright.core.quantities import amount_text
from shadewright.core.solutions.ledger import (
    BottleAct,
    BottleState,
    running_states,
    standing,
)
from shadewright.records import reads
from shadewright.records.models import BottleLine, JarLine
from shadewright.records.models.ledgers import JarAct
from shadewright.records.shapes import jar_left_g, ledger_line
from shadewright.workflows.jars import ShelfJar, shaped_jar
from shadewright.workflows.shelf import ShelfBottle, shaped_bottle
from shadewright.workflows.undo import may_undo


@dataclass(frozen=True, kw_only=True)
class LedgerEntry:
    """A line of a ledger in words; ``left`` in ml or g, None where it is undone."""

    at: datetime
    by: str
    words: str
    note: str
    change: float | None
    left: float | None
    strength_percent: float | None
    deed: UUID
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class BottlePage:
    """A bottle with everything that is remembered of it."""

    bottle: ShelfBottle
    dye_class: str
    hazard_words: str
    jar_code: str
    jar_id: int | None
    jar_lot: str
    powder_g: float | None
    wanted_percent: float | None
    first_percent: float
    made_by: str
    water: str
    notes: str
    method: str
    entries: tuple[LedgerEntry, ...]


@dataclass(frozen=True, kw_only=True)
class JarPage:
    """A jar with its ledger and the bottles made from it."""

    jar: ShelfJar
    entries: tuple[LedgerEntry, ...]
    bottle_codes: tuple[str, ...]


def bottle_page(code: str) -> BottlePage:
    """Return a bottle with its whole ledger."""
    row = reads.bottle_row(code)
    lines = list(reads.ledger_rows(row))
    states = _states(lines)
    return BottlePage(
        bottle=shaped_bottle(row),
        dye_class=row.dye.get_dye_class_display(),
        hazard_words=row.dye.hazard_words,
        jar_code="" if row.jar is None else row.jar.code,
        jar_id=row.jar_id,
        jar_lot="" if row.jar is None else row.jar.lot,
        powder_g=row.powder_g,
        wanted_percent=row.wanted_percent,
        first_percent=row.strength_percent,
        made_by="" if row.made_by is None else row.made_by.name,
        water=row.water,
        notes=row.notes,
        method=row.method,
        entries=tuple(_bottle_entry(line, states) for line in reversed(lines)),
    )


def jar_page(jar_id: int) -> JarPage:
    """Return a jar with its whole ledger."""
    row = reads.jar_row(jar_id)
    lines = list(reads.jar_ledger_rows(row))
    return JarPage(
        jar=shaped_jar(row),
        entries=tuple(reversed(list(_jar_entries(lines)))),
        bottle_codes=tuple(row.bottles.values_list("code", flat=True)),
    )


def _states(lines: Sequence[BottleLine]) -> dict[int, tuple[BottleState, BottleState]]:
    kept = standing(ledger_line(line) for line in lines)
    states = running_states(kept)
    pairs = zip(states, states[1:], strict=False)
    return dict(zip((line.number for line in kept), pairs, strict=True))


def _bottle_entry(
    line: BottleLine, states: dict[int, tuple[BottleState, BottleState]]
) -> LedgerEntry:
    before, after = states.get(line.pk, (None, None))
    change = (
        None if after is None or before is None else after.volume_ml - before.volume_ml
    )
    return LedgerEntry(
        at=line.at,
        by="" if line.by is None else line.by.name,
        words=_words(line),
        note=line.note,
        change=change or None,
        left=None if after is None else after.volume_ml,
        strength_percent=None if after is None else after.strength_percent,
        deed=line.deed,
        is_undone=hasattr(line, "undone_by"),
        may_undo=may_undo(line),
    )


def _words(line: BottleLine) -> str:
    other = "" if line.other is None else line.other.code
    volume = amount_text(line.volume_ml, "ml")
    strength = amount_text(line.strength_percent, "%")
    match BottleAct(line.act):
        case BottleAct.FILLED:
            return _filled_words(line, volume, other)
        case BottleAct.GIVEN:
            return f"Poured into bottle {other}"
        case BottleAct.STOCK_ADDED:
            return f"Stock added from bottle {other}, {strength}"
        case BottleAct.EVAPORATED:
            return f"Level read at {volume}: evaporated"
        case BottleAct.COUNTED:
            return f"Level read at {volume}"
        case BottleAct.TESTED:
            return f"Strength tested: {strength}"
        case BottleAct.POWDER_ADDED:
            jar = "" if line.jar is None else f" from jar {line.jar.code}"
            return f"Powder added: {amount_text(line.powder_g, 'g')}{jar}"
        case BottleAct.UNDO:
            return "Undone: " + ("" if line.undoes is None else _words(line.undoes))
        case act:
            return act.value.capitalize()


def _filled_words(line: BottleLine, volume: str, other: str) -> str:
    if other:
        return f"Filled to {volume} from bottle {other}"
    if not line.powder_g:
        return f"Entered with {volume}"
    jar = "" if line.jar is None else f" from jar {line.jar.code}"
    return f"Made: {amount_text(line.powder_g, 'g')}{jar}, to {volume}"


def _jar_entries(lines: Sequence[JarLine]) -> Iterator[LedgerEntry]:
    before_g = 0.0
    for position, line in enumerate(lines, start=1):
        left_g = jar_left_g(lines[:position])
        yield LedgerEntry(
            at=line.at,
            by="" if line.by is None else line.by.name,
            words=JarAct(line.act).label,
            note=line.note,
            change=left_g - before_g or None,
            left=left_g,
            strength_percent=None,
            deed=line.deed,
            is_undone=hasattr(line, "undone_by"),
            may_undo=may_undo(line),
        )
        before_g = left_g
