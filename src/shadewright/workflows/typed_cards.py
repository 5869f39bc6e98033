"""A card typed back: its lines become the same taps as at the bench, all or none.

The key of each tap follows from the form's and the line's, so that a card sent
twice is written once. A line that was ticked at the bench stays as it is.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from uuid import UUID, uuid5

from django.db import transaction

from shadewright.core.baths.rounds import StepKind
from shadewright.errors import ConflictError, StudioError
from shadewright.records import reads, recipe_reads
from shadewright.workflows.bath_pages import BathAct, BathNow, StepNow, bath_now
from shadewright.workflows.bath_shapes import ACT_OF_STEP, RACK, RINSE
from shadewright.workflows.bench import Tap, check_tap, keep_tap
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo

DEVICE = "card"
NO_TIME = "time not noted"
_NOTES, _DEGREES, _PH = "notes", "/°C", "/pH"
MOST_RINSES = 20


@dataclass(frozen=True, kw_only=True)
class TypedLine:
    """A line that is done; what was as planned, or not written down, is left empty.

    ``unit`` is said where an amount is in another unit than the planned one.
    """

    step: str
    is_missed: bool = False
    amount: float | None = None
    unit: str = ""
    at: datetime | None = None
    bottle: str = ""
    temperature_c: float | None = None
    ph: float | None = None
    looked_like: str = ""

    @property
    def says_more(self) -> bool:
        """Whether it says anything but that all went as planned."""
        return self != TypedLine(step=self.step)


@dataclass(frozen=True, kw_only=True)
class TypedCard:
    """What stands on a card: its lines in order, rinses, rack, and notes."""

    bath: str
    lines: tuple[TypedLine, ...]
    notes: str = ""
    rinses: int = 0
    hung_at: datetime | None = None

    @property
    def also(self) -> tuple[str, ...]:
        """What it holds beside its lines, in words."""
        said = {
            "the note": self.notes.strip(),
            "the rinses": self.rinses,
            "the rack": self.hung_at,
        }
        return tuple(words for words, is_said in said.items() if is_said)


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """The lines that now stand by this card, what else does, and what stood before."""

    written: tuple[StepNow, ...]
    stood: tuple[StepNow, ...]
    also: tuple[str, ...]


@transaction.atomic
def write_card(card: TypedCard, *, deed: UUID, by: int | None) -> Outcome:
    """Write a card down, once, whole; refused as a whole where a line cannot be."""
    recipe_reads.locked_bath(card.bath)
    before = bath_now(card.bath)
    if not card.lines and not card.also:
        raise ConflictError(
            why="Nothing on this card is ticked.",
            advice="Tick the lines that were done, or press “All as planned”.",
        )
    stood = [each for each in before.steps if each.is_done and not _is_of(each, deed)]
    keys = {each.step.key for each in stood}
    for line in card.lines:
        if line.step not in keys:
            _write(_step(before, line.step), line, card.bath, deed=deed, by=by)
    for end, tap in _foot(card, before):
        at = None if end == _NOTES else card.hung_at
        keep_tap(tap, stamp=stamp_now(by=by, deed=uuid5(deed, end), at=at))
    said = {line.step for line in card.lines if line.says_more}
    return Outcome(
        written=tuple(x for x in bath_now(card.bath).steps if _is_of(x, deed)),
        stood=tuple(each for each in stood if each.step.key in said),
        also=card.also,
    )


@transaction.atomic
def take_card_back(*, bath: str, deed: UUID, by: int | None) -> None:
    """Take all that a card wrote back, the newest first."""
    recipe_reads.locked_bath(bath)
    now = bath_now(bath)
    keys = [each.step.key for each in now.steps]
    deeds = {uuid5(deed, f"{key}{end}") for key in keys for end in ("", _DEGREES, _PH)}
    deeds |= {uuid5(deed, end) for end in (_NOTES, RACK, *_rinse_ends(MOST_RINSES))}
    for line in now.standing:
        if line.deed in deeds:
            undo(deed=line.deed, stamp=stamp_now(by=by, deed=uuid5(line.deed, "undo")))


def _foot(card: TypedCard, bath: BathNow) -> Iterator[tuple[str, Tap]]:
    # Rinses are as late as the rack, or as the typing.
    rinsed = Tap(bath=card.bath, act=BathAct.RINSED, step=RINSE, device=DEVICE)
    for end in _rinse_ends(card.rinses):
        yield end, replace(rinsed, note="" if card.hung_at else NO_TIME)
    if card.hung_at:
        hung = replace(rinsed, act=BathAct.HUNG, step=RACK, value=bath.skeins)
        yield RACK, replace(hung, unit="skeins" if bath.skeins else "")
    if card.notes.strip():
        yield (
            _NOTES,
            replace(rinsed, act=BathAct.NOTE, step="", note=card.notes.strip()),
        )


def _rinse_ends(count: int) -> Iterator[str]:
    return (f"{RINSE}-{number}" for number in range(count))


def _is_of(each: StepNow, deed: UUID) -> bool:
    """Whether a step was ticked by this very card."""
    return any(tick.deed == uuid5(deed, each.step.key) for tick in each.ticks)


def _step(bath: BathNow, key: str) -> StepNow:
    found = next((each for each in bath.steps if each.step.key == key), None)
    if found is None or found.step.kind is StepKind.FINISH or found.parts:
        raise ConflictError(
            why="A line of this card can no longer be typed in.",
            advice="Open the card again: the bath has changed since.",
        )
    return found


def _write(
    each: StepNow, line: TypedLine, bath: str, *, deed: UUID, by: int | None
) -> None:
    key = each.step.key
    for end, tap in _taps(each, line, bath):
        try:
            check_tap(tap)
            if tap.bottle:
                reads.bottle_row(tap.bottle)
        except StudioError as error:
            error.argument = (
                f"{key}-{'bottle' if error.argument == 'code' else 'amount'}"
            )
            raise
        keep_tap(tap, stamp=stamp_now(by=by, deed=uuid5(deed, key + end), at=line.at))


def _taps(each: StepNow, line: TypedLine, bath: str) -> Iterator[tuple[str, Tap]]:
    yield "", _tick(each, line, bath)
    for end, act, value, unit in (
        (_DEGREES, BathAct.TEMPERATURE, line.temperature_c, "°C"),
        (_PH, BathAct.PH, line.ph, "pH"),
    ):
        if value is not None:
            yield (
                end,
                Tap(
                    bath=bath,
                    act=act,
                    step=each.step.key,
                    value=value,
                    unit=unit,
                    device=DEVICE,
                ),
            )


def _tick(each: StepNow, line: TypedLine, bath: str) -> Tap:
    step = each.step
    note = _joined((line.looked_like.strip(), "" if line.at else NO_TIME))
    if line.is_missed:
        return Tap(
            bath=bath, act=BathAct.MISSED, step=step.key, note=note, device=DEVICE
        )
    return Tap(
        bath=bath,
        act=ACT_OF_STEP[step.kind],
        step=step.key,
        value=step.amount if line.amount is None else line.amount,
        unit=line.unit or step.unit,
        bottle=line.bottle or step.code,
        note=note,
        device=DEVICE,
    )


def _joined(parts: Sequence[str]) -> str:
    return "; ".join(filter(None, parts))
