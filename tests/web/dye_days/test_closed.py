"""Closed days are written down, named on their day, and opened again."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.workflows.days.closed_days import close_days, closed_to_come
from shadewright.workflows.stamps import today
from tests.browser import axe, goes_sideways
from tests.web.pages_read import read
from tests.workflows.bench import founded


def closed() -> str:
    return reverse("day-closed")


@pytest.mark.django_db
def test_a_closed_day_says_so_and_why(client: Client, ines: object) -> None:
    del ines
    day = today() + timedelta(days=3)
    client.post(closed(), {"first_on": day.isoformat(), "why": "Wool fair"})
    (kept,) = closed_to_come()
    assert (kept.first_on, kept.last_on) == (day, day)
    shown = read(client.get(reverse("day", args=[day])))
    assert "The studio is closed: Wool fair. No bath is planned." in shown.text
    client.post(reverse("day-open-again", args=[kept.id]))
    assert closed_to_come() == ()
    assert client.post(reverse("day-open-again", args=[kept.id])).status_code == 404


@pytest.mark.django_db
def test_days_that_cannot_be_meant_keep_what_was_typed(
    client: Client, ines: object
) -> None:
    del ines
    said = {
        "first_on": today().isoformat(),
        "last_on": (today() - timedelta(days=1)).isoformat(),
        "why": "Holidays",
    }
    answer = read(client.post(closed(), said))
    assert answer.status == 422
    assert "The last closed day must be the first one or later" in answer.text
    assert 'value="Holidays"' in answer.source
    answer = read(client.post(closed(), {"first_on": ""}))
    assert "First day is missing." in answer.text


def test_the_page_of_closed_days_is_sound(live_server: LiveServer, page: Page) -> None:
    founded()
    page.goto(live_server.url + closed())
    assert axe(page) == []
    days = [today() + timedelta(days=away) for away in (2, 9)]
    page.get_by_label("First day").fill(days[0].isoformat())
    page.get_by_label("Last day").fill(days[1].isoformat())
    page.get_by_label("Why").fill("Holidays")
    page.get_by_role("button", name="Keep it").click()
    row = page.get_by_role("row").filter(has_text="Holidays")
    expect(row).to_be_visible()
    assert axe(page) == []
    assert goes_sideways(page) == 0
    row.get_by_role("button", name="Open again").click()
    expect(page.get_by_text("No closed day is written down")).to_be_visible()
    close_days(first_on=today(), last_on=days[1])
    page.goto(live_server.url + reverse("day", args=[days[0]]))
    expect(page.get_by_text("The studio is closed.")).to_be_visible()
