"""At the pot: each tap is a line in the bath's ledger, and a dose one in the bottle's.

What was poured was poured: a tap from a phone is never refused because the
records thought otherwise; it is written, and its note says what does not fit.
Where a bottle gave more than its ledger held, the ledger was wrong, and a line
says so. The same tap sent twice is written once; two different taps on one step
both stand, and the page shows that the step was ticked twice.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import isfinite
from uuid import UUID

from django.db import transaction

from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.core.solutions.ledger import BottleAct
from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
    StudioError,
)
from shadewright.records import reads, recipe_reads
from shadewright.records.models import Bath, BathLine, BottleLine, StockBottle
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import state_of
from shadewright.records.writes import keep_line
from shadewright.workflows.bath_pages import BathNow, bath_now
from shadewright.workflows.bench_tools import tool_of
from shadewright.workflows.dosing import stock_ml
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.undo import undo

_MOST = 1_000_000.0
_STOCK_UNITS = {"ml", "g"}
_OVER = {BathAct.FINISHED: "finished", BathAct.GIVEN_UP: "given up"}


@dataclass(frozen=True, kw_only=True)
class Tap:
    """What was tapped at the pot; the step's key is that of the round.

    ``is_emptied`` says that the bottle ran out with this dose.
    """

    bath: str
    act: BathAct
    step: str = ""
    value: float | None = None
    unit: str = ""
    bottle: str = ""
    note: str = ""
    device: str = ""
    is_emptied: bool = False


def tap(what: Tap, *, stamp: Stamp) -> BathNow:
    """Write a tap down, once, and return the bath; refuse what can be typed anew."""
    check_tap(what)
    keep_tap(what, stamp=stamp)
    return bath_now(what.bath)


def check_tap(what: Tap) -> None:
    """Refuse an amount that cannot be, while the person can still correct it."""
    value = what.value
    if what.act == BathAct.DOSED and value is None:
        raise MissingError(
            name="The amount", advice="Write what went in.", argument="value"
        )
    if value is not None and not _is_plausible(value):
        raise OutOfRangeError(
            name="The amount",
            given=f"{value:g}",
            allowed="a number that a pot can hold",
            argument="value",
        )
    if what.act == BathAct.DOSED and not (value or 0) > 0:
        raise OutOfRangeError(
            name="The amount",
            given=f"{value:g} {what.unit}",
            allowed="above 0",
            advice="Where nothing went in, mark the dose as left out.",
            argument="value",
        )


@transaction.atomic
def keep_tap(what: Tap, *, stamp: Stamp) -> None:
    """Write a tap down, once, whatever the records think of it."""
    bath = recipe_reads.locked_bath(what.bath)
    if recipe_reads.bath_lines_of(stamp.deed).exists():
        return
    doubts = [*_doubts_of_bath(bath), *_doubts_of_value(what)]
    known = what if _is_usable(what) else replace(what, value=None)
    drawn, doubt = _drawn(bath, known, stamp)
    note = "; ".join(part for part in (what.note.strip(), *doubts, doubt) if part)
    line = BathLine(
        bath=bath,
        act=known.act,
        step=known.step[:40],
        value=known.value,
        unit=known.unit[:8],
        bottle=_bottle(known.bottle) if drawn is None else drawn.bottle,
        drawn=drawn,
        note=note[:300],
        tool_id=tool_of(bath, step=known.step, unit=known.unit, bottle=known.bottle),
        device=known.device.strip()[:40],
    )
    keep_line(line, stamp)


def _is_plausible(value: float) -> bool:
    return isfinite(value) and abs(value) < _MOST


def _is_usable(what: Tap) -> bool:
    if what.value is None:
        return True
    return _is_plausible(what.value) and (what.act != BathAct.DOSED or what.value > 0)


def _doubts_of_bath(bath: Bath) -> Iterator[str]:
    acts = set(bath.lines.filter(undone_by=None).values_list("act", flat=True))
    for act, words in _OVER.items():
        if act in acts:
            yield f"came after the bath was {words}"


def _doubts_of_value(what: Tap) -> Iterator[str]:
    if not _is_usable(what):
        yield f"the amount that came was {what.value:g} {what.unit}, which cannot be"
    elif what.act == BathAct.DOSED and what.value is None:
        yield "how much went in was not said"


def _bottle(code: str) -> StockBottle | None:
    return StockBottle.objects.filter(code=code).first() if code else None


def _drawn(bath: Bath, what: Tap, stamp: Stamp) -> tuple[BottleLine | None, str]:
    """Draw a dose from its bottle; else say why nothing was drawn."""
    if what.act != BathAct.DOSED or not what.bottle or what.unit not in _STOCK_UNITS:
        return None, ""
    if what.value is None:
        return None, ""
    try:
        with transaction.atomic():
            return _draw(bath, what, what.value, stamp), ""
    except NotFoundError:
        return None, f"no bottle {what.bottle[:8]} is known"
    except StudioError:
        return None, f"by its ledger bottle {what.bottle} is gone: nothing drawn there"


def _draw(bath: Bath, what: Tap, amount: float, stamp: Stamp) -> BottleLine:
    bottle = reads.locked_bottle(what.bottle)
    volume_ml = stock_ml(amount, what.unit, state_of(bottle).strength_percent)
    _mend_level(bottle, volume_ml, stamp, is_emptied=what.is_emptied)
    line = BottleLine(
        bottle=bottle,
        act=BottleAct.DRAWN.value,
        volume_ml=volume_ml,
        note=f"bath {bath.number}",
    )
    keep_line(line, stamp)
    return line


def _mend_level(
    bottle: StockBottle, volume_ml: float, stamp: Stamp, *, is_emptied: bool
) -> None:
    """Set the ledger right where the bottle gave more, or ran out with less."""
    left_ml = state_of(bottle).volume_ml
    if volume_ml > left_ml:
        note = f"gave {_ml(volume_ml - left_ml)} more than the ledger held"
    elif is_emptied and volume_ml < left_ml:
        note = f"ran out {_ml(left_ml - volume_ml)} sooner than the ledger held"
    else:
        return
    counted = BottleLine(
        bottle=bottle, act=BottleAct.COUNTED.value, volume_ml=volume_ml, note=note
    )
    keep_line(counted, stamp)


def _ml(volume_ml: float) -> str:
    return amount_text(volume_ml, "ml").replace(NO_BREAK, " ")


def take_back(*, deed: UUID, stamp: Stamp) -> None:
    """Undo a deed; one that somebody took back already stays so."""
    try:
        undo(deed=deed, stamp=stamp)
    except ConflictError:
        lines = recipe_reads.bath_lines_of(deed)
        if not lines.exists() or lines.filter(undone_by=None).exists():
            raise
