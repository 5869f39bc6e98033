"""The ledger of a bottle or a jar, in words, newest first."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from itertools import pairwise
from uuid import UUID

from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import spread_text
from shadewright.core.solutions.ledger import (
    BottleAct,
    BottleState,
    running_states,
    standing,
)
from shadewright.core.uncertainty import Value, half_width
from shadewright.records import reads
from shadewright.records.models import BottleLine, Dye, JarLine
from shadewright.records.models.catalogue import DyeClass
from shadewright.records.models.ledgers import JarAct
from shadewright.records.shapes import jar_left_g, ledger_line
from shadewright.workflows.catalogue import EarlierVersion, earlier_versions
from shadewright.workflows.jars import ShelfJar, shaped_jar
from shadewright.workflows.shelf import ShelfBottle, shaped_bottle
from shadewright.workflows.undo import may_undo


@dataclass(frozen=True, kw_only=True)
class LedgerEntry:
    """A line of a ledger in words; ``left`` in ml or g, None where it is undone.

    ``tool`` is what was measured with, ``spread`` the ± of the strength from there on.
    """

    at: datetime
    by: str
    words: str
    note: str
    change: float | None
    left: float | None
    strength_percent: float | None
    spread: str
    tool: str
    deed: UUID
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class BottlePage:
    """A bottle with everything that is remembered of it.

    ``dried_ml`` is the water that has gone and was not given back;
    ``earlier`` is what stood beside its strength before it was written anew.
    """

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
    spread_method: str
    scale: str
    ware: str
    is_by_weight: bool
    dried_ml: float
    earlier: tuple[EarlierVersion, ...]
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
        dye_class=_class_words(row.dye),
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
        spread_method=row.spread_method,
        scale="" if row.scale is None else row.scale.name,
        ware="" if row.ware is None else row.ware.name,
        is_by_weight=row.is_by_weight,
        dried_ml=_dried_ml(lines, states),
        earlier=earlier_versions(row),
        entries=tuple(_bottle_entry(line, states) for line in reversed(lines)),
    )


def _class_words(dye: Dye) -> str:
    if dye.dye_class == DyeClass.UNKNOWN:
        return "Class of the dye not known"
    return f"{dye.get_dye_class_display()} dye"


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
    numbers = (line.number for line in kept)
    return dict(zip(numbers, pairwise(states), strict=True))


def _dried_ml(
    lines: Sequence[BottleLine], states: dict[int, tuple[BottleState, BottleState]]
) -> float:
    dried_ml = 0.0
    for line in lines:
        if line.pk in states and line.act in _WATER_MOVES:
            before, after = states[line.pk]
            dried_ml = max(dried_ml + before.volume_ml - after.volume_ml, 0.0)
    return dried_ml


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
        spread="" if after is None else _spread(after.strength),
        tool="" if line.tool is None else line.tool.name,
        deed=line.deed,
        is_undone=hasattr(line, "undone_by"),
        may_undo=may_undo(line),
    )


@lru_cache(maxsize=256)
def _spread(strength: Value) -> str:
    """Return the ± of a strength; most lines leave it as it was."""
    return spread_text(half_width(strength)) if strength.terms else ""


_WATER_MOVES = {BottleAct.EVAPORATED, BottleAct.WATER_ADDED}
_WORDS = {
    BottleAct.GIVEN: "Poured into bottle {other}",
    BottleAct.STOCK_ADDED: "Stock added from bottle {other}, {strength}",
    BottleAct.EVAPORATED: "Level read at {volume}: evaporated",
    BottleAct.COUNTED: "Level read at {volume}",
    BottleAct.TESTED: "Strength tested: {strength}",
    BottleAct.WEIGHED: "Weighed: {gross}",
    BottleAct.POWDER_ADDED: "Powder added: {powder}{from_jar}",
}


def _words(line: BottleLine) -> str:
    act = BottleAct(line.act)
    if act is BottleAct.UNDO:
        return "Undone: " + ("" if line.undoes is None else _words(line.undoes))
    if act is BottleAct.FILLED:
        return _filled_words(line)
    if act is BottleAct.EVAPORATED and line.gross_g is not None:
        return f"Weighed: {amount_text(line.gross_g, 'g')}, water has gone"
    return _WORDS.get(act, act.value.capitalize()).format(
        other="" if line.other is None else line.other.code,
        strength=amount_text(line.strength_percent, "%"),
        volume=amount_text(line.volume_ml, "ml"),
        powder=amount_text(line.powder_g, "g"),
        gross=amount_text(line.gross_g or 0.0, "g"),
        from_jar=_from_jar(line),
    )


def _from_jar(line: BottleLine) -> str:
    return "" if line.jar is None else f" from jar {line.jar.code}"


def _filled_words(line: BottleLine) -> str:
    volume = amount_text(line.volume_ml, "ml")
    if line.other is not None:
        return f"Filled to {volume} from bottle {line.other.code}"
    if not line.powder_g:
        return f"Entered with {volume}"
    return f"Made: {amount_text(line.powder_g, 'g')}{_from_jar(line)}, to {volume}"


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
            spread="",
            tool="",
            deed=line.deed,
            is_undone=hasattr(line, "undone_by"),
            may_undo=may_undo(line),
        )
        before_g = left_g
