"""Read a swatch as it is entered, or a bath whose yarn has dried: one deed each."""

from django.db import transaction

from shadewright.workflows.shades.entering_swatches import (
    SwatchWords,
    keep_swatch,
    swatch_of_bath,
)
from shadewright.workflows.shades.readings import ReadWords, keep_reading
from shadewright.workflows.stamps import Stamp


@transaction.atomic
def keep_read_swatch(
    *, words: SwatchWords, read: ReadWords | None, stamp: Stamp
) -> int:
    """Keep a swatch and, if it was read, its colour; return its number."""
    swatch_id = keep_swatch(words=words, stamp=stamp)
    if read is not None:
        keep_reading(swatch_id=swatch_id, words=read, stamp=stamp)
    return swatch_id


@transaction.atomic
def read_bath(number: str, *, words: ReadWords, stamp: Stamp) -> int:
    """Keep the colour of what came out of a bath; return the number of its swatch."""
    swatch_id = swatch_of_bath(number, stamp=stamp)
    keep_reading(swatch_id=swatch_id, words=words, stamp=stamp)
    return swatch_id
