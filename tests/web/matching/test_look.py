"""Finding a recipe in a browser: sound at both sizes, watched, cancelled, by keys."""

import pytest
from playwright.sync_api import Locator, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.web.matching import searches
from tests.browser import axe, goes_sideways
from tests.workflows.shades.studios import Fitted

MOST_PX = 640
"""A closed answer is less than what a phone shows between its two bars."""


def test_page_with_answers_is_sound(
    page: Page, live_server: LiveServer, studio: Fitted
) -> None:
    """The form opened, all folds opened, the answers below or beside it."""
    page.goto(f"{live_server.url}/shades/find/?colour=80,-70,60&base={studio.base.pk}")
    expect(page.get_by_role("heading", name="1. As near as it comes")).to_be_visible()
    closed = page.locator("details:not([open]) > summary:visible")
    while closed.count():
        closed.first.click()
    page.get_by_label("A spectrum", exact=True).check()
    expect(page.locator(".way-spectrum textarea")).to_be_visible()
    expect(page.locator("[data-typed]")).to_be_hidden()
    assert axe(page) == []
    assert goes_sideways(page) == 0


def test_the_first_answer_is_open_and_others_are_short_until_opened(
    phone: Page, live_server: LiveServer, studio: Fitted
) -> None:
    """Pair, words, chance and depths; the rest opens by a key and tells all."""
    phone.goto(f"{live_server.url}/shades/find/?colour=%23556f4a&base={studio.base.pk}")
    first, other = (phone.locator("article.answer").nth(n) for n in (0, 1))
    tells_all(first, studio)
    assert other.evaluate("one => one.offsetHeight") < MOST_PX
    expect(other.get_by_text("of such pots come within")).to_be_visible()
    expect(other.get_by_text("Lamp", exact=True)).to_be_hidden()
    assert axe(phone) == []
    other.locator("summary").focus()
    phone.keyboard.press("Enter")
    tells_all(other, studio)
    assert goes_sideways(phone) == 0


def tells_all(answer: Locator, studio: Fitted) -> None:
    """See the bottle, the other lights and what the pot usually gives."""
    bottle = answer.get_by_role("link", name=studio.pot.gorse, exact=True)
    expect(bottle).to_be_visible()
    expect(answer.get_by_text("Lamp", exact=True)).to_be_visible()
    expect(answer.get_by_text("in the pot usually")).to_be_visible()


def test_search_is_watched_and_cancelled(
    desk: Page,
    live_server: LiveServer,
    studio: Fitted,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The panel turns into the answers by itself; Cancel ends another search."""
    monkeypatch.setattr(searches, "FIRST_WAIT_S", 0.0)
    places = searches.SEARCHES.places
    places.acquire()
    places.acquire()
    base = studio.base.pk
    desk.goto(f"{live_server.url}/shades/find/?colour=%23556f4a&base={base}")
    expect(desk.get_by_role("progressbar")).to_be_visible()
    assert axe(desk, inside="main") == []
    places.release()
    first = desk.get_by_role("heading", name="1. Most likely to come out right")
    expect(first).to_be_visible()
    places.acquire()
    desk.goto(f"{live_server.url}/shades/find/?colour=%23a0522d&base={base}")
    desk.get_by_role("button", name="Cancel").click()
    expect(desk.get_by_text("Stopped. Press Find to look again.")).to_be_visible()
    for _place in range(2):
        places.release()
