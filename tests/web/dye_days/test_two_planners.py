"""Two people plan one day: nobody's plan is lost under a page that did not show it."""

import re
from datetime import date, timedelta
from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.errors import ConflictError
from shadewright.records.models import DayOutage, DaySchedule
from shadewright.web.dye_days import plan_views
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.scheduling import found_plan, keep_plan, make_plan
from shadewright.workflows.stamps import stamp_now, today
from tests.browser import axe, goes_sideways
from tests.web.dye_days.quickly import plan_quickly
from tests.web.pages_read import Answer, read
from tests.workflows.days.rooms import Dyehouse, dyehouse


@pytest.fixture
def house(db: None, monkeypatch: pytest.MonkeyPatch) -> Dyehouse:
    """A dyehouse where no plan is looked for longer than a moment."""
    del db
    plan_quickly(monkeypatch, plan_views)
    return dyehouse()


def tomorrow() -> date:
    return today() + timedelta(days=1)


def planned_elsewhere() -> None:
    make_plan(day=tomorrow(), stamp=stamp_now(by=None), seconds=0.02)


def sent(client: Client, name: str, **said: str) -> Answer:
    address = reverse(name, args=[tomorrow()])
    return read(client.post(address, {"deed": str(uuid4()), **said}, follow=True))


def test_a_plan_is_not_made_over_one_that_the_page_did_not_show(
    client: Client, house: Dyehouse
) -> None:
    house.bath(tomorrow())
    first = read(client.get(reverse("day", args=[tomorrow()])))
    assert 'name="held" value="0"' in first.source
    planned_elsewhere()
    shown = sent(client, "day-plan", act="plan", held="0")
    assert shown.status == 409
    assert re.search(r"planned this day at \d\d:\d\d, after what you saw", shown.text)
    assert "Plan it again" in shown.text  # the way on, with the plan that holds
    assert DaySchedule.objects.count() == 1
    (held,) = re.findall(r'name="held" value="(\d+)"', shown.source)[:1]
    assert sent(client, "day-plan", act="plan", held=held).status == 200
    assert DaySchedule.objects.count() == 2


def test_nothing_goes_out_of_use_with_a_plan_that_was_refused(
    client: Client, house: Dyehouse
) -> None:
    house.bath(tomorrow())
    planned_elsewhere()
    thing = f"source-{house.sources[0].pk}"
    shown = sent(client, "day-replan", act="out", thing=thing, held="0")
    assert shown.status == 409
    assert not DayOutage.objects.exists()


def test_a_plan_that_was_searched_while_another_came_is_let_go(
    house: Dyehouse,
) -> None:
    house.bath(tomorrow())
    now = day_now(tomorrow())
    found = found_plan(now, seconds=0.02)
    planned_elsewhere()
    with pytest.raises(ConflictError, match="planned this day at"):
        keep_plan(found, tomorrow(), stamp_now(by=None))
    assert DaySchedule.objects.count() == 1


def test_whoever_comes_second_sees_the_plan_that_holds_and_may_plan_again(
    live_server: LiveServer, page: Page, transactional_db: None
) -> None:
    del transactional_db
    dyehouse().bath(tomorrow())
    page.goto(live_server.url + reverse("day", args=[tomorrow()]))
    planned_elsewhere()
    page.get_by_role("button", name="Plan the day").click()
    note = page.locator(".caution-note").filter(has_text="Not planned")
    expect(note).to_contain_text("after what you saw. Look at that plan first")
    assert axe(page) == []
    assert goes_sideways(page) == 0
    page.get_by_role("button", name="Plan it again").click()
    expect(note).to_have_count(0)
    assert DaySchedule.objects.count() == 2
