"""At the desk: a code on show, the list of phones, and the way out."""

import re
from datetime import UTC, datetime

import pytest
from django.test import Client
from pytest_django.fixtures import Settings
from time_machine import TimeMachineFixture

from shadewright.records.models import PairingTry
from shadewright.workflows.devices import devices, make_code, pair
from shadewright.workflows.people import people
from shadewright.workflows.studio import found_studio
from shadewright.workflows.wrong_codes import MOST_AN_HOUR, is_locked

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("studio")]
NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)


@pytest.fixture
def studio(time_machine: TimeMachineFixture, settings: Settings) -> None:
    time_machine.move_to(NOON, tick=False)
    settings.HOME_ADDRESSES = ("192.168.1.5", "172.17.0.1")
    settings.TIME_ZONE = "UTC"
    found_studio(name="Fell Lane", person="Ines")


def text(client: Client) -> str:
    return client.get("/phones/").content.decode()


def lock_pairing() -> None:
    for _ in range(MOST_AN_HOUR):
        PairingTry.objects.create(address="192.168.1.66", at=NOON)


def test_today_leads_to_it(client: Client) -> None:
    assert 'href="/phones/"' in client.get("/").content.decode()


def test_it_says_where_phones_find_the_studio(client: Client) -> None:
    page = text(client)
    assert "http://192.168.1.5:80/" in page
    assert "is not encrypted" in page
    assert "No phone yet" in page


def test_without_lan_it_says_how_to_open_it(client: Client, settings: Settings) -> None:
    settings.HOME_ADDRESSES = ()
    assert "python3 start.py serve --lan" in text(client)
    assert "Pair a phone" not in text(client)
    settings.IS_DEMO = True
    assert "shadewright demo --lan" in text(client)


def test_the_code_is_shown_once_and_lets_a_phone_in(client: Client) -> None:
    page = client.post("/phones/").content.decode()
    digits = re.search(r'"pairing-code">(\d{3}) (\d{3})<', page)
    assert digits is not None
    assert "until 12:05" in page
    assert "http://172.17.0.1:80/" in page
    assert "code-square" in page
    assert digits[0] not in text(client)
    pair(code=digits[1] + digits[2], name="Tam’s phone", address="192.168.1.20")
    assert "paired 25 Nov 12:00 by Ines" in text(client)


def test_a_phone_is_listed_and_removed(client: Client) -> None:
    code = make_code(by=people()[0].id).digits
    pair(code=code, name="<b>Tam</b>", address="192.168.1.20")
    page = text(client)
    assert "&lt;b&gt;Tam" in page
    address = re.search(r'action="(/phones/\d+/remove/)"', page)
    assert address is not None
    answer = client.post(address[1], follow=True)
    assert answer.redirect_chain == [("/phones/", 302)]
    assert "is out; it can be paired anew" in answer.content.decode()
    assert devices() == ()
    again = client.post(address[1])
    assert again.status_code == 404
    assert "It was removed already." in again.content.decode()


@pytest.mark.parametrize("address", ["/phones/1/remove/", "/phones/open/"])
def test_a_link_removes_and_opens_nothing(client: Client, address: str) -> None:
    assert client.get(address).status_code == 405


def test_locked_pairing_is_opened_again_at_the_desk(client: Client) -> None:
    lock_pairing()
    assert "Pairing is locked" in text(client)
    page = client.post("/phones/").content.decode()
    assert "Pairing is locked" in page
    assert "pairing-code" not in page
    page = client.post("/phones/open/", follow=True).content.decode()
    assert "Pairing is open again" in page
    assert not is_locked()
    assert "pairing-code" in client.post("/phones/").content.decode()
