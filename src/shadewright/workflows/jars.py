"""Powder jars: received, weighed anew, handed in."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction

from shadewright.core.quantities import (
    amount_text,
    require_between,
    require_mass,
    require_powder_strength,
)
from shadewright.errors import ConflictError, OutOfRangeError
from shadewright.records import reads
from shadewright.records.models import JarLine, PowderJar
from shadewright.records.models.ledgers import JarAct
from shadewright.records.shapes import jar_left_g, standing_lines
from shadewright.records.writes import keep_line
from shadewright.workflows.stamps import Stamp, is_written, past_date

LOW_SHARE = 0.2
"""A jar with less than this share of its powder is low."""

MOST_OVERFULL = 1.2  # common practice: a supplier fills in a little more than is said


@dataclass(frozen=True, kw_only=True)
class ShelfJar:
    """A jar of powder as it stands on the shelf now."""

    id: int
    code: str
    dye_id: int
    dye_name: str
    lot: str
    opened_on: date | None
    price: Decimal | None
    strength_percent: float
    left_g: float
    filled_g: float
    notes: str
    chart_hex: str
    is_metal_complex: bool
    is_void: bool
    is_handed_in: bool

    @property
    def is_there(self) -> bool:
        """Whether it stands on the shelf."""
        return not (self.is_void or self.is_handed_in)

    @property
    def is_low(self) -> bool:
        """Whether less than a fifth is left."""
        return self.left_g < LOW_SHARE * self.filled_g


def jars(*, dye_id: int | None = None) -> tuple[ShelfJar, ...]:
    """Return the jars in use, of one dye or of all."""
    return tuple(found for found in _every_jar(dye_id) if found.is_there)


def jars_gone() -> tuple[ShelfJar, ...]:
    """Return the jars that were handed in or taken back."""
    return tuple(found for found in _every_jar(None) if not found.is_there)


def jar(jar_id: int) -> ShelfJar:
    """Return one jar."""
    return shaped_jar(reads.jar_row(jar_id))


@transaction.atomic
def receive_jar(
    *,
    dye_id: int,
    powder_g: float,
    stamp: Stamp,
    lot: str = "",
    opened_on: date | None = None,
    price: Decimal | None = None,
    strength_percent: float = 100.0,
    notes: str = "",
) -> ShelfJar:
    """Put a jar on the shelf with the powder that is in it."""
    reads.lock_shelf()
    written = reads.jar_lines_of(stamp.deed).first()
    if written is not None:
        return jar(written.jar_id)
    require_mass(powder_g, name="Powder in the jar", argument="powder_g")
    require_powder_strength(strength_percent, argument="strength_percent")
    row = PowderJar.objects.create(
        code=_next_code(),
        dye=reads.dye_row(dye_id),
        lot=lot.strip(),
        opened_on=past_date(opened_on, name="The day opened", argument="opened_on"),
        price=price,
        strength_percent=strength_percent,
        notes=notes.strip(),
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    keep_line(JarLine(jar=row, act=JarAct.FILLED, amount_g=powder_g), stamp)
    return jar(row.pk)


@transaction.atomic
def count_jar(
    *, jar_id: int, reading_g: float, stamp: Stamp, note: str = ""
) -> ShelfJar:
    """Write down what is really left in a jar."""
    row = reads.locked_jar(jar_id)
    if is_written(stamp.deed):
        return jar(jar_id)
    found = shaped_jar(row)
    require_between(
        reading_g,
        least=0.0,
        most=MOST_OVERFULL * found.filled_g,
        unit="g",
        name="Powder left",
        argument="reading_g",
        advice="The jar came with less: was its own weight taken off?",
    )
    _require_there(found)
    line = JarLine(jar=row, act=JarAct.COUNTED, amount_g=reading_g, note=note.strip())
    keep_line(line, stamp)
    return jar(jar_id)


@transaction.atomic
def hand_in_jar(*, jar_id: int, stamp: Stamp, note: str = "") -> ShelfJar:
    """Write down that a jar and what was in it has left the studio."""
    row = reads.locked_jar(jar_id)
    if not is_written(stamp.deed):
        _require_there(shaped_jar(row))
        keep_line(JarLine(jar=row, act=JarAct.POURED, note=note.strip()), stamp)
    return jar(jar_id)


def take_powder(*, row: PowderJar, dye_id: int, powder_g: float, stamp: Stamp) -> None:
    """Take powder out of a jar; inside the transaction of the verb that uses it."""
    if row.dye_id != dye_id:
        raise ConflictError(
            why=f"Jar {row.code} holds {row.dye.name}, another dye.",
            advice="Choose a jar of the dye that is wanted.",
            argument="jar",
        )
    left_g = jar_left_g(reads.jar_ledger_rows(row))
    if powder_g > left_g + 1e-9:
        raise OutOfRangeError(
            name="Powder",
            given=amount_text(powder_g, "g"),
            allowed=f"at most the {amount_text(left_g, 'g')} that jar {row.code} holds",
            advice="Take less, use another jar, or weigh the jar anew.",
            argument="powder_g",
        )
    line = JarLine(jar=row, act=JarAct.WEIGHED_OUT, amount_g=powder_g)
    keep_line(line, stamp)


def shaped_jar(row: PowderJar) -> ShelfJar:
    """Return a row as it stands on the shelf."""
    lines = tuple(row.lines.all())
    standing = standing_lines(lines)
    first = next((line.amount_g for line in lines if line.act == JarAct.FILLED), 0.0)
    return ShelfJar(
        id=row.pk,
        code=row.code,
        dye_id=row.dye_id,
        dye_name=row.dye.name,
        lot=row.lot,
        opened_on=row.opened_on,
        price=row.price,
        strength_percent=row.strength_percent,
        left_g=jar_left_g(lines),
        filled_g=first,
        notes=row.notes,
        chart_hex=row.dye.chart_hex,
        is_metal_complex=row.dye.is_metal_complex,
        is_void=all(line.act != JarAct.FILLED for line in standing),
        is_handed_in=bool(standing) and standing[-1].act == JarAct.POURED,
    )


def _every_jar(dye_id: int | None) -> Iterable[ShelfJar]:
    rows = reads.jar_rows()
    if dye_id is not None:
        rows = rows.filter(dye_id=dye_id)
    return (shaped_jar(row) for row in rows)


def _require_there(found: ShelfJar) -> None:
    if found.is_void:
        why = f"Jar {found.code} was taken back the day it was received."
    elif found.is_handed_in:
        why = f"Jar {found.code} has been handed in."
    else:
        return
    raise ConflictError(why=why)


def _next_code() -> str:
    newest = PowderJar.objects.order_by("-id").first()
    return f"J-{1 if newest is None else int(newest.code[2:]) + 1}"
