"""What is written of a day itself: all off, the meters, a note."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from django.db import transaction

from shadewright.core.quantities import amount_text, require_between
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.records import day_reads
from shadewright.records.models import DayLine, DyeDay
from shadewright.records.models.days import DayAct
from shadewright.records.writes import keep_line
from shadewright.workflows.stamps import Stamp, is_written, past_date
from shadewright.workflows.undo import may_undo

__all__ = ["DayAct", "DayEntry", "DayLedger", "day_ledger", "say_all_off", "write_day"]

UNITS = {DayAct.WATER: "m³", DayAct.POWER: "kWh"}
"""What the meters of water and power show."""
MOST_READ = 10_000_000.0
_METERS = {DayAct.WATER: "water meter", DayAct.POWER: "power meter"}


@dataclass(frozen=True, kw_only=True)
class DayEntry:
    """A line of a day's ledger."""

    deed: UUID
    act: DayAct
    at: datetime
    by: str
    value: float | None
    unit: str
    note: str
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class DayLedger:
    """A day's lines, newest first; the meters' use where they were read twice.

    ``all_off`` is the line that says so, unless a heat was put on after it.
    """

    day: date
    entries: tuple[DayEntry, ...]
    all_off: DayEntry | None
    water_m3: float | None
    power_kwh: float | None


def day_ledger(day: date) -> DayLedger:
    """Return what was written of a day."""
    entries = tuple(_entry(line) for line in day_reads.day_lines(day).order_by("-id"))
    standing = [each for each in entries if not each.is_undone]
    said = next((each for each in standing if each.act == DayAct.ALL_OFF), None)
    return DayLedger(
        day=day,
        entries=entries,
        all_off=None if said is None or _was_heated_since(day, said) else said,
        water_m3=_used(standing, DayAct.WATER),
        power_kwh=_used(standing, DayAct.POWER),
    )


@transaction.atomic
def write_day(
    day: date,
    act: DayAct,
    *,
    stamp: Stamp,
    value: float | None = None,
    note: str = "",
) -> None:
    """Write a line of a day, once; a meter may be read as often as one likes."""
    if is_written(stamp.deed):
        return
    past_date(day, name="The day", argument="day")
    _check(day, act, value, note)
    row, _is_new = DyeDay.objects.get_or_create(
        day=day, defaults={"created_at": stamp.written_at, "created_by_id": stamp.by}
    )
    line = DayLine(
        dye_day=row,
        act=act,
        value=value,
        unit=UNITS.get(act, ""),
        note=note.strip()[:300],
    )
    keep_line(line, stamp)


def say_all_off(day: date, *, hot: Sequence[str] = (), stamp: Stamp) -> None:
    """Write that everything is off; ``hot`` are baths that the ledgers still heat."""
    note = f"not ticked as off: {', '.join(hot)}" if hot else ""
    write_day(day, DayAct.ALL_OFF, stamp=stamp, note=note)


def _check(day: date, act: DayAct, value: float | None, note: str) -> None:
    if act == DayAct.NOTE and not note.strip():
        raise MissingError(name="The note", advice="Write it first.", argument="note")
    if act not in _METERS:
        return
    if value is None:
        raise MissingError(
            name=f"What the {_METERS[act]} shows",
            advice="Read it and write the number.",
            argument="value",
        )
    name = f"The {_METERS[act]}"
    require_between(
        value, least=0.0, most=MOST_READ, unit=UNITS[act], name=name, argument="value"
    )
    _refuse_backwards(day, act, value)


def _refuse_backwards(day: date, act: DayAct, value: float) -> None:
    before = day_reads.day_lines(day).filter(act=act, undone_by=None).last()
    if before is not None and before.value is not None and value < before.value:
        raise OutOfRangeError(
            name=f"The {_METERS[act]}",
            given=amount_text(value, UNITS[act]),
            allowed=f"at least {amount_text(before.value, UNITS[act])}, "
            "as it was read before on this day",
            advice="Read it again, or undo the reading before.",
            argument="value",
        )


def _used(standing: Sequence[DayEntry], act: DayAct) -> float | None:
    """Return the last reading less the first; None where there are not two."""
    read = [x.value for x in standing if x.act == act and x.value is not None]
    return read[0] - read[-1] if len(read) > 1 else None


def _was_heated_since(day: date, said: DayEntry) -> bool:
    heated_at = day_reads.heated_at(day)
    return heated_at is not None and heated_at > said.at


def _entry(line: DayLine) -> DayEntry:
    return DayEntry(
        deed=line.deed,
        act=DayAct(line.act),
        at=line.at,
        by="" if line.by is None else line.by.name,
        value=line.value,
        unit=line.unit,
        note=line.note,
        is_undone=hasattr(line, "undone_by") or line.undoes_id is not None,
        may_undo=may_undo(line),
    )
