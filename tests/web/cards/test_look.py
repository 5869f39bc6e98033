"""A card typed back in a real browser: by keys alone, and as planned by one key."""

import pytest
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.workflows.bath_pages import bath_now
from tests.browser import axe, goes_sideways
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready


@pytest.fixture
def planned(transactional_db: None) -> Ready:
    """A bath of today whose card lies on the desk."""
    del transactional_db
    founded()
    return ready()


def address(live_server: LiveServer, planned: Ready) -> str:
    return f"{live_server.url}/baths/{planned.number}/card/"


def sound(page: Page) -> None:
    assert axe(page) == []
    assert goes_sideways(page) == 0


def test_it_is_sound(live_server: LiveServer, page: Page, planned: Ready) -> None:
    page.goto(address(live_server, planned))
    sound(page)
    page.get_by_label("really").nth(1).fill("sixty")
    page.get_by_role("button", name="Write it down").click()
    expect(page.get_by_text("Not written down yet")).to_be_visible()
    sound(page)


def test_it_is_sound_in_the_dark_and_on_a_narrow_phone(
    live_server: LiveServer, desk: Page, planned: Ready
) -> None:
    desk.emulate_media(color_scheme="dark")
    desk.set_viewport_size({"width": 320, "height": 700})
    desk.goto(address(live_server, planned))
    sound(desk)


def test_as_planned_is_one_key(
    live_server: LiveServer, desk: Page, planned: Ready
) -> None:
    desk.goto(address(live_server, planned))
    desk.keyboard.press("Enter")
    desk.wait_for_url(f"{live_server.url}/baths/{planned.number}/finish/")
    assert all(each.is_done for each in bath_now(planned.number).steps[:-1])


def test_enter_goes_to_the_next_line_and_writes_at_the_end(
    live_server: LiveServer, desk: Page, planned: Ready
) -> None:
    desk.goto(address(live_server, planned))
    desk.get_by_label("really").first.focus()
    desk.keyboard.press("Enter")
    desk.keyboard.type("61")
    for _ in bath_now(planned.number).steps[1:]:
        desk.keyboard.press("Enter")
    expect(desk.get_by_label("Notes")).to_be_focused()
    desk.keyboard.type("Even")
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("button", name="Write it down")).to_be_focused()
    assert not bath_now(planned.number).standing
    desk.keyboard.press("Enter")
    desk.wait_for_url(f"{live_server.url}/baths/{planned.number}/finish/")
    (slate,) = bath_now(planned.number).steps[1].ticks
    assert slate.value == 61.0
