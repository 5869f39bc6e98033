"""A better plan, looked for with patience: what of it is kept, and what is let go."""

from collections.abc import Callable
from datetime import date, timedelta
from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.core.planning import Tried
from shadewright.records.models import DaySchedule
from shadewright.web.dye_days import patience, plan_views
from shadewright.workflows.days.day_now import DayNow
from shadewright.workflows.days.scheduling import Found, found_plan
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.stamps import stamp_now, today
from tests.web.dye_days.quickly import plan_quickly
from tests.web.pages_read import Answer, read
from tests.workflows.days.rooms import Dyehouse, dyehouse


@pytest.fixture
def house(db: None, monkeypatch: pytest.MonkeyPatch) -> Dyehouse:
    """A dyehouse where nobody has more patience than a moment."""
    del db
    plan_quickly(monkeypatch, plan_views)
    monkeypatch.setattr(patience, "PATIENT_SECONDS", 0.02)
    monkeypatch.setattr(patience.begin, "__kwdefaults__", {"seconds": 0.02})
    return dyehouse()


def tomorrow() -> date:
    return today() + timedelta(days=1)


def page(client: Client) -> Answer:
    return read(client.get(reverse("day", args=[tomorrow()])))


def sent(client: Client, name: str, **said: str) -> Answer:
    address = reverse(name, args=[tomorrow()])
    return read(client.post(address, {"deed": str(uuid4()), **said}, follow=True))


def planned(client: Client) -> Answer:
    return sent(client, "day-plan", act="plan")


def test_patience_keeps_only_what_is_better(client: Client, house: Dyehouse) -> None:
    house.bath(tomorrow())
    planned(client)
    shown = sent(client, "day-plan", act="patience")
    assert "No better plan was found" in shown.text
    assert DaySchedule.objects.count() == 1
    assert "The search is over" in page(client).text
    planned(client)
    assert "The search is over" not in page(client).text


def test_a_stopped_search_looks_no_further(house: Dyehouse) -> None:
    del house
    patience.stop(tomorrow())  # nobody looks: nothing happens
    search = patience.Search(seconds=60.0)
    patience._SEARCHES[tomorrow()] = search
    patience.stop(tomorrow())
    assert search.is_stopped
    assert patience.search_of(tomorrow()) is search
    search.ended = 0.0
    assert patience.search_of(tomorrow()) is None  # ended long ago
    patience.forget(tomorrow())
    assert patience.search_of(tomorrow()) is None


def test_a_plan_without_the_bath_that_came_is_never_the_better(
    client: Client, house: Dyehouse
) -> None:
    house.bath(tomorrow(), pot=house.pots[0])
    planned(client)
    house.bath(tomorrow(), pot=house.pots[0])
    shown = sent(client, "day-plan", act="patience")
    assert "A better plan holds now, with 2 baths in it" in shown.text
    newest = DaySchedule.objects.first()
    assert newest is not None
    assert len(newest.plan["baths"]) == 2


def test_a_search_is_let_go_when_its_bath_is_given_up_meanwhile(
    client: Client, house: Dyehouse, monkeypatch: pytest.MonkeyPatch
) -> None:
    number = house.bath(tomorrow())
    house.bath(tomorrow())

    def slowly(
        now: DayNow, *, seconds: float, is_wanted: Callable[[Tried], bool]
    ) -> Found:
        found = found_plan(now, seconds=seconds, is_wanted=is_wanted)
        give_up(number=number, why="", stamp=stamp_now(by=None))
        return found

    monkeypatch.setattr(patience, "found_plan", slowly)
    shown = sent(client, "day-plan", act="patience")
    assert "was changed meanwhile" in shown.text
    assert DaySchedule.objects.count() == 0


def test_a_search_that_a_busy_computer_cut_short_says_so(
    client: Client, house: Dyehouse
) -> None:
    house.bath(tomorrow())
    planned(client)
    assert "computer was busy" not in page(client).text
    row = DaySchedule.objects.latest("pk")
    DaySchedule.objects.filter(pk=row.pk).update(
        plan=row.plan | {"stopped_by_clock": True}
    )
    assert "fewer plans were looked at" in page(client).text
