"""Jobs of a day that are over by the ticks at the pot."""

import pytest

from shadewright.records.models import DaySchedule
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.day_jobs import day_jobs
from shadewright.workflows.days.day_order import day_in_order
from shadewright.workflows.stamps import today
from tests.workflows.days.planned_day import PlannedDay, planned_day
from tests.workflows.pots import tapped


@pytest.fixture
def day(db: None) -> PlannedDay:
    del db
    return planned_day()


def over(number: str) -> list[str]:
    """Return what of the day's jobs is over at a bath's pot."""
    order = day_in_order(today())
    assert order.schedule is not None
    jobs = day_jobs(order, order.schedule)
    short = number.rpartition("-")[2]
    return [x.what for x in jobs if x.is_over and x.bath.startswith(f"{short} ")]


def test_a_job_is_over_once_it_or_what_follows_it_was_ticked(day: PlannedDay) -> None:
    first = day.first
    assert over(first) == []
    tapped(first, BathAct.STARTED, "fill")
    (filled,) = over(first)
    assert filled.startswith("Fill the pot")
    tapped(first, BathAct.AT_TOP, "top")  # the doses and the heat were forgotten
    assert over(first)[1:] == [
        "Heat on",
        "Doses in, then the yarn",
        "Heat up to the top",
        "Look at 15 minutes",
        "At the top: hold",
    ]
    tapped(first, BathAct.RINSED, "rinse")
    assert over(first)[-1].startswith("Rinse and hang")
    assert over(day.second) == []


def test_all_is_over_once_the_bath_is_finished(day: PlannedDay) -> None:
    tapped(day.first, BathAct.FINISHED, "finish")
    order = day_in_order(today())
    assert order.schedule is not None
    short = f"{day.first.rpartition('-')[2]} "
    jobs = [x for x in day_jobs(order, order.schedule) if x.bath.startswith(short)]
    assert jobs
    assert all(each.is_over for each in jobs)


@pytest.mark.usefixtures("day")
def test_a_pot_is_emptied_before_it_is_washed_out_and_filled() -> None:
    """Washing out may take no time: in one minute all three stand in their turn."""
    row = DaySchedule.objects.get()
    first, second = row.plan["baths"]
    ten = second["stages"][0]["start_min"]
    first["stages"][-1] |= {"start_min": ten, "end_min": ten + 4}
    place = {"pot": second["pot"], "before": second["name"], "person": "Ines"}
    row.plan["washouts"] = [{**place, "start_min": ten, "end_min": ten}]
    row.save()
    order = day_in_order(today())
    assert order.schedule is not None
    jobs = day_jobs(order, order.schedule)
    at_ten = [x.what.partition(" ")[0] for x in jobs if x.at == "10:00"]
    assert at_ten == ["Rinse", "Wash", "Fill"]
