"""The keys of a step: as planned, otherwise, and when something went wrong."""

from collections.abc import Iterator
from dataclasses import replace
from uuid import uuid4

from shadewright.core.baths.measures import weighed_mass_g
from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text, number_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.bench.pages import TapKey
from shadewright.workflows.bath_pages import BathAct, StepNow
from shadewright.workflows.bath_shapes import ACT_OF_STEP, MORE, PART
from shadewright.workflows.bench_doses import DoseAsked
from shadewright.workflows.deviations import Deviation
from shadewright.workflows.rescaling import ACCEPTED, RESCALED

WRONG_BOTTLE = "wrong bottle"
_AFTER = "said after an interruption"
_MORE = (1.0, 5.0)
"""Offered at one tap while it does not double the dose (our choice)."""
_AMOUNT_STEPS = {StepKind.DOSE, StepKind.ADD}
_CLOCK_STEPS = {StepKind.LOOK, StepKind.TOP, StepKind.HOLD}
_BOILED = "Boiled over: dye and liquor went with it. Top up with hot water, turn down"
_BLOTCHY = "Blotchy: heat lowered, yarn turned; time at the top often evens it out"


def done_key(each: StepNow, asked: DoseAsked, *, note: str = "") -> TapKey | None:
    """Return the key for a step done as planned; None where nothing can be done."""
    step = each.step
    if step.kind is StepKind.FINISH or (step.amount is not None and not asked.amount):
        return None
    amount = _said(asked.amount, asked.unit)
    return TapKey(
        words=f"Done, {amount}" if amount else "Done",
        icon="tick",
        act=ACT_OF_STEP[step.kind],
        step=step.key + (PART if each.parts else ""),
        key=uuid4(),
        value=_plain(asked.amount),
        unit=asked.unit,
        bottle=asked.code,
        note=note,
        said=f"{step.title} {amount}".strip(),
        is_first=True,
    )


def yes_key(each: StepNow, asked: DoseAsked) -> TapKey | None:
    """Return the answer that a dose went in before the interruption."""
    key = done_key(each, asked, note=_AFTER)
    return None if key is None else _with(key, words="Yes, it is in")


def presets(each: StepNow, asked: DoseAsked) -> tuple[TapKey, ...]:
    """Return the usual ways in which a step goes differently, one tap each."""
    return tuple(_presets(each, asked))


def pad_key(each: StepNow, asked: DoseAsked) -> TapKey | None:
    """Return the key below the number pad, its amount still to be typed."""
    done = done_key(each, asked)
    if done is None or each.step.kind not in _AMOUNT_STEPS:
        return None
    return _with(done, words="Done, with this", said=each.step.title, value="")


def other_pad_key(each: StepNow, asked: DoseAsked) -> TapKey | None:
    """Return the key for a dose of stock that was weighed instead, or measured."""
    pad = pad_key(each, asked)
    if pad is None or not asked.code:
        return None
    unit = "ml" if asked.unit == "g" else "g"
    return _with(pad, words=f"Done, in {unit}", unit=unit, is_first=False)


def readings(each: StepNow) -> tuple[TapKey, ...]:
    """Return the keys that note what the pad says as a temperature or a pH."""
    kinds = ((BathAct.TEMPERATURE, "°C"), (BathAct.PH, "pH"))
    return tuple(
        TapKey(
            words=f"Note {unit}",
            icon="note",
            act=act,
            step=each.step.key,
            key=uuid4(),
            unit=unit,
            said="Read",
        )
        for act, unit in kinds
    )


def problems(each: StepNow) -> tuple[TapKey, ...]:
    """Return what can go wrong at any step, one tap each."""
    step = each.step
    found = [
        _problem("Boiled over", _BOILED, step.key),
        _problem("Blotchy", _BLOTCHY, step.key),
    ]
    if step.kind is not StepKind.FINISH:
        left_out = TapKey(
            words="Left out",
            icon="problem",
            act=BathAct.MISSED,
            step=step.key,
            key=uuid4(),
            said=f"{step.title} left out",
        )
        found.insert(0, left_out)
    return tuple(found)


def ran_out_keys(each: StepNow, asked: DoseAsked) -> tuple[TapKey, ...]:
    """Return the usual shares of a dose that came before its bottle ran out."""
    if not asked.code or asked.amount is None:
        return ()
    shares = ((0.25, "a quarter"), (0.5, "half"), (0.75, "three quarters"))
    typed = _part(each, asked, None, words="With this much")
    return (
        *(
            _part(each, asked, asked.amount * share, words=f"After {words}")
            for share, words in shares
        ),
        typed,
    )


