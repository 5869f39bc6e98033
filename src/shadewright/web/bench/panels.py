"""Each step of a bath as a panel that fills the screen."""

import json
from collections.abc import Sequence
from datetime import timedelta
from uuid import uuid4

from django.urls import reverse
from django.utils import timezone

from shadewright.core.baths.measures import dose_slack_ml
from shadewright.core.baths.rounds import TARE_AND_POUR, RoundStep, StepKind
from shadewright.core.quantities import (
    amount_text,
    number_text,
    water_density_g_per_ml,
)
from shadewright.core.quantities.writing import NO_BREAK, beside_text
from shadewright.web.bench import after_keys, keys
from shadewright.web.bench.clock_words import left_words
from shadewright.web.bench.pages import Panel
from shadewright.web.bench.words import line_words
from shadewright.web.parts import Caution
from shadewright.workflows.bath_pages import BathAct, BathNow, StepNow
from shadewright.workflows.bath_shapes import PART
from shadewright.workflows.bench_doses import DoseAsked, dose_asked
from shadewright.workflows.clocks import clock_plans
from shadewright.workflows.deviations import whole_dose_g
from shadewright.workflows.rescaling import factor_words
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.sure_words import depth_words

_SHORT, _LONG = 3, 5
_INTERRUPTED = timedelta(minutes=2)
_SHEET = "Follow the dye’s safety data sheet and your local rules."
_IT_IS_LATE = "Late: the bath is at its top, where it strikes at once"
_LATE = (
    "Turn the heat down and let it stop simmering. Give a quarter at a time in ten "
    "times as much cold water, the yarn lifted, and wait ten minutes between."
)
_CLOCK_IS_THE_NUMBER = {StepKind.LOOK, StepKind.HOLD}


def panels(
    bath: BathNow,
    bottles: Sequence[ShelfBottle],
    *,
    now_key: str,
    view: str,
    seen: str,
) -> tuple[Panel, ...]:
    """Return a panel for each step; the one at hand is marked, with what it shows."""
    return tuple(
        _panel(
            bath,
            each,
            dose_asked(bath, each, bottles),
            place=place,
            view=view if each.step.key == now_key else "",
            is_seen=each.step.key == now_key and bool(seen),
        )
        for place, each in enumerate(bath.steps, start=1)
    )


def first_view(bath: BathNow, key: str, asked_view: str) -> str:
    """Return what a panel shows first: after an interruption, a question."""
    each = next(x for x in bath.steps if x.step.key == key)
    if asked_view or each.step.kind is not StepKind.DOSE or not bath.standing:
        return asked_view or "main"
    is_old = timezone.now() - bath.standing[0].at > _INTERRUPTED
    return "ask" if is_old else "main"


def _panel(
    bath: BathNow,
    each: StepNow,
    asked: DoseAsked,
    *,
    place: int,
    view: str,
    is_seen: bool,
) -> Panel:
    step = each.step
    number, unit = _number(asked)
    clock = _clock(bath, step)
    shown = number or clock
    return Panel(
        key=step.key,
        place=f"{place} of {len(bath.steps)}",
        name=_name(step, asked),
        code=asked.code,
        number=shown,
        unit=unit,
        css="short" if len(shown) <= _SHORT else "long" if len(shown) >= _LONG else "",
        clock=step.key if clock and not number else "",
        scale="" if asked.scale_g is None else beside_text(asked.scale_g),
        volume="" if asked.volume_ml is None else amount_text(asked.volume_ml, "ml"),
        sure=_sure(each),
        fine=_fine(asked),
        text=_text(step, number, unit),
        caution=_caution(step),
        trouble=_trouble(asked) or _late(bath, each),
        last=line_words(bath, bath.standing[0]) if bath.standing else "",
        done=keys.done_key(each, asked),
        finish=_finish(bath, step),
        question=_question(step, number, unit),
        yes=keys.yes_key(each, asked) if step.kind is StepKind.DOSE else None,
        presets=keys.presets(each, asked),
        pad=keys.pad_key(each, asked),
        other_pad=keys.other_pad_key(each, asked),
        readings=keys.readings(each),
        problems=keys.problems(each),
        shares=keys.ran_out_keys(each, asked),
        wrong=keys.wrong_key(each, asked),
        left=after_keys.left_keys(each),
        after=after_keys.after_keys(bath, each),
        note_key=uuid4(),
        photo_key=uuid4(),
        data=json.dumps(_data(bath, each, asked)),
        is_now=bool(view),
        is_seen=is_seen,
        view=view or "main",
    )


