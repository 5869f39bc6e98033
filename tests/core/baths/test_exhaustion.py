"""Dye that is left in the bath: the next act, for each class of dye."""

from dataclasses import replace

import pytest

from shadewright.core.baths.exhaustion import (
    CupLook,
    NextAct,
    cup_advice,
)
from shadewright.core.tables.acid_doses import AcidHabit
from shadewright.errors import OutOfRangeError

HALF, MILLING = AcidHabit.HALF_MILLING, AcidHabit.MILLING
COLOURED = CupLook(
    left_percent=25.0, depth_percent=1.0, bath_c=92.0, top_c=92.0, ph=5.0, habit=HALF
)


@pytest.mark.parametrize(
    ("changed", "act"),
    [
        ({"left_percent": 5.0, "bath_c": 40.0}, NextAct.DONE),
        ({"bath_c": None}, NextAct.READ),
        ({"bath_c": 72.0}, NextAct.HEAT),
        ({"bath_c": 72.0, "ph": 8.0}, NextAct.HEAT),  # heat before acid
        ({"bath_c": 80.0, "top_c": 82.0}, NextAct.TIME),  # silk: its top is enough
        ({"ph": 7.0}, NextAct.ACID),
        ({"ph": None}, NextAct.READ),
        ({}, NextAct.TIME),
        ({"longer_min": 15.0}, NextAct.LEFTOVER),
        ({"longer_min": 15.0, "ph": None}, NextAct.READ),
        ({"ph": 8.0, "habit": MILLING}, NextAct.TIME),  # time before acid
        ({"ph": None, "habit": MILLING}, NextAct.TIME),
        ({"ph": 8.0, "habit": MILLING, "longer_min": 15.0}, NextAct.ACID),
        ({"ph": 7.0, "habit": MILLING, "longer_min": 15.0}, NextAct.LEFTOVER),
        ({"ph": None, "habit": None}, NextAct.TIME),  # nobody said which class
        ({"ph": None, "habit": None, "longer_min": 20.0}, NextAct.LEFTOVER),
    ],
)
def test_the_next_act(changed: dict[str, object], act: NextAct) -> None:
    look = replace(COLOURED, **changed)  # type: ignore[arg-type]
    assert cup_advice(look=look).act is act


@pytest.mark.parametrize("habit", AcidHabit)
@pytest.mark.parametrize("ph", [4.0, 9.0])
def test_every_class_comes_to_an_end(habit: AcidHabit, ph: float) -> None:
    """Heat, then acid or time as the class wants, then what is left is written."""
    look = replace(COLOURED, habit=habit, ph=ph, bath_c=60.0)
    acts = []
    for _ in range(5):
        advice = cup_advice(look=look)
        acts.append(advice.act)
        if advice.act is NextAct.HEAT:
            look = replace(look, bath_c=92.0)
        elif advice.act is NextAct.ACID:
            look = replace(look, ph=4.0)
        else:
            look = replace(look, longer_min=look.longer_min + (advice.minutes or 0.0))
    is_fast = habit in {
        MILLING,
        AcidHabit.SUPER_MILLING,
        AcidHabit.METAL_COMPLEX_1_2,
    }
    acid = [NextAct.ACID] if ph > 8.0 else []
    order = [NextAct.TIME, *acid] if is_fast else [*acid, NextAct.TIME]
    assert acts == [NextAct.HEAT, *order, *[NextAct.LEFTOVER] * (4 - len(order))]


def test_acid_goes_in_thinned_with_the_heat_down_and_the_yarn_lifted() -> None:
    said = " ".join(cup_advice(look=replace(COLOURED, ph=7.0)).steps)
    for words in ("Turn the heat down", "Lift the yarn", "never water to acid"):
        assert words in said


@pytest.mark.parametrize(
    ("depth", "words"),
    [(0.8, "Turquoise"), (3.0, "A deep shade"), (7.0, "expect it to bleed")],
)
def test_what_stays_has_its_reason_and_leaves_the_sewer_to_those_who_may_say(
    depth: float, words: str
) -> None:
    look = replace(COLOURED, depth_percent=depth, longer_min=15.0)
    steps = cup_advice(look=look).steps
    assert steps[0].count(words) == 1
    assert "sewer authority" in steps[-1]


@pytest.mark.parametrize("left", [-1.0, 101.0])
def test_a_share_is_a_share(left: float) -> None:
    with pytest.raises(OutOfRangeError):
        cup_advice(look=replace(COLOURED, left_percent=left))
