"""A day told in a real browser: sound in two windows, and its keys in reach."""

import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models.baths import BathAct
from shadewright.workflows.stamps import today
from tests.browser import LOOKS, axe, goes_sideways, watched_page
from tests.workflows.days.planned_day import planned_day
from tests.workflows.pots import ago, tapped


def hung() -> str:
    """Return a bath that went through to the rack, beside one that did not."""
    day = planned_day()
    tapped(day.first, BathAct.STARTED, "fill", at=ago(minutes=30))
    tapped(day.first, BathAct.HEAT_ON, "heat", at=ago(minutes=20))
    tapped(day.first, BathAct.HEAT_OFF, "off", at=ago(minutes=10))
    tapped(day.first, BathAct.HUNG, "rack", at=ago(minutes=1))
    return day.first


def check(page: Page, address: str) -> None:
    page.goto(address)
    assert axe(page) == []
    assert goes_sideways(page) == 0


@pytest.mark.parametrize("look", ["narrow", "desk"])
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, look: str
) -> None:
    hung()
    size, scheme = LOOKS[look]
    with watched_page(browser, size, scheme=scheme) as page:
        for name in ("after", "off"):
            check(page, f"{live_server.url}/days/{today()}/{name}/")
        check(page, f"{live_server.url}/rack/")


def test_dry_and_undo_with_one_tap_each(live_server: LiveServer, phone: Page) -> None:
    number = hung()
    phone.goto(f"{live_server.url}/rack/")
    phone.get_by_role("button", name="Dry, off the rack").click()
    expect(phone.get_by_text(f"{number}: dry, off the rack")).to_be_visible()
    phone.get_by_role("button", name="Undo").click()
    expect(phone.get_by_role("button", name="Dry, off the rack")).to_be_visible()