def wrong_key(each: StepNow, asked: DoseAsked) -> TapKey | None:
    """Return the key for a dose that went in from another bottle."""
    if not asked.code:
        return None
    key = _part(each, asked, asked.amount, words="Poured from it")
    return _with(key, bottle="", is_emptied=False, note=WRONG_BOTTLE)


def rest_key(each: StepNow, missing_ml: float, code: str) -> TapKey:
    """Return the key that adds what is missing of a dose, in the step's unit."""
    amount, unit = missing_ml, each.step.unit
    strength = None if each.dose is None else each.dose.strength_percent
    if unit == "g" and strength is not None:
        amount = weighed_mass_g(volume_ml=missing_ml, strength_percent=strength)
    said = amount_text(amount, unit)
    return TapKey(
        words=f"Added {said} more",
        icon="plus",
        act=BathAct.DOSED,
        step=each.step.key + PART,
        key=uuid4(),
        value=_plain(amount),
        unit=unit,
        bottle=code,
        said=f"{each.step.title} {said} more",
    )


def decide_keys(found: Deviation) -> tuple[TapKey, ...]:
    """Return the two answers to a dose that went differently, one tap each."""
    so = _decision(found, "Leave it so", "tick", ACCEPTED)
    if found.factor is None:
        return (so,)
    percent = 100 * found.factor
    more = f"{number_text(percent - 100, digits=2)}{NO_BREAK}%"
    rest = _decision(found, f"Rest {more} more", "plus", RESCALED)
    return (_with(rest, value=f"{percent:.9g}", unit="%"), so)


def _decision(found: Deviation, words: str, icon: str, start: str) -> TapKey:
    return TapKey(
        words=words,
        icon=icon,
        act=BathAct.NOTE,
        step=start + found.step,
        key=uuid4(),
        said=f"{found.title}: {words[:1].lower()}{words[1:]}",
        note=f"{found.title}: {words[:1].lower()}{words[1:]}",
    )


def _presets(each: StepNow, asked: DoseAsked) -> Iterator[TapKey]:
    done = done_key(each, asked)
    if each.step.kind in _AMOUNT_STEPS and done is not None and asked.amount:
        for more in _MORE:
            if more <= asked.amount:
                yield _more(done, each, asked, asked.amount + more, f"+{more:g}")
        if asked.holds is not None and 0 < asked.holds < asked.amount:
            yield _part(each, asked, asked.holds, words="Bottle empty at")
    if each.step.kind in _CLOCK_STEPS or each.step.heated_min is not None:
        for minutes in (1.0, 5.0):
            yield _minutes(each, minutes)


def _more(
    done: TapKey, each: StepNow, asked: DoseAsked, amount: float, more: str
) -> TapKey:
    said = _said(amount, asked.unit)
    return _with(
        done,
        words=f"{more}: {said}",
        value=_plain(amount),
        said=f"{each.step.title} {said}",
        is_first=False,
    )


def _minutes(each: StepNow, minutes: float) -> TapKey:
    return TapKey(
        words=f"+{minutes:g}{NO_BREAK}min",
        icon="plus",
        act=BathAct.NOTE,
        step=each.step.key + MORE,
        key=uuid4(),
        value=_plain(minutes),
        unit="min",
        said=f"{each.step.title}: {minutes:g} min more",
    )


def _part(
    each: StepNow, asked: DoseAsked, amount: float | None, *, words: str
) -> TapKey:
    said = _said(amount, asked.unit)
    return TapKey(
        words=f"{words} {said}".strip(),
        icon="drop",
        act=BathAct.DOSED,
        step=each.step.key + PART,
        key=uuid4(),
        value=_plain(amount),
        unit=asked.unit,
        bottle=asked.code,
        said=f"{each.step.title} {said}".strip(),
        note="ran out",
        is_emptied=True,
    )


def _problem(words: str, note: str, step: str) -> TapKey:
    return TapKey(
        words=words,
        icon="problem",
        act=BathAct.PROBLEM,
        step=step,
        key=uuid4(),
        note=note,
        said=words,
    )


def _with(key: TapKey, **changed: object) -> TapKey:
    return replace(key, key=uuid4(), **changed)  # type: ignore[arg-type]


def _said(amount: float | None, unit: str) -> str:
    return "" if amount is None else amount_text(amount, unit)


def _plain(amount: float | None) -> str:
    return "" if amount is None else f"{amount:.6g}"
