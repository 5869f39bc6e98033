"""The keys of the end: what is left in the cup, a longer hold, rinse and rack."""

from collections.abc import Iterator
from datetime import timedelta
from math import ceil
from uuid import uuid4

from django.utils import timezone

from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.bench.pages import TapKey
from shadewright.workflows.bath_pages import BathAct, BathNow, StepNow
from shadewright.workflows.bath_shapes import MORE, RACK, RINSE

_LEFT = (
    (5.0, "A trace, 1 in 20"),
    (10.0, "A little, 1 in 10"),
    (25.0, "A quarter, 1 in 4"),
    (50.0, "Half, 1 in 2"),
    (75.0, "Most of it, 3 in 4"),
)


def left_keys(each: StepNow) -> tuple[TapKey, ...]:
    """Return how much colour may be left when the hold is over, one tap each."""
    if each.step.kind is not StepKind.HOLD:
        return ()
    return tuple(
        TapKey(
            words=words,
            icon="eye",
            act=BathAct.LEFTOVER,
            step=each.step.key,
            key=uuid4(),
            value=f"{percent:g}",
            unit="%",
            said=f"About {amount_text(percent, '%')} left in the bath",
        )
        for percent, words in _LEFT
    )


def longer_key(bath: BathNow, minutes: float) -> TapKey:
    """Return the key that lets the hold's clock ring so many minutes from now."""
    hold = next(x.step for x in bath.steps if x.step.kind is StepKind.HOLD)
    clock = next((x for x in bath.clocks if x.key == hold.key), None)
    late = timedelta(0) if clock is None else timezone.now() - clock.rings_at
    more = ceil(max(late / timedelta(minutes=1), 0.0) + minutes)
    return TapKey(
        words=f"Hold {minutes:g}{NO_BREAK}min longer",
        icon="plus",
        act=BathAct.NOTE,
        step=hold.key + MORE,
        key=uuid4(),
        value=str(more),
        unit="min",
        said=f"Held {more}{NO_BREAK}min more",
        is_first=True,
    )


def after_keys(bath: BathNow, each: StepNow) -> tuple[TapKey, ...]:
    """Return what is ticked between heat off and the lot; none of it must be."""
    if each.step.kind is not StepKind.FINISH:
        return ()
    return tuple(_after(bath))


def _after(bath: BathNow) -> Iterator[TapKey]:
    acts = [line.act for line in bath.standing]
    rinses = acts.count(BathAct.RINSED)
    again = f"Rinsed again, {rinses} so far" if rinses else "Rinsed"
    yield _key(again, "drop", BathAct.RINSED, RINSE, said="Rinsed")
    if BathAct.HUNG not in acts:
        skeins = "" if bath.skeins is None else str(bath.skeins)
        unit = "skeins" if skeins else ""
        yield _key("On the rack", "tick", BathAct.HUNG, RACK, value=skeins, unit=unit)
    elif BathAct.DRY not in acts:
        yield _key("Dry", "tick", BathAct.DRY, RACK)


def _key(
    words: str,
    icon: str,
    act: BathAct,
    step: str,
    *,
    value: str = "",
    unit: str = "",
    said: str = "",
) -> TapKey:
    return TapKey(
        words=words,
        icon=icon,
        act=act,
        step=step,
        key=uuid4(),
        value=value,
        unit=unit,
        said=said or words,
    )
