"""The rest of a bath rescaled after a dose went over, or the dose accepted as it is.

Both are notes in the ledger, so that both are taken back like any line: ``more/dose-1``
holds how many per cent of the plan all doses still to come are given, ``so/dose-1``
that a dose stays as it went in. What was poured before a note is not touched by it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import isclose, prod

from shadewright.core.baths.rounds import RoundStep
from shadewright.core.quantities import number_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.workflows.bath_shapes import DoneLine, StepNow
from shadewright.workflows.rounds import shown_g

RESCALED, ACCEPTED = "more/", "so/"
_MOST, _LEAST = 300.0, 30.0


def rescaled(
    steps: Iterable[StepNow], lines: Sequence[DoneLine]
) -> tuple[StepNow, ...]:
    """Return the steps with the doses still to come as the notes want them.

    ``lines`` are those of the ledger, newest first.
    """
    standing = [line for line in reversed(lines) if not line.is_undone]
    notes = _notes(standing)
    if not notes:
        return tuple(steps)
    return tuple(_rescaled(each, _factor(each, standing, notes)) for each in steps)


def is_settled(lines: Iterable[DoneLine], key: str) -> bool:
    """Whether somebody decided what becomes of a dose that went differently."""
    wanted = {RESCALED + key, ACCEPTED + key}
    return any(line.step in wanted for line in lines)


def _notes(standing: Sequence[DoneLine]) -> dict[str, tuple[int, float]]:
    """Return the first note on each dose: where it stands, and its factor."""
    found: dict[str, tuple[int, float]] = {}
    for place, line in enumerate(standing):
        if line.step.startswith(RESCALED) and line.value is not None:
            factor = min(max(line.value, _LEAST), _MOST) / 100
            found.setdefault(line.step.removeprefix(RESCALED), (place, factor))
    return found


def _factor(
    each: StepNow, standing: Sequence[DoneLine], notes: dict[str, tuple[int, float]]
) -> float:
    deeds = {line.deed for line in (*each.ticks, *each.parts)}
    own = (place for place, line in enumerate(standing) if line.deed in deeds)
    until = min(own, default=len(standing))
    return prod(factor for place, factor in notes.values() if place < until)


def _rescaled(each: StepNow, factor: float) -> StepNow:
    dose = each.dose
    if dose is None or isclose(factor, 1.0):
        return each
    return replace(
        each,
        step=_step(each.step, factor, dose.step_g),
        dose=replace(
            dose,
            dye_g=dose.dye_g * factor,
            depth_percent=dose.depth_percent * factor,
            factor=factor,
        ),
    )


def _step(step: RoundStep, factor: float, step_g: float | None) -> RoundStep:
    amount = None if step.amount is None else step.amount * factor
    if step.unit == "g" and amount is not None:
        amount = shown_g(amount, step_g=step_g)
    return replace(
        step,
        amount=amount,
        scale_g=None if step.scale_g is None else step.scale_g * factor,
        volume_ml=None if step.volume_ml is None else step.volume_ml * factor,
    )


def factor_words(factor: float) -> str:
    """Return how a dose differs from the card.

    >>> factor_words(1.1).replace(chr(160), " ")
    '10 % more than on the card, for the hue'
    """
    share = number_text(100 * abs(factor - 1), digits=2)
    how = "more" if factor > 1 else "less"
    return f"{share}{NO_BREAK}% {how} than on the card, for the hue"
