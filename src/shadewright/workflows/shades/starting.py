"""Begin a palette: one yarn, and a swatch of each dye with its colour, in one deed."""

from dataclasses import dataclass

from django.db import transaction

from shadewright.errors import MissingError
from shadewright.records.models import Base, Swatch
from shadewright.workflows.shades.entering_swatches import (
    SwatchWords,
    base_said,
    kept_on,
)
from shadewright.workflows.shades.readings import ReadWords, keep_reading
from shadewright.workflows.shades.swatches import Doses
from shadewright.workflows.stamps import Stamp


@dataclass(frozen=True, kw_only=True)
class StartRow:
    """One swatch of the first page: doses (none for bare yarn), and its colour."""

    doses: Doses
    read: ReadWords


@dataclass(frozen=True, kw_only=True)
class StartWords:
    """All that a palette begins from: one yarn and its swatches."""

    base: str
    fibres: str = ""
    rows: tuple[StartRow, ...] = ()


@dataclass(frozen=True, kw_only=True)
class KeptStart:
    """The swatches that were kept, and on which base."""

    base_id: int
    swatches: tuple[int, ...]


@transaction.atomic
def keep_start(*, words: StartWords, stamp: Stamp) -> KeptStart:
    """Keep swatches of one yarn and their colours, all in one deed."""
    kept = list(Swatch.objects.filter(deed=stamp.deed).order_by("id"))
    if kept:
        numbers = tuple(each.pk for each in kept)
        return KeptStart(base_id=kept[0].base_id, swatches=numbers)
    if not any(row.doses for row in words.rows):
        raise MissingError(
            name="A dye with its colour",
            advice="Fill in one row: the dye, its depth and the colour that came out.",
        )
    base = base_said(words.base, words.fibres, stamp)
    numbers = tuple(_kept_start(row, base, stamp) for row in words.rows)
    return KeptStart(base_id=base.pk, swatches=numbers)


def _kept_start(row: StartRow, base: Base, stamp: Stamp) -> int:
    words = SwatchWords(base=base.name, doses=row.doses)
    number = kept_on(base, words, stamp)
    keep_reading(swatch_id=number, words=row.read, stamp=stamp)
    return number
