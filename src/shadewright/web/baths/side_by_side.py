"""Each step as planned beside what was done, and what differs, in words."""

from collections.abc import Iterator

from django.urls import reverse
from django.utils.timezone import localtime

from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.core.quantities import amount_text
from shadewright.web.baths.pages import StepRow
from shadewright.web.parts import Chip
from shadewright.web.templatetags.house import moment
from shadewright.workflows.bath_pages import (
    BathAct,
    BathNow,
    BathStatus,
    DoneLine,
    StepNow,
)
from shadewright.workflows.bath_shapes import AFTER
from shadewright.workflows.deviations import deviations
from shadewright.workflows.rescaling import ACCEPTED, RESCALED, factor_words

_SEEN = 0.005  # common practice: half a percent is less than a syringe shows
_OVER = {BathStatus.FINISHED, BathStatus.GIVEN_UP}
_MISSED = Chip(words="left out", kind="caution")
_TWICE = Chip(words="ticked twice", kind="caution")
_OTHERWISE = Chip(words="went differently", kind="caution")
_DONE = Chip(words="as planned", kind="good")


def step_rows(bath: BathNow) -> tuple[StepRow, ...]:
    """Return every step of a bath, as planned and as dyed."""
    depths = {each.step: each.words for each in deviations(bath)}
    return tuple(
        _row(bath, each, "" if each.is_missed else depths.get(each.step.key, ""))
        for each in bath.steps
    )


def title_of(bath: BathNow, key: str) -> str:
    """Return the title of the step that a line belongs to; the act says the rest."""
    of = key.removeprefix(RESCALED).removeprefix(ACCEPTED)
    head = of.partition("/")[0]
    if head in AFTER:
        return ""
    titles = (each.step.title for each in bath.steps if each.step.key == head)
    return next(titles, head)


def _row(bath: BathNow, each: StepNow, depth: str) -> StepRow:
    differs = tuple(filter(None, (*_differs(each), depth)))
    is_dose = each.step.kind is StepKind.DOSE
    is_open = is_dose and not (each.is_done or each.parts) and bath.status not in _OVER
    change = reverse("change-bottle", args=[bath.number, each.step.key])
    return StepRow(
        title=each.step.title,
        code=each.step.code,
        planned=_planned(each.step),
        dyed=tuple(_done(line, bath) for line in (*each.parts, *each.ticks)),
        differs=differs,
        state=_state(each, is_same=not differs),
        change_address=change if is_open else "",
    )


def _planned(step: RoundStep) -> str:
    """Return the one number of a step, or how long its clock runs."""
    if step.amount is not None:
        return amount_text(step.amount, step.unit)
    return "" if step.timer_min is None else amount_text(step.timer_min, "min")


def _state(each: StepNow, *, is_same: bool) -> Chip | None:
    if each.is_missed:
        return _MISSED
    if each.is_double:
        return _TWICE
    if not (each.is_done or each.parts):
        return None
    return _DONE if is_same else _OTHERWISE


def _done(line: DoneLine, bath: BathNow) -> str:
    """Return what was done and when; a note says how it looked, not that it differs."""
    at = localtime(line.at)
    when = f"{at:%H:%M}" if at.date() == bath.dyed_on else moment(line.at)
    parts = [when, line.note] if line.note else [when]
    if line.act == BathAct.MISSED:
        parts.insert(0, "left out")
        return ", ".join(parts)
    if line.value is not None:
        parts.insert(0, amount_text(line.value, line.unit))
    if line.bottle:
        parts.insert(1, f"from {line.bottle}")
    return ", ".join(parts)


def _differs(each: StepNow) -> Iterator[str]:
    if each.dose is not None and each.dose.is_rescaled:
        yield f"{factor_words(each.dose.factor)}."
    for line in (*each.parts, *each.ticks):
        if line.bottle and each.step.code and line.bottle != each.step.code:
            yield f"From {line.bottle} instead of {each.step.code}."
    if each.ticks and not each.parts and not each.is_double:
        yield _more_or_less(each.step, each.ticks[0])
    if each.is_double:
        yield "Ticked twice: both stand. Undo one if it was the same."


def _more_or_less(step: RoundStep, line: DoneLine) -> str:
    planned, done = step.amount, line.value
    if planned is None or done is None or line.unit != step.unit:
        return ""
    if line.bottle and step.code and line.bottle != step.code:
        return ""  # of another strength; the depth says more than millilitres
    gap = done - planned
    if abs(gap) <= _SEEN * planned:
        return ""
    how = "more" if gap > 0 else "less"
    return f"{amount_text(abs(gap), step.unit)} {how} than planned."
