"""Read a swatch as it is entered, or a bath whose yarn has dried: one deed each."""

from django.db import transaction

from shadewright.errors import ConflictError
from shadewright.workflows.shades.entering_swatches import (
    SwatchWords,
    keep_swatch,
    swatch_of_bath,
)
from shadewright.workflows.shades.readings import ReadWords, keep_reading
from shadewright.workflows.shades.swatch_files import Key, same_swatch_key
from shadewright.workflows.shades.swatches import SwatchNow, swatches_now
from shadewright.workflows.stamps import Stamp


@transaction.atomic
def keep_read_swatch(
    *, words: SwatchWords, read: ReadWords | None, stamp: Stamp
) -> int:
    """Keep a swatch and, if it was read, its colour; return its number.

    The very same under the same label is refused: entered twice it would count double.
    """
    swatch_id = keep_swatch(words=words, stamp=stamp)
    if read is not None:
        keep_reading(swatch_id=swatch_id, words=read, stamp=stamp)
        _require_new(swatch_id)
    return swatch_id


@transaction.atomic
def read_bath(number: str, *, words: ReadWords, stamp: Stamp) -> int:
    """Keep the colour of what came out of a bath; return the number of its swatch."""
    swatch_id = swatch_of_bath(number, stamp=stamp)
    keep_reading(swatch_id=swatch_id, words=words, stamp=stamp)
    return swatch_id


def _require_new(swatch_id: int) -> None:
    every = [each for each in swatches_now() if each.reading is not None]
    own = next((each for each in every if each.id == swatch_id), None)
    if own is not None and any(_same(own) == _same(x) for x in every if x is not own):
        raise ConflictError(
            why=f"{own.label} is kept already with this very colour.",
            advice="If it is another swatch, give it a label of its own.",
            argument="texts",
        )


def _same(swatch: SwatchNow) -> tuple[str, Key] | None:
    if swatch.reading is None:
        return None
    key = same_swatch_key(swatch.base_name, swatch.doses, swatch.reading.lab)
    return swatch.label, key
