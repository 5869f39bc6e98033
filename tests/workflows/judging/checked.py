"""Lots that were read dry, with a standard or without."""

from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.judging.dry_checks import CheckNow, keep_check
from shadewright.workflows.judging.standards import Piece, lot_as_standard
from shadewright.workflows.shades.readings import ReadWords
from shadewright.workflows.stamps import Stamp, stamp_now
from tests.workflows.bench import founded
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready

STANDARD = "50, 0, 0\n50.2, 0, 0"


def lot_of(pot: Ready, number: str = "", *, skeins: int = 4) -> str:
    """Return a lot that was dyed as planned."""
    return finished(dyed(pot, number or pot.number), skeins=skeins, grams=98.0)


def check(
    number: str,
    text: str,
    *,
    read_by: ReadBy = ReadBy.METER,
    is_wet: bool = False,
    stamp: Stamp | None = None,
) -> CheckNow | None:
    """Read a lot, a line a spot and two spots a skein."""
    lines = tuple(text.splitlines())
    return keep_check(
        number,
        read=ReadWords(read_by=read_by, texts=lines, is_wet=is_wet),
        skeins=[1 + place // 2 for place in range(len(lines))],
        stamp=stamp or stamp_now(by=None),
    )


def held_to_standard() -> tuple[Ready, str, str]:
    """Return a studio, a lot that is its standard, and another lot."""
    founded()
    pot = ready(bottle_ml=1000.0)
    first = lot_of(pot)
    check(first, STANDARD)
    lot_as_standard(first, piece=Piece(where="Tin 3"), stamp=stamp_now(by=None))
    return pot, first, lot_of(pot, pot.another())
