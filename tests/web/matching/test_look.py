"""Finding a recipe in a browser: sound at both sizes, watched, cancelled, by keys."""

import pytest
from playwright.sync_api import Page, expect
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
    for fold in page.locator("summary").all():
        fold.click()
    page.get_by_label("A spectrum", exact=True).check()
    expect(page.locator(".way-spectrum textarea")).to_be_visible()
    expect(page.locator("[data-typed]")).to_be_hidden()
    assert axe(page) == []
    assert goes_sideways(page) == 0


def test_answers_are_short_until_one_is_opened(
    phone: Page, live_server: LiveServer, studio: Fitted
) -> None:
    """Pair, words, chance and depths; the rest opens by a key and tells all."""
    phone.goto(f"{live_server.url}/shades/find/?colour=%23556f4a&base={studio.base.pk}")
    answers = phone.locator("article.answer")
    expect(answers.first.get_by_text("of such pots come within")).to_be_visible()
    heights = answers.evaluate_all("all => all.map(one => one.offsetHeight)")
    assert len(heights) > 1
    assert max(heights) < MOST_PX
    assert axe(phone) == []
    bottle = answers.first.get_by_role("link", name=studio.pot.gorse, exact=True)
    lamp = answers.first.get_by_text("Lamp", exact=True)
    expect(lamp).to_be_hidden()
    answers.first.locator("summary").focus()
    phone.keyboard.press("Enter")
    expect(bottle).to_be_visible()
    expect(lamp).to_be_visible()
    expect(answers.first.get_by_text("in the pot usually")).to_be_visible()
    assert goes_sideways(phone) == 0


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
