"""A planned day in a real browser: sound on every screen, and a bar can be dragged."""

from datetime import timedelta

import pytest
from django.urls import reverse
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import DayWish
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import stamp_now, today
from tests.browser import axe, goes_sideways
from tests.workflows.days.rooms import dyehouse


@pytest.fixture
def address(live_server: LiveServer, transactional_db: None) -> str:
    """The address of tomorrow, planned with two baths."""
    del transactional_db
    house, tomorrow = dyehouse(), today() + timedelta(days=1)
    house.bath(tomorrow)
    house.bath(tomorrow, due_at="17:00")
    make_plan(day=tomorrow, stamp=stamp_now(by=None), seconds=0.02)
    return live_server.url + reverse("day", args=[tomorrow])


def test_a_planned_day_is_sound(address: str, page: Page) -> None:
    page.goto(address)
    expect(
        page.get_by_role("img", name="Lanes of").locator("visible=true")
    ).to_be_visible()
    assert goes_sideways(page) == 0
    assert axe(page) == []


def test_a_bar_is_dragged_to_another_time(address: str, desk: Page) -> None:
    desk.goto(address)
    bar = desk.locator(".lanes.wide .bath").first
    box = bar.locator("rect").first.bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    hour = desk.evaluate(
        "() => { const lanes = document.querySelector('.lanes.wide');"
        " return 60 * lanes.dataset.perMin * lanes.getScreenCTM().a; }"
    )
    desk.mouse.move(x, y)
    desk.mouse.down()
    desk.mouse.move(x + hour, y, steps=4)
    desk.mouse.up()
    expect(desk.get_by_text("was pinned").first).to_be_visible()
    assert DayWish.objects.filter(starts_at__isnull=False).count() == 1