def _number(asked: DoseAsked) -> tuple[str, str]:
    if asked.amount is None:
        return "", ""
    number, _, unit = amount_text(asked.amount, asked.unit).partition(NO_BREAK)
    return number, unit


def _name(step: RoundStep, asked: DoseAsked) -> str:
    if asked.strength_percent is None:
        return step.title
    return f"{step.title} {amount_text(asked.strength_percent, '%')}"


def _clock(bath: BathNow, step: RoundStep) -> str:
    """Return the clock that is the number of a step which has none of its own."""
    if step.kind not in _CLOCK_IS_THE_NUMBER:
        return ""
    running = next((x for x in bath.clocks if x.key == step.key), None)
    if running is not None:
        return left_words(running.rings_at, timezone.now())
    plans = clock_plans(bath.called, [each.step for each in bath.steps])
    plan = next((x for x in plans if x.key == step.key), None)
    return "" if plan is None else f"{plan.minutes:.0f}:00"


def _fine(asked: DoseAsked) -> str:
    if not asked.code or not asked.amount:
        return ""
    slack = number_text(dose_slack_ml(volume_ml=asked.amount), digits=1)
    return f"±{NO_BREAK}{slack}{NO_BREAK}{asked.unit} is fine"


def _text(step: RoundStep, number: str, unit: str) -> str:
    """Return the words of a step, with what is really weighed now."""
    if step.volume_ml is None or not number:
        return step.text
    return TARE_AND_POUR.format(amount=f"{number}{NO_BREAK}{unit}")


def _water_g(asked: DoseAsked) -> float | None:
    """Return what a millilitre of water weighs, where stock goes on the scale."""
    if asked.volume_ml is None:
        return None
    return water_density_g_per_ml(temperature_c=20.0)


def _sure(each: StepNow) -> str:
    """Return how sure the depth of a dose is, in a few words."""
    dose = each.dose
    if dose is None:
        return ""
    if not dose.is_rescaled:
        return depth_words(dose.how_sure)
    return f"{amount_text(dose.depth_percent, '%')}: {factor_words(dose.factor)}"


def _caution(step: RoundStep) -> Caution | None:
    if not step.caution:
        return None
    is_powder = step.kind is StepKind.DOSE
    text = f"{step.caution} {_SHEET}" if is_powder else step.caution
    return Caution(title="Mind", text=text)


def _trouble(asked: DoseAsked) -> Caution | None:
    if not asked.trouble:
        return None
    return Caution(title="Before you pour", text=asked.trouble, kind="problem")


def _late(bath: BathNow, each: StepNow) -> Caution | None:
    """Return how acid goes in that should have been there before the top."""
    if each.step.kind is not StepKind.ADD or not each.step.caution or each.is_done:
        return None
    is_passed = any(
        one.is_done and one.step.kind is StepKind.TOP
        for one in bath.steps[bath.steps.index(each) :]
    )
    return Caution(title=_IT_IS_LATE, text=_LATE, kind="problem") if is_passed else None


def _finish(bath: BathNow, step: RoundStep) -> str:
    if step.kind is not StepKind.FINISH:
        return ""
    return reverse("finish-bath", args=[bath.number])


def _question(step: RoundStep, number: str, unit: str) -> str:
    if step.kind is not StepKind.DOSE:
        return ""
    return f"Was {step.title} {number}{NO_BREAK}{unit} added?"


def _data(bath: BathNow, each: StepNow, asked: DoseAsked) -> dict[str, object]:
    """Return what the script needs when nobody answers."""
    dose = each.dose
    plans = clock_plans(bath.called, [one.step for one in bath.steps])
    return {
        "kind": each.step.kind,
        "code": asked.code,
        "dye": "" if dose is None else dose.dye_name,
        "amount": asked.amount,
        "unit": asked.unit,
        "water_g": _water_g(asked),
        "strength": asked.strength_percent,
        "rest_g": None if dose is None else dose.rest_g,
        "dye_g": None if dose is None else dose.dye_g,
        "whole_g": None if dose is None else whole_dose_g(bath, dose),
        "fibre_g": bath.fibre_g,
        "others": [[x.code, x.strength_percent, x.usable_ml] for x in asked.others],
        "begins": [
            {"key": x.key, "words": x.words, "minutes": x.minutes}
            for x in plans
            if x.begun_by == each.step.key
        ],
        "part": each.step.key + PART,
        "missed": BathAct.MISSED,
    }
