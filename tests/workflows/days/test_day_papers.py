"""The papers of a day say what its plan and its baths say, in the plan's order."""

from datetime import time, timedelta

import pytest

from shadewright.errors import MissingError
from shadewright.records.models import (
    Bath,
    BathDose,
    DaySchedule,
    DyeDay,
    RecipeAuxiliary,
)
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.day_order import clock, day_in_order
from shadewright.workflows.days.pulling import pull_list
from shadewright.workflows.days.sheets import day_cards, day_sheet
from shadewright.workflows.days.soaking import soak_list
from shadewright.workflows.stamps import today
from tests.paper.pictures import words_on
from tests.workflows.bench import founded
from tests.workflows.days.planned_day import PlannedDay, planned_day
from tests.workflows.pots import tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def day() -> PlannedDay:
    return planned_day()


def test_baths_stand_in_the_order_of_the_plan(day: PlannedDay) -> None:
    baths = day_in_order(today()).baths
    assert [each.bath.number for each in baths] == [day.first, day.second]
    times = {key: clock(at) for key, at in baths[0].times.items()}
    assert times["fill"] == "08:00"
    assert times["dose-1"] == "08:15"
    assert times["heat"] == "08:21"  # the rise: the water was warmed before
    assert times["top"] == "09:11"
    assert times["off"] == "09:43"


def test_without_a_plan_they_stand_by_number_and_have_no_time() -> None:
    day = planned_day(is_planned=False)
    baths = day_in_order(today()).baths
    assert [each.bath.number for each in baths] == [day.second, day.first]
    assert [each.times for each in baths] == [{}, {}]
    assert "No plan was made for this day" in words_on(day_sheet(today()))
    assert "Jobs by the clock" not in words_on(day_sheet(today()))


def test_a_bath_that_was_given_up_is_on_no_paper(day: PlannedDay) -> None:
    tapped(day.first, BathAct.GIVEN_UP, "")
    for paper in (day_sheet, day_cards, soak_list, pull_list):
        assert day.first not in words_on(paper(today())), paper


@pytest.mark.usefixtures("day")
def test_the_day_sheet_has_lanes_jobs_and_baths() -> None:
    words = words_on(day_sheet(today()))
    for part in (
        "Ines 08:00 to 18:00, Tam 08:00 to 18:00",
        "Circuit A 1.8 kW at most, of 3.5 kW",
        "Burner 1",
        "09:41 look, heat off",
        "08:15 B2 Low Tide Doses in, then the yarn Pot 12 l on Burner 1 Ines",
        "11:41 B1 Low Tide Look at the bath, heat off. Stays in its pot overnight",
        "Rinse and hang 2 skeins",
        "next day",
    ):
        assert part in words, part


def test_doses_may_be_counted_to_the_filling(day: PlannedDay) -> None:
    row = DaySchedule.objects.get()
    stages = row.plan["baths"][0]["stages"]
    for stage, starts, ends in (("fill", 0, 21), ("heat", 21, 21), ("dose", 21, 21)):
        found = next(each for each in stages if each["stage"] == stage)
        found.update(start_min=starts, end_min=ends)
    row.save()
    words = words_on(day_sheet(today()))
    assert f"08:00 {day.first[7:]} Low Tide Fill the pot, 5.82 l, doses in" in words
    assert "Heat on, to the top" in words
    times = day_in_order(today()).baths[0].times
    assert "dose-1" not in times
    assert clock(times["heat"]) == "08:21"


def test_what_was_left_to_cool_is_rinsed_and_gets_no_card(day: PlannedDay) -> None:
    before = today() - timedelta(days=1)
    Bath.objects.filter(number=day.first).update(dyed_on=before)
    words = words_on(day_sheet(today()))
    assert f"11:43 {day.first} Low Tide Rinse and hang 2 skeins" in words
    assert "11:43 B2" not in words  # today's own B2 may be on the heat
    assert f"{day.first} Low Tide Fill the pot" not in words
    assert day.first not in words_on(day_cards(today()))


def test_cards_are_in_order_and_say_when(day: PlannedDay) -> None:
    words = words_on(day_cards(today()))
    assert words.index(day.first) < words.index(day.second)
    for part in ("1 of 2", "2 of 2", "Burner 1", "plan 08:15", "plan 10:15"):
        assert part in words, part


def test_the_soak_list_says_when_the_yarn_goes_under_water(day: PlannedDay) -> None:
    words = words_on(soak_list(today()))
    assert f"09:30 {day.second} Low Tide Fell DK 2 100 g" in words
    # its pot is filled at 08:00, when the day opens
    assert f"Day before {day.first} Low Tide Fell DK 2 200 g" in words
    assert "it soaks overnight" in words
    DyeDay.objects.update(opens_at=time(7, 30))
    words = words_on(soak_list(today()))
    assert f"07:30 {day.first} Low Tide Fell DK 2 200 g" in words
    assert "overnight" not in words


def test_a_bath_that_has_begun_is_soaked(day: PlannedDay) -> None:
    tapped(day.first, BathAct.STARTED, "fill")
    assert day.first not in words_on(soak_list(today()))
    tapped(day.second, BathAct.STARTED, "fill")
    with pytest.raises(MissingError, match="that has not begun"):
        soak_list(today())


def test_the_pull_list_sums_a_bottle_over_the_baths(day: PlannedDay) -> None:
    words = words_on(pull_list(today()))
    slate = f"{day.pot.slate} Slate 1 % 180 ml 500 ml B2 120 ml, B1 60 ml look first"
    assert slate in words
    assert "Citric acid 6 g B2 4 g, B1 2 g" in words
    assert "Weighed dry" not in words


def test_what_is_in_is_pulled_no_more(day: PlannedDay) -> None:
    tapped(
        day.first,
        BathAct.DOSED,
        "dose-1",
        value=120.0,
        unit="ml",
        bottle=day.pot.slate,
    )
    assert f"{day.pot.slate} Slate 1 % 60 ml 380 ml B1 60 ml" in words_on(
        pull_list(today())
    )


def test_nothing_is_pulled_once_the_heat_is_off(day: PlannedDay) -> None:
    tapped(day.first, BathAct.HEAT_OFF, "off")
    assert "B2 " not in words_on(pull_list(today()))


def test_the_pull_list_says_what_a_bottle_lacks(day: PlannedDay) -> None:
    BathDose.objects.filter(dye_id=day.pot.slate_dye).update(volume_ml=300.0)
    # 600 ml of 500, of which the last 10 ml are left in the bottle
    assert "look first, short by 110 ml" in words_on(pull_list(today()))


def test_dry_dye_is_weighed_with_its_caution(day: PlannedDay) -> None:
    BathDose.objects.filter(dye_id=day.pot.gorse_dye).update(
        bottle=None, volume_ml=None
    )
    words = words_on(pull_list(today()))
    assert "Weighed dry" in words
    assert "Gorse 0.9 g B2 0.6 g, B1 0.3 g" in words
    assert "respirator" in words


@pytest.mark.usefixtures("day")
def test_two_halves_of_an_acid_are_one_bottle() -> None:
    RecipeAuxiliary.objects.update(when="two halves")
    assert "Citric acid 6 g B2 2 g, B2 2 g, B1 1 g, B1 1 g" in words_on(
        pull_list(today())
    )


@pytest.mark.parametrize("paper", [day_sheet, day_cards, soak_list, pull_list])
def test_a_day_without_a_bath_says_so(paper: object) -> None:
    founded()
    assert callable(paper)
    with pytest.raises(MissingError, match="A bath"):
        paper(today())
