"""A dye day from an order to the evening: who wants it, in which pot, how it went.

An order is written down and put on today, the day is planned, its cards are printed;
the pot is seen to on a phone, the lot is written, and the last page lays the plan
beside what was done. The desk is as wide as a desk, the phone as narrow as a phone.
"""

import re
from datetime import datetime, timedelta

import pytest
import time_machine
from django.utils import timezone
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Base, Bath
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.days.room import Room, keep_room
from shadewright.workflows.stamps import today
from tests.fingers import Finger
from tests.journeys.test_jar_to_bottle import press, sound
from tests.workflows.days.rooms import dyehouse
from tests.workflows.pots import tapped

pytestmark = pytest.mark.django_db(transaction=True)


def test_from_an_order_to_the_evening(
    live_server: LiveServer, desk: Page, phone: Page
) -> None:
    with time_machine.travel(in_the_morning(), tick=True):
        the_day(live_server.url, desk, phone)


def in_the_morning() -> datetime:
    """Return nine o'clock of today: late at night no day has room for a bath."""
    return timezone.localtime().replace(hour=9, minute=0, second=0, microsecond=0)


def the_day(address: str, desk: Page, phone: Page) -> None:
    dyehouse()
    tapped(Bath.objects.get().number, BathAct.GIVEN_UP, "")
    Base.objects.update(skein_g=100.0)
    keep_room(Room(cools_overnight=False))
    order(desk, address)
    number = put_on_today(desk)
    plan(desk)
    the_cards_answer(desk)
    dye(phone, address, number)
    the_evening(desk, address, number)


def order(desk: Page, address: str) -> None:
    """Write down who wants what."""
    desk.goto(f"{address}/orders/new/", timeout=60_000)  # the first page of all
    desk.get_by_label("For whom").fill("The Tuesday knitters")
    desk.get_by_label("Colourway").select_option(label="Low Tide")
    desk.get_by_label("Skeins", exact=True).fill("2")
    press(desk, "Write it down")
    expect(desk.get_by_text("2 to dye.")).to_be_visible()
    sound(desk)


def put_on_today(desk: Page) -> str:
    """Lead from the order to the baths of a day, and return the only bath’s number."""
    desk.get_by_role("link", name="Put on a day").click()
    expect(desk).to_have_url(re.compile(rf"/days/{today() + timedelta(days=1)}/add/"))
    desk.goto(desk.url.replace(str(today() + timedelta(days=1)), str(today())))
    told = desk.get_by_role("status").filter(has_text="bath")
    expect(told).to_contain_text("1 bath, 200 g, 2 skeins.")
    press(desk, "Put these baths on the day")
    expect(desk.get_by_role("heading", name="Stock for the day")).to_be_visible()
    sound(desk)
    desk.get_by_role("navigation", name="Above this page").get_by_role(
        "link"
    ).last.click()
    row = desk.get_by_role("rowheader").locator(".lot-number")
    expect(row).to_have_text(re.compile(r"^\d{6}-B\d$"))
    return row.inner_text()


def plan(desk: Page) -> None:
    press(desk, "Plan the day")
    expect(desk.get_by_role("heading", name="Lanes")).to_be_visible()
    expect(desk.get_by_text(re.compile(r"No plan of this day can end"))).to_be_visible()
    sound(desk)


def the_cards_answer(desk: Page) -> None:
    address = desk.get_by_role("link", name="Cards").first.get_attribute("href")
    base = desk.url.partition("/days/")[0]
    answer = desk.context.request.get(f"{base}{address}")
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.body().startswith(b"%PDF")


def dye(phone: Page, address: str, number: str) -> None:
    """See to the pot with one thumb: start, the doses, heat on and off, the lot."""
    finger = Finger(phone)
    phone.goto(f"{address}/bench/")
    expect(phone.locator("main")).to_contain_text("Low Tide")
    sound(phone)
    phone.get_by_role("link", name=re.compile(r"Low Tide")).first.click()
    for each in bath_now(number).steps[:-1]:
        title = phone.get_by_role("heading", name=each.step.title)
        expect(title.first).to_be_visible()
        finger("Done")
    finger("Write the lot", role="link")
    sound(phone)
    finger("Write the lot")
    expect(phone.locator("h1")).to_contain_text(number)


def the_evening(desk: Page, address: str, number: str) -> None:
    """See the plan beside what was done, and say that all is off."""
    desk.goto(f"{address}/days/{today()}/after/")
    bath = desk.locator("summary").filter(has_text="Low Tide")
    bath.first.click()
    expect(desk.get_by_role("rowheader", name="Heat on")).to_be_visible()
    expect(desk.get_by_role("link", name=re.compile(r"^The bath"))).to_have_attribute(
        "href", re.compile(number)
    )
    sound(desk)
    desk.get_by_role("link", name="All off").first.click()
    press(desk, "All off")
    expect(desk.get_by_role("status").first).to_contain_text("All off")
