"""What is said of a plan when the room is otherwise by now."""

from collections.abc import Callable
from datetime import time, timedelta

import pytest

from shadewright.records.models import (
    Circuit,
    DayOutage,
    DyeDay,
    DyeRoom,
    HeatSource,
    Pot,
    Studio,
)
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.moved_on import moved_on
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.days.rooms import dyehouse


def later_hours() -> None:
    DyeRoom.objects.create(studio=Studio.objects.get(), closes_at=time(20))


def weaker_fuse() -> None:
    Circuit.objects.update(limit_kw=2.0)


def another_pot() -> None:
    Pot.objects.create(name="Pot 9", volume_l=4.0)


def stronger_burner() -> None:
    HeatSource.objects.filter(name="Plate A").update(power_kw=3.0)


def pot_out() -> None:
    DayOutage.objects.create(dye_day=DyeDay.objects.get(), pot=Pot.objects.all()[0])


CHANGES: dict[Callable[[], None], tuple[str, ...]] = {
    later_hours: ("the hours", "who is in"),
    weaker_fuse: ("the fuses",),
    another_pot: ("the pots",),
    stronger_burner: ("the burners",),
    pot_out: ("what is out",),
}


@pytest.mark.django_db
@pytest.mark.parametrize("change", CHANGES)
def test_each_change_is_named_until_the_day_is_planned_again(
    change: Callable[[], None],
) -> None:
    day = today() + timedelta(days=1)
    dyehouse().bath(day)
    assert moved(day_planned_anew=True) == ()
    change()
    assert moved() == CHANGES[change]
    assert moved(day_planned_anew=True) == ()


def moved(*, day_planned_anew: bool = False) -> tuple[str, ...]:
    day = today() + timedelta(days=1)
    if day_planned_anew:
        make_plan(day=day, stamp=stamp_now(by=None), seconds=0.02)
    now = day_now(day)
    assert now.schedule is not None
    return moved_on(now, now.schedule)
