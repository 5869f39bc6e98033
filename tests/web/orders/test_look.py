"""The pages of orders in a real browser: a few taps on the phone, every page sound."""

import pytest
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Base, Pot
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import Grade
from shadewright.workflows.stamps import today
from tests.browser import axe, goes_sideways
from tests.workflows.bench import founded
from tests.workflows.days.wanted import on_shelf, ordered, par_of, planned
from tests.workflows.pots import Ready, ready, tapped


@pytest.fixture
def yarn(live_server: LiveServer) -> Ready:
    """Low Tide on Fell DK in skeins of 100 g, and a pot."""
    del live_server
    founded()
    pot = ready(bottle_ml=3000.0)
    tapped(pot.number, BathAct.GIVEN_UP, "")
    Base.objects.update(skein_g=100.0)
    Pot.objects.create(name="Big pot", volume_l=20.0)
    return pot


def test_an_order_takes_three_fields_and_a_tap_on_the_phone(
    phone: Page, live_server: LiveServer, yarn: Ready
) -> None:
    del yarn
    phone.goto(f"{live_server.url}/orders/new/")
    phone.get_by_label("For whom").fill("Ada")
    phone.get_by_label("Skeins", exact=True).fill("six")
    key = phone.get_by_role("button", name="Write it down")
    box = key.bounding_box()
    assert box is not None
    assert box["height"] >= 44
    key.click()
    expect(phone.locator(":focus")).to_have_class("faults")
    expect(phone.get_by_label("For whom")).to_have_value("Ada")
    expect(phone.get_by_label("Skeins", exact=True)).to_have_value("six")
    assert axe(phone) == []
    phone.get_by_label("Colourway").select_option(label="Low Tide")
    phone.get_by_label("Skeins", exact=True).fill("6")
    phone.get_by_role("button", name="Write it down").click()
    expect(phone.get_by_role("heading", name="6 × Low Tide on Fell DK")).to_be_visible()
    phone.get_by_role("button", name="Promise").first.click()
    expect(phone.get_by_text("Promised for", exact=False).first).to_be_visible()


def test_every_page_is_sound(page: Page, live_server: LiveServer, yarn: Ready) -> None:
    line = ordered(yarn, 12, due_on=today())
    line.as_said = "like the sea in March, but not too green"
    line.save()
    on_shelf(yarn, 3, line=line)
    on_shelf(yarn, 2, grade=Grade.SECOND, line=line)
    planned(yarn, 4, line=line)
    on_shelf(yarn, 1)
    par_of(yarn, 8)
    number = line.order.number
    rooms = ("", "new/", "pars/", "to-dye/", "closed/", f"{number}/", f"{number}/edit/")
    for room in rooms:
        page.goto(f"{live_server.url}/orders/{room}")
        assert axe(page) == [], room
        assert goes_sideways(page) == 0, room
        assert page.locator("h1").count() == 1, room


def test_a_change_is_seen_with_what_it_was_and_taken_back(
    page: Page, live_server: LiveServer, yarn: Ready
) -> None:
    number = ordered(yarn, 12).order.number
    page.goto(f"{live_server.url}/orders/{number}/edit/")
    page.get_by_label("Skeins", exact=True).first.fill("9")
    page.get_by_role("button", name="Write it down").click()
    edits = page.get_by_role("region", name="What was changed")
    expect(edits).to_contain_text("9 × Low Tide on Fell DK, 100\xa0g instead of 12 ×")
    assert axe(page) == []
    assert goes_sideways(page) == 0
    edits.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("heading", name="12 × Low Tide on Fell DK")).to_be_visible()
    expect(edits).to_contain_text("taken back")
    expect(edits.get_by_role("button", name="Undo")).to_have_count(0)
    assert axe(page) == []
