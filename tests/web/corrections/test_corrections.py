"""Correct, overdye and dye again, on their pages."""

from uuid import uuid4

import pytest
from django.test import Client
from playwright.sync_api import Browser
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Correction, LotLine
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.undo import undo
from tests.browser import DESK, PHONE, axe, goes_sideways, watched_page
from tests.web.pages_read import read
from tests.workflows.bench import founded
from tests.workflows.correcting.off_lots import deeper_recipe, note, off_lot
from tests.workflows.dyed import finished
from tests.workflows.judging.lots_in_a_row import lots_in_a_row, palette_of_both


@pytest.fixture
def lot(db: None) -> str:
    del db
    founded()
    pot, number = off_lot()
    deeper_recipe(pot)
    return number


def hidden(source: str, name: str) -> str:
    return source.split(f'name="{name}" value="')[1].split('"', maxsplit=1)[0]


@pytest.mark.store
def test_a_lot_is_corrected_in_a_bath_of_its_own(client: Client, lot: str) -> None:
    address = f"/lots/{lot}/correct/?colour=56,-4,20"
    page = read(client.get(address))
    assert "goes in first" in page.text
    said = {
        "deed": str(uuid4()),
        "mix": hidden(page.source, "mix"),
        "grams": "98",
        "dyed_on": today().isoformat(),
    }
    answer = client.post(address, said)
    assert answer.status_code == 302
    assert Correction.objects.get().lot.number == lot
    before = read(client.get(f"/lots/{lot}/"))
    assert "Decided" in before.text
    bath = Correction.objects.get().recipe.versions.get().baths.get().number
    assert f"Goes into bath {bath}" in before.text
    child = read(client.get(f"/lots/{finished(bath, is_sure=True)}/"))
    assert f"out of lot {lot}" in child.text
    assert f"/lots/{lot}/" in child.links
    listed = read(client.get("/lots/?q=Low Tide")).text
    assert f"Low Tide To shade: {lot}" in listed
    letter = {"deed": str(uuid4()), "from_whom": "Bo", "about": "no match", "lot": lot}
    assert bath in read(client.post("/complaints/new/", letter, follow=True)).text


@pytest.mark.store
def test_a_dose_too_small_offers_its_ways_on(client: Client, lot: str) -> None:
    page = read(client.get(f"/lots/{lot}/correct/?colour=60,-3,22"))
    assert "Too little to measure: 5 ml is the least" in page.text
    assert any("/dilute/" in link for link in page.links)
    least = next(link for link in page.links if "least=" in link)
    taken = read(client.get(least))
    assert "Of Slate goes in the least that can be measured." in taken.text
    assert hidden(taken.source, "mix") != hidden(page.source, "mix")
    leave = next(link for link in page.links if "leave=" in link)
    left = read(client.get(leave))
    assert "Slate is left out." in left.text
    assert hidden(left.source, "mix").count(":") == 1
    back = next(
        link for link in left.links if "correct" in link and "leave" not in link
    )
    assert "Too little" in read(client.get(back)).text


@pytest.mark.store
def test_a_lot_as_near_as_others_are_is_said_to_be_so(client: Client, db: None) -> None:
    del db
    founded()
    row = lots_in_a_row(off=(0.0, 0.0, 0.0))
    palette_of_both(row.pot)
    for place, number in enumerate(row.numbers):
        note(number, (58.0 if place % 2 else 54.0, -3.0, 16.0))
    near = read(client.get(f"/lots/{row.last}/correct/?colour=56,-3,16")).text
    assert "It is as near as your own lots are to each other." in near
    far = read(client.get(f"/lots/{row.last}/correct/?colour=50,-3,16")).text
    assert "your own lots" not in far


@pytest.mark.store
def test_without_a_colour_it_asks_for_one(client: Client, lot: str) -> None:
    page = read(client.get(f"/lots/{lot}/correct/"))
    assert "which colour" in page.text
    assert 'name="colour"' in page.source


@pytest.mark.store
def test_bad_yarn_is_said_by_its_field_and_plans_nothing(
    client: Client, lot: str
) -> None:
    address = f"/lots/{lot}/overdye/"
    link = next(x for x in read(client.get(address)).links if "to=" in x)
    page = read(client.get(link))
    said = {
        "deed": str(uuid4()),
        "mix": hidden(page.source, "mix"),
        "grams": "none",
        "dyed_on": today().isoformat(),
    }
    answer = client.post(link, said)
    assert answer.status_code == 422
    assert not Correction.objects.exists()


@pytest.mark.store
def test_a_price_is_laid_beside_the_dye(client: Client, lot: str) -> None:
    asked = f"/lots/{lot}/correct/?colour=56,-4,20&price=28&less=15"
    assert "16.80 less for the 4 skeins" in read(client.get(asked)).text


@pytest.mark.store
def test_a_price_below_nothing_is_said_in_a_sentence(client: Client, lot: str) -> None:
    asked = f"/lots/{lot}/correct/?colour=56,-4,20&price=28&less=900"
    page = read(client.get(asked))
    assert "Per cent less as a one-off must be at most 100" in page.text


@pytest.mark.store
@pytest.mark.parametrize(
    ("colour", "said"),
    [
        ("62,-3.5,21.4", "It is there already."),
        ("#8a9355", "These colours are not sure."),
        ("80,-3,20", "Nothing would bring it nearer."),
    ],
)
def test_what_speaks_against_it_is_said(
    client: Client, lot: str, colour: str, said: str
) -> None:
    answer = client.get(f"/lots/{lot}/correct/", {"colour": colour})
    assert said in read(answer).text


@pytest.mark.store
def test_a_lot_never_read_leads_to_reading_it(client: Client, lot: str) -> None:
    noted = LotLine.objects.get(lot__number=lot, act="coloured")
    undo(deed=noted.deed, stamp=stamp_now(by=None))
    for room in ("correct", "overdye"):
        page = read(client.get(f"/lots/{lot}/{room}/"))
        assert any(link.endswith("/read/") for link in page.links), room


@pytest.mark.store
def test_a_lot_never_read_can_be_dyed_again_as_written(
    client: Client, lot: str
) -> None:
    noted = LotLine.objects.get(lot__number=lot, act="coloured")
    undo(deed=noted.deed, stamp=stamp_now(by=None))
    page = read(client.get(f"/restock/?lot={lot.lower()}"))
    assert "Plan it as it was written" in page.text
    assert "none to lay beside" in read(client.get("/restock/?colour=61,-3,22")).text


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["390", "1280"])
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, lot: str, size: tuple[int, int]
) -> None:
    addresses = (
        f"/lots/{lot}/correct/",
        f"/lots/{lot}/correct/?colour=56,-4,20",
        f"/lots/{lot}/overdye/",
        f"/restock/?lot={lot}",
        "/restock/?colour=61,-3,22",
    )
    with watched_page(browser, size, scheme="light") as page:
        for address in addresses:
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address
