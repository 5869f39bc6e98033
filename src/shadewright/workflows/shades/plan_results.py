"""What came out of a set: its colours typed in one go, its baths written as dyed.

A set that was dyed off its sheet has no tick at the bench. Whoever types the colour of
such a swatch says that it was dyed; where nothing else stands, that is as planned.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import starmap
from uuid import uuid5

from django.db import transaction

from shadewright.core.baths.rounds import StepKind
from shadewright.errors import ConflictError, StudioError
from shadewright.records.models.lots import Grade
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.lots import LotWords, finish_bath
from shadewright.workflows.shades.entering_swatches import swatch_id_of_bath
from shadewright.workflows.shades.plan_pages import SetNow, SetSwatch, swatch_set
from shadewright.workflows.shades.reading_swatches import read_bath
from shadewright.workflows.shades.readings import ReadWords
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.typed_cards import TypedCard, TypedLine, write_card


@dataclass(frozen=True, kw_only=True)
class SwatchResult:
    """The colour of one swatch of a set, by the number of its bath."""

    bath_number: str
    read: ReadWords


@dataclass(frozen=True, kw_only=True)
class KeptResults:
    """The swatches that were read, and the baths that were written as planned."""

    swatches: tuple[int, ...]
    as_planned: tuple[str, ...]


def unread(now: SetNow) -> tuple[SetSwatch, ...]:
    """Return the swatches of a set that are to be read, or were dyed and can be."""
    return tuple(
        each
        for each in now.swatches
        if each.reading is None and each.status is not BathStatus.GIVEN_UP
    )


@transaction.atomic
def keep_results(
    plan_id: int, results: Sequence[SwatchResult], *, stamp: Stamp
) -> KeptResults:
    """Keep the colours of a set, all or none; undo takes the colours back together.

    Of a bath that was not finished every line that is still open is written as planned,
    and the skein is a swatch that is not for sale.
    """
    numbers = {each.bath_number for each in unread(swatch_set(plan_id))}
    known = {each.bath_number: swatch_id_of_bath(each.bath_number) for each in results}
    fresh = [each for each in results if each.bath_number in numbers]
    as_planned = tuple(
        each.bath_number for each in fresh if _dyed(each.bath_number, stamp)
    )
    read = {
        each.bath_number: read_bath(each.bath_number, words=each.read, stamp=stamp)
        for each in fresh
    }
    found = starmap(read.get, known.items())
    return KeptResults(
        swatches=tuple(each for each in found if each is not None),
        as_planned=as_planned,
    )


def _dyed(number: str, stamp: Stamp) -> bool:
    """Write what is open of a bath as planned, and its lot; say whether any was."""
    bath = bath_now(number)
    if bath.has_lot:
        return False
    still = [x for x in bath.steps if not x.is_done and x.step.kind != StepKind.FINISH]
    if any(each.parts for each in still):
        raise ConflictError(
            why=f"Swatch {number} stands in the middle of a dose.",
            advice="Finish it at the bench, then enter its colour.",
        )
    if still:
        lines = tuple(TypedLine(step=each.step.key) for each in still)
        _carded(TypedCard(bath=number, lines=lines), stamp)
    own = replace(stamp, deed=uuid5(stamp.deed, f"{number} lot"))
    said = LotWords(grade=Grade.SWATCH)
    finish_bath(number=number, said=said, stamp=own, is_sure=True)
    return bool(still)


def _carded(card: TypedCard, stamp: Stamp) -> None:
    try:
        write_card(card, deed=uuid5(stamp.deed, f"{card.bath} card"), by=stamp.by)
    except StudioError as error:
        raise ConflictError(
            why=f"Swatch {card.bath} cannot be written as planned: {error.sentence}",
            advice="Type in its own card what went otherwise.",
        ) from error
