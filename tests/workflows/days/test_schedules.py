"""The plan of a day is read back with times of its day."""

from datetime import date, datetime
from uuid import uuid4

import pytest
from django.utils import timezone

from shadewright.core.planning import Stage
from shadewright.records.models import DaySchedule, DyeDay
from shadewright.workflows.days.schedules import schedule_of

pytestmark = [pytest.mark.store, pytest.mark.django_db]

DAY = date(2026, 11, 26)
ASKED = {"start": "07:30", "end": "18:00"}
PLAN = {
    "baths": [
        {
            "name": "261126-B1",
            "pot": "P1",
            "source": "S1",
            "stages": [
                {"stage": "fill", "start_min": 0, "end_min": 5, "person": "Ines"},
                {"stage": "heat", "start_min": 5, "end_min": 35, "person": None},
            ],
            "touches": [{"start_min": 20, "end_min": 22, "person": "Ines"}],
        }
    ],
    "washouts": [
        {
            "pot": "P1",
            "before": "261126-B2",
            "start_min": 90,
            "end_min": 100,
            "person": "Ines",
        }
    ],
    "left_out": [{"name": "261126-B2", "why": "What runs out: a source of heat."}],
    "end_min": 95.5,
    "bound_min": 90,
    "proved": False,
    "hands_min": 7,
    "peak_kw_by_circuit": {"A": 1.8},
}


def at(hour: int, minute: int, second: int = 0) -> datetime:
    clock = datetime(2026, 11, 26, hour, minute, second)  # ruff: ignore[call-datetime-without-tzinfo]
    return timezone.make_aware(clock)


def kept(**changed: object) -> None:
    row, _is_new = DyeDay.objects.get_or_create(day=DAY)
    plan = PLAN | changed
    DaySchedule.objects.create(
        dye_day=row, deed=uuid4(), asked=ASKED, plan=plan, method="by hand"
    )


def test_a_day_without_a_plan_has_none() -> None:
    assert schedule_of(DAY) is None


def test_minutes_become_times_of_the_day() -> None:
    kept()
    found = schedule_of(DAY)
    assert found is not None
    bath = found.bath("261126-B1")
    assert bath is not None
    heat = bath.stage(Stage.HEAT)
    assert heat is not None
    assert (heat.starts_at, heat.ends_at, heat.person) == (at(7, 35), at(8, 5), "")
    assert bath.stage(Stage.RINSE) is None
    assert bath.touches[0].starts_at == at(7, 50)
    assert found.ends_at == at(9, 5, 30)
    assert found.closes_at == at(18, 0)
    assert found.washouts[0].ends_at == at(9, 10)
    assert found.left_out[0].number == "261126-B2"
    assert found.peak_kw == {"A": 1.8}


def test_the_newest_plan_holds() -> None:
    kept()
    kept(end_min=60)
    found = schedule_of(DAY)
    assert found is not None
    assert found.ends_at == at(8, 30)
