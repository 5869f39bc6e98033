"""Tags, what they say, regions and tests, on their pages."""

from uuid import uuid4

import pytest
from django.test import Client
from playwright.sync_api import Browser
from pytest_django.live_server_helper import LiveServer

from tests.browser import DESK, PHONE, axe, goes_sideways, watched_page
from tests.web.pages_read import read
from tests.workflows.bench import founded
from tests.workflows.dyed import finished
from tests.workflows.pots import ready


@pytest.fixture
def lot(db: None) -> str:
    del db
    founded()
    return finished(ready().number, is_sure=True, skeins=4)


@pytest.mark.store
def test_tags_open_as_a_sheet(client: Client, lot: str) -> None:
    usual = client.get(f"/lots/{lot}/tags.pdf")
    assert usual["Content-Type"] == "application/pdf"
    answer = client.get(f"/lots/{lot}/tags.pdf?count=4&shape=tag&paper=a4")
    assert answer["Content-Type"] == "application/pdf"
    page = read(client.get(f"/lots/{lot}/tags/"))
    assert "It lacks:" in page.text
    assert "Check your local rules" in page.text


@pytest.mark.store
@pytest.mark.parametrize("asked", ["count=0&shape=tag&paper=a4", "count=x", "count="])
def test_bad_numbers_of_tags_are_said(client: Client, lot: str, asked: str) -> None:
    answer = client.get(f"/lots/{lot}/tags.pdf?{asked}")
    assert answer.status_code == 422


@pytest.mark.store
def test_a_region_begins_from_a_list_and_stands_beside_the_tags(
    client: Client, lot: str
) -> None:
    page = read(client.get("/tags/regions/new/?like=United States"))
    assert "Country of origin" in page.source
    said = {"name": "United States", "asks": "Country of origin", "is_used": "on"}
    client.post("/tags/regions/new/", said)
    assert "United States asks" in read(client.get(f"/lots/{lot}/tags/")).text


@pytest.mark.store
def test_a_test_is_written_down_and_warns(client: Client, lot: str) -> None:
    said = {"deed": str(uuid4()), "kind": "bleed", "on_wool": "3"}
    client.post(f"/lots/{lot}/tests/", said)
    page = read(client.get(f"/lots/{lot}/tests/"))
    assert "staining wool 3" in page.text
    assert "may mark other yarn" in page.text


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["390", "1280"])
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, lot: str, size: tuple[int, int]
) -> None:
    addresses = (
        "/tags/",
        "/tags/regions/new/?like=European Union",
        f"/lots/{lot}/tags/",
        f"/lots/{lot}/tests/",
    )
    with watched_page(browser, size, scheme="light") as page:
        for address in addresses:
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address
