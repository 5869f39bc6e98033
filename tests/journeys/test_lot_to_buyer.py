"""From a lot to its verdict, its tags and whoever has it, and to the same again.

A buyer writes that the yarn bleeds: the complaint leads to everybody who has yarn of
the same bath, bottle and jar. A shop wants the same again: an old skein leads to its
lot, and that to what to dye now. At the desk and on a phone.
"""

import csv
import io

import pytest
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from tests.journeys.test_jar_to_bottle import press, sound
from tests.workflows.bench import founded
from tests.workflows.correcting.off_lots import off_lot
from tests.workflows.judging.checked import held_to_standard

pytestmark = pytest.mark.django_db(transaction=True)


def test_a_lot_gets_its_verdict_and_its_tags(
    live_server: LiveServer, page: Page
) -> None:
    _pot, _standard, lot = held_to_standard()
    page.goto(f"{live_server.url}/lots/{lot}/")
    page.get_by_role("link", name="Check it dry").click()
    page.get_by_label("Spots").fill("51.6, 0, 0\n51.5, 0, 0\n\n51.6, 0, 0\n51.7, 0, 0")
    page.get_by_label("Read by a meter").check()
    press(page, "Check it")
    expect(page.get_by_role("heading", name="Verdict")).to_be_visible()
    sound(page)
    press(page, "Alternate skeins")
    expect(page.get_by_text("Decided:")).to_be_visible()
    page.goto(f"{live_server.url}/lots/{lot}/")
    page.get_by_role("link", name="Tags").click()
    expect(page.get_by_text("It lacks:")).to_be_visible()
    sound(page)
    asked = f"{live_server.url}/lots/{lot}/tags.pdf?count=4&shape=band&paper=a4"
    answer = page.context.request.get(asked)
    assert answer.body().startswith(b"%PDF")


def test_a_complaint_leads_to_the_recall_list(
    live_server: LiveServer, page: Page
) -> None:
    founded()
    _pot, lot = off_lot()
    send_skeins(page, f"{live_server.url}/lots/{lot}/", "The fair at the mill")
    page.goto(f"{live_server.url}/lots/")
    page.get_by_role("link", name="Complaints").click()
    page.get_by_role("link", name="A complaint came").click()
    page.get_by_label("From whom").fill("Ana")
    page.get_by_label("It bleeds").check()
    page.get_by_label("Lot on the tag").fill(lot)
    page.get_by_label("What they wrote").fill("It ran onto the cream yoke.")
    press(page, "Write it down")
    expect(page.locator("h1")).to_have_text("Complaint 1")
    expect(page.get_by_text("3 skeins with The fair at the mill").first).to_be_visible()
    sound(page)
    assert first_buyer(page, live_server.url, lot) == "The fair at the mill"
    page.get_by_role("textbox", name="How it ended").fill(
        "Told all buyers to rinse it again"
    )
    press(page, "Close it")
    expect(page.get_by_text("Told all buyers to rinse it again").first).to_be_visible()


def first_buyer(page: Page, address: str, lot: str) -> str:
    """Return who stands first in the list of a lot’s bath."""
    link = page.get_by_role("link", name="List (CSV)").first.get_attribute("href")
    text = page.context.request.get(f"{address}{link}").text().removeprefix("\ufeff")
    table = csv.DictReader(io.StringIO(text))
    return next(row["where"] for row in table if row["lot"] == lot)


def send_skeins(page: Page, lot: str, to_whom: str) -> None:
    """Write down that three skeins went out, from the lot’s page."""
    page.goto(lot)
    page.get_by_role("link", name="Skeins out").click()
    page.get_by_label("Skeins", exact=True).fill("3")
    page.get_by_label("To whom").fill(to_whom)
    press(page, "Write it down")
    expect(page.get_by_text("1 skein left, place not written down")).to_be_visible()
    sound(page)


def test_an_old_skein_leads_to_what_to_dye_now(
    live_server: LiveServer, page: Page
) -> None:
    founded()
    _pot, lot = off_lot()
    page.goto(f"{live_server.url}/lots/")
    page.get_by_role("link", name="The same again").click()
    page.get_by_label("Or the colour of the old skein").fill("61, -3, 22")
    press(page, "Look for it")
    sound(page)
    page.get_by_role("link", name=lot, exact=True).click()
    expect(page.get_by_text("To hit it now")).to_be_visible()
    sound(page)
    page.get_by_role("link", name="Try this mix, and save it").click()
    expect(page.locator("h1")).to_be_visible()
    sound(page)
