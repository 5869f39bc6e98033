"""Skeins out, recall and complaints on their pages."""

from uuid import uuid4

import pytest
from django.test import Client
from playwright.sync_api import Browser
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Bath, Order, OrderLine
from shadewright.workflows.lot_skeins import Sending, send_out
from shadewright.workflows.people import people
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.studio import found_studio
from tests.browser import DESK, PHONE, axe, goes_sideways, watched_page
from tests.web.pages_read import read
from tests.workflows.dyed import finished
from tests.workflows.pots import ready


@pytest.fixture
def lot(db: None) -> str:
    del db
    found_studio(name="Long Reach", person="Ines", water="Tap")
    assert people()
    return finished(ready().number, is_sure=True, skeins=4, place="Shelf C2")


def sent(client: Client, lot: str, **typed: str) -> object:
    said = {"deed": str(uuid4()), "skeins": "3", "to_whom": "Bo"} | typed
    return client.post(f"/lots/{lot}/out/", said)


@pytest.mark.store
def test_skeins_go_out_and_stand_in_the_trace(client: Client, lot: str) -> None:
    sent(client, lot, reach="bo@example.org")
    page = read(client.get(f"/lots/{lot}/out/"))
    assert "1 skein left, Shelf C2" in page.text
    trace = read(client.get(f"/lots/{lot}/trace/"))
    assert "Where it went" in trace.text
    assert "Bo" in trace.text


@pytest.mark.store
def test_skeins_for_an_order_go_to_whoever_ordered(client: Client, lot: str) -> None:
    bath = Bath.objects.get(number=lot)
    order = Order.objects.create(number=1, deed=uuid4(), for_whom="Wren")
    line = OrderLine.objects.create(
        order=order,
        position=1,
        recipe=bath.version.recipe,
        base=bath.base,
        skeins=3,
        skein_g=100.0,
    )
    sent(client, lot, to_whom="", line=str(line.pk))
    assert "Wren order 1" in read(client.get(f"/lots/{lot}/out/")).text
    said = {"deed": str(uuid4()), "skeins": "1", "to_whom": ""}
    nobody = read(client.post(f"/lots/{lot}/out/", said))
    assert "To whom they went" in nobody.fault("to_whom")


@pytest.mark.store
def test_too_many_are_refused_and_kept_in_the_field(client: Client, lot: str) -> None:
    answer = client.post(
        f"/lots/{lot}/out/", {"deed": str(uuid4()), "skeins": "9", "to_whom": "Bo"}
    )
    assert answer.status_code == 422
    page = read(answer)
    assert "from 1 to 4" in page.text
    assert 'value="9"' in page.source


@pytest.mark.store
def test_a_complaint_leads_to_the_recall_list(client: Client, lot: str) -> None:
    sent(client, lot)
    said = {"deed": str(uuid4()), "from_whom": "Tam", "about": "bleeds", "lot": lot}
    answer = client.post("/complaints/new/", said, follow=True)
    page = read(answer)
    assert "3 skeins with Bo" in page.text
    address = next(link for link in page.links if "recall.csv" in link)
    table = client.get(address)
    assert table["Content-Type"].startswith("text/csv")
    assert "Bo" in table.content.decode()


@pytest.mark.store
def test_a_complaint_gets_its_lot_when_the_tag_is_found(
    client: Client, lot: str
) -> None:
    said = {"deed": str(uuid4()), "from_whom": "Tam", "about": "bleeds"}
    client.post("/complaints/new/", said)
    wrong = client.post("/complaints/1/lot/", {"lot": "9"})
    assert wrong.status_code == 422
    client.post("/complaints/1/lot/", {"lot": lot.lower()})
    assert "Who else has it" in read(client.get("/complaints/1/")).text
    client.post("/complaints/1/close/", {"outcome": "Money back"})
    assert "Closed: how it ended" in read(client.get("/complaints/1/")).text


@pytest.mark.store
def test_an_unknown_lot_is_said_by_its_field(client: Client, lot: str) -> None:
    del lot
    said = {"deed": str(uuid4()), "from_whom": "Tam", "about": "bleeds", "lot": "9"}
    answer = client.post("/complaints/new/", said)
    assert answer.status_code == 422
    assert "Tam" in read(answer).source


@pytest.mark.store
@pytest.mark.parametrize("asked", ["of=jar&key=ZZZZ", "of=nothing"])
def test_a_circle_that_is_not_there_is_not_found(
    client: Client, lot: str, asked: str
) -> None:
    assert client.get(f"/lots/{lot}/recall.csv?{asked}").status_code == 404


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["390", "1280"])
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, lot: str, size: tuple[int, int]
) -> None:
    said = Sending(skeins=3, to_whom="The fair at the mill", reach="stall 12")
    send_out(number=lot, said=said, stamp=stamp_now(by=None))
    client = Client()
    said_of_it = {"deed": str(uuid4()), "from_whom": "Tam", "about": "bleeds"}
    client.post("/complaints/new/", said_of_it | {"lot": lot, "said": "It ran. " * 40})
    addresses = (
        f"/lots/{lot}/out/",
        f"/lots/{lot}/recall/",
        "/complaints/",
        "/complaints/1/",
        "/complaints/new/",
    )
    with watched_page(browser, size, scheme="light") as page:
        for address in addresses:
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address
