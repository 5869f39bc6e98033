"""One bath of the demo at the pot: every tap at its time, and what slipped."""

from dataclasses import replace
from datetime import datetime, timedelta
from functools import partial

from shadewright.core.baths.rounds import LOOK_AFTER_MIN, RoundStep, StepKind
from shadewright.records.models.baths import BathAct
from shadewright.records.writes import Stamp
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.bath_shapes import ACT_OF_STEP, PART, StepNow
from shadewright.workflows.bench import Tap, keep_tap, take_back
from shadewright.workflows.bench_doses import dose_asked
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.rota import PH, Slip, Wanted
from shadewright.workflows.demo.ware import full_power_min
from shadewright.workflows.shelf import shelf

PHONES = ("Ines’s phone", "Tam’s phone")


_HANDS_MIN = {
    StepKind.FILL: 0,
    StepKind.DOSE: 3,
    StepKind.ADD: 2,
    StepKind.YARN: 4,
    StepKind.HEAT: 3,
    StepKind.OFF: 1,
}


_SLIPS_AT = {
    Slip.OVER_POUR: "dose-1",
    Slip.RAN_OUT: "dose-1",
    Slip.TAKEN_BACK: "dose-1",
    Slip.MISSED_DOSE: "dose-2",
    Slip.TWO_PHONES: "heat",
    Slip.BOILED_OVER: "top",
    Slip.SHORT_HOLD: "hold",
}
_LATE_MIN, _OFF_PH = 27, 1.7


class KettleBath:
    """A planned bath on its day: it writes down all its taps to come."""

    def __init__(
        self, house: House, number: str, wanted: Wanted, *, place: int = 0
    ) -> None:
        self._diary = house.diary
        self._number = number
        self._place = place
        self._slip = wanted.slip
        self._ph = PH[wanted.name] + (_OFF_PH if wanted.slip is Slip.WEAK_ACID else 0)
        self._by = (house.ines, house.tam)[place % 2]
        self._phone, self._other_phone = PHONES[place % 2], PHONES[1 - place % 2]
        self._steps = bath_now(number).steps
        self._full_min = full_power_min(number) * self._diary.chance.uniform(0.96, 1.05)

    def write(self, starts_at: datetime) -> None:
        """Write down each step's tap, from the empty pot to heat off."""
        at, timer_min = starts_at, 0.0
        for each in self._steps[:-1]:
            at += timedelta(minutes=self._wait_min(each.step, timer_min))
            timer_min = each.step.timer_min or timer_min
            late = timedelta(minutes=_LATE_MIN if self._is_late(each.step) else 0)
            self._diary.note(at + late, self._by, partial(self._do, each))

    def _wait_min(self, step: RoundStep, timer_min: float) -> float:
        """Return the minutes since the step before; the timer is the last one set."""
        odd_min = self._diary.chance.randint(0, 3)
        match step.kind:
            case StepKind.LOOK:
                return LOOK_AFTER_MIN + odd_min
            case StepKind.TOP:
                top_min = max(timer_min - odd_min, self._full_min + odd_min)
                return max(top_min - LOOK_AFTER_MIN, 2)
            case StepKind.HOLD:
                short_min = 14 if self._slip is Slip.SHORT_HOLD else 0
                return max(timer_min + odd_min - short_min, 2)
        return _HANDS_MIN[step.kind]

    def _is_late(self, step: RoundStep) -> bool:
        is_acid = step.kind is StepKind.ADD and bool(step.caution)
        return is_acid and self._slip is Slip.LATE_ACID

    def _do(self, each: StepNow, stamp: Stamp) -> None:
        step = each.step
        tap = Tap(
            bath=self._number,
            act=ACT_OF_STEP[step.kind],
            step=step.key,
            value=None if step.amount is None else float(f"{step.amount:.4g}"),
            unit=step.unit,
            bottle=step.code,
            device=self._phone,
        )
        if self._is_late(step):
            tap = replace(tap, note="forgotten until the pot was warm")
        if self._slip is not None and step.key == _SLIPS_AT.get(self._slip):
            self._slipped(self._slip, each, tap, stamp)
        else:
            keep_tap(tap, stamp=stamp)
        self._read(step, tap)

    def _read(self, step: RoundStep, tap: Tap) -> None:
        """Read the pH in the first pot, and the thermometer in the second."""
        read = replace(tap, bottle="", note="")
        if step.kind is StepKind.HOLD and self._place == 0:
            strip = replace(read, act=BathAct.PH, value=self._ph, unit="pH")
            keep_tap(strip, stamp=self._again())
        if step.kind is StepKind.TOP and self._place == 1:
            seen_c = (step.amount or 0.0) - self._diary.chance.randint(0, 2)
            hot = replace(read, act=BathAct.TEMPERATURE, value=seen_c)
            keep_tap(hot, stamp=self._again())

    def _slipped(self, slip: Slip, each: StepNow, tap: Tap, stamp: Stamp) -> None:
        match slip:
            case Slip.MISSED_DOSE:
                left_out = replace(tap, act=BathAct.MISSED, value=None, bottle="")
                keep_tap(replace(left_out, note="seen too late"), stamp=stamp)
            case Slip.RAN_OUT:
                self._run_out(each, tap, stamp)
            case Slip.TAKEN_BACK:
                keep_tap(replace(tap, value=_times(tap, 2)), stamp=stamp)
                take_back(deed=stamp.deed, stamp=self._again())
                keep_tap(tap, stamp=self._again())
            case Slip.TWO_PHONES:
                keep_tap(tap, stamp=stamp)
                twin = replace(tap, device=self._other_phone)
                keep_tap(twin, stamp=self._again())
            case Slip.BOILED_OVER:
                keep_tap(tap, stamp=stamp)
                told = replace(tap, act=BathAct.PROBLEM, value=None, unit="")
                keep_tap(replace(told, note="Boiled over"), stamp=self._again())
            case _:
                keep_tap(_otherwise(slip, tap), stamp=stamp)

    def _run_out(self, each: StepNow, tap: Tap, stamp: Stamp) -> None:
        """Pour what the bottle gives; the rest comes from the next good one."""
        part = replace(tap, step=tap.step + PART)
        most = replace(part, value=_times(tap, 0.85), is_emptied=True, note="ran out")
        keep_tap(most, stamp=stamp)
        now = bath_now(self._number)
        again = next(one for one in now.steps if one.step.key == each.step.key)
        asked = dose_asked(now, again, shelf())
        if asked.code and asked.amount is not None:
            rest = float(f"{asked.amount:.4g}")
            keep_tap(replace(part, value=rest, bottle=asked.code), stamp=self._again())

    def _again(self) -> Stamp:
        return self._diary.stamp(self._by)


def _times(tap: Tap, factor: float) -> float:
    return float(f"{(tap.value or 0.0) * factor:.4g}")


def _otherwise(slip: Slip, tap: Tap) -> Tap:
    if slip is Slip.OVER_POUR:
        return replace(tap, value=_times(tap, 1.12), note="the jug slipped")
    return replace(tap, note="taken off early: the bath was clear")
