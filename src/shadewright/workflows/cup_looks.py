"""What a look at the bath in a white cup asks for next, from all that is written."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from shadewright.core.baths.cups import depth_on_yarn_percent
from shadewright.core.baths.exhaustion import (
    CupAdvice,
    CupLook,
    NextAct,
    cup_advice,
)
from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_ph import measured_ph, ph_of_bath
from shadewright.workflows.bath_shapes import MORE, BathNow, DoneLine, StepNow
from shadewright.workflows.depths import depths_of

_MINUTE = timedelta(minutes=1)


@dataclass(frozen=True, kw_only=True)
class CupNow:
    """The newest look: what is left, what that leaves on the yarn, what to do."""

    left_percent: float
    on_yarn: str
    advice: CupAdvice
    is_acid: bool


def cup_now(bath: BathNow) -> CupNow | None:
    """Return the newest look at a bath that is still on the heat, or None."""
    look = next((x for x in bath.standing if x.act == BathAct.LEFTOVER), None)
    is_off = any(each.is_done for each in _steps(bath, StepKind.OFF))
    if look is None or look.value is None or is_off:
        return None
    return _cup(bath, look, min(max(look.value, 0.0), 100.0))


def _cup(bath: BathNow, look: DoneLine, left: float) -> CupNow:
    read = measured_ph(bath)
    depth = _depth_percent(bath)
    (top,) = _steps(bath, StepKind.TOP)
    advice = cup_advice(
        look=CupLook(
            left_percent=left,
            depth_percent=depth,
            bath_c=_bath_c(bath),
            top_c=top.step.amount,
            ph=None if read is None else read.value,
            habit=ph_of_bath(bath).habit,
            longer_min=_longer_min(bath, top, look),
        )
    )
    on_yarn = depth_on_yarn_percent(depth_percent=depth, left_percent=left)
    return CupNow(
        left_percent=left,
        on_yarn=f"On the yarn: about {amount_text(on_yarn, '%')} "
        f"of {amount_text(depth, '%')}.",
        advice=advice,
        is_acid=advice.act is NextAct.ACID,
    )


def _steps(bath: BathNow, kind: StepKind) -> list[StepNow]:
    return [each for each in bath.steps if each.step.kind is kind]


def _depth_percent(bath: BathNow) -> float:
    """Return the depth of all dyes as they went in, as on the bath's own page."""
    return sum(each.depth_percent for each in depths_of(bath.number))


def _bath_c(bath: BathNow) -> float | None:
    """Return the newest temperature that was read, the top's tick being one too."""
    read = (BathAct.TEMPERATURE, BathAct.AT_TOP)
    lines = [x for x in bath.standing if x.act in read and x.value is not None]
    return max(lines, key=_at).value if lines else None


def _longer_min(bath: BathNow, top: StepNow, look: DoneLine) -> float:
    """Return how much longer than planned it was held when somebody looked."""
    (hold,) = _steps(bath, StepKind.HOLD)
    more = (x for x in bath.standing if x.step == hold.step.key + MORE)
    given = sum(x.value or 0.0 for x in more if x.at <= look.at)
    planned = top.step.timer_min
    if planned is None or not top.ticks:
        return given
    held = (look.at - top.ticks[0].at) / _MINUTE
    return max(given, held - planned)


def _at(line: DoneLine) -> datetime:
    return line.at
