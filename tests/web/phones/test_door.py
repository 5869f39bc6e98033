"""The door: a code and a name let a phone in; wrong codes are slowed and locked."""

import re
from datetime import UTC, datetime, timedelta

import pytest
from django.test import Client
from time_machine import TimeMachineFixture

from shadewright.workflows.devices import devices, make_code
from shadewright.workflows.studio import found_studio

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("studio")]
NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
HOSTILE = "<script>alert(1)</script>'\"&"


@pytest.fixture
def studio(time_machine: TimeMachineFixture) -> None:
    time_machine.move_to(NOON, tick=False)
    found_studio(name="Fell Lane", person="Ines")


@pytest.fixture
def phone() -> Client:
    return Client(REMOTE_ADDR="192.168.1.20")


def wrong_of(digits: str) -> str:
    return f"{(int(digits) + 1) % 10**6:06d}"


def test_a_code_and_a_name_let_a_phone_in(phone: Client) -> None:
    code = make_code(by=None).digits
    answer = phone.post("/pair/", {"code": code, "name": "Tam’s phone"})
    assert answer.headers["Location"] == "/"
    assert phone.get("/shelf/").status_code == 200
    assert phone.get("/pair/").headers["Location"] == "/"
    assert [one.name for one in devices()] == ["Tam’s phone"]


def test_its_cookie_is_kept_from_scripts_and_from_other_sites(phone: Client) -> None:
    sent = {"code": make_code(by=None).digits, "name": "Tam’s phone"}
    answer = phone.post("/pair/", sent)
    cookie = answer.cookies["shadewright_studio_phone"]
    assert len(cookie.value) >= 43
    assert cookie["httponly"]
    assert cookie["samesite"] == "Strict"
    assert cookie["path"] == "/"
    assert not cookie["domain"]
    assert cookie["max-age"] == 400 * 24 * 60 * 60
    assert not cookie["secure"]  # plain http would never send it back


def test_a_scanned_code_stands_in_its_field(phone: Client) -> None:
    page = phone.get("/pair/", {"code": f"123456{HOSTILE}"}).content.decode()
    assert 'value="123456&lt;script' in page
    assert HOSTILE not in page


def test_the_door_says_what_plain_http_and_sleep_mean(phone: Client) -> None:
    page = phone.get("/pair/").content.decode()
    assert "is not encrypted" in page
    assert "A phone rings only while its page is awake" in page


def test_a_wrong_code_is_told_by_its_field_and_what_was_typed_stays(
    phone: Client,
) -> None:
    sent = {"code": wrong_of(make_code(by=None).digits), "name": HOSTILE}
    answer = phone.post("/pair/", sent)
    page = answer.content.decode()
    assert answer.status_code == 422
    assert 'id="id_code_error">That is not the code at the desk' in page
    assert "script&gt;alert" in page
    assert HOSTILE not in page
    assert "shadewright_studio_phone" not in answer.cookies


def test_the_next_try_is_told_when_it_will_be_heard(
    phone: Client, time_machine: TimeMachineFixture
) -> None:
    code = make_code(by=None).digits
    phone.post("/pair/", {"code": wrong_of(code), "name": "Tam"})
    answer = phone.post("/pair/", {"code": code, "name": "Tam"})
    assert answer.status_code == 429
    assert answer.headers["Retry-After"] == "2"
    assert "Try again in 2 seconds." in answer.content.decode()
    time_machine.shift(timedelta(seconds=2))
    assert phone.post("/pair/", {"code": code, "name": "Tam"}).status_code == 302


def test_twenty_wrong_codes_lock_the_door(
    phone: Client, time_machine: TimeMachineFixture
) -> None:
    for number in range(20):
        answer = phone.post(
            "/pair/",
            {"code": wrong_of(make_code(by=None).digits), "name": "Tam"},
            REMOTE_ADDR=f"192.168.1.{number}",
        )
        assert answer.status_code == 422
        time_machine.shift(timedelta(seconds=60))
    answer = phone.post("/pair/", {"code": "123456", "name": "Tam"})
    assert answer.status_code == 429
    assert "Retry-After" not in answer.headers
    assert "open pairing again" in answer.content.decode()


@pytest.mark.parametrize(
    ("sent", "sentence"),
    [
        ({}, "The code at the desk is missing."),
        ({"code": "123456"}, "A name for this phone is missing."),
        ({"code": "123456", "name": " "}, "A name for this phone is missing."),
        ({"code": "123456", "name": "x" * 41}, "may have up to 40 characters"),
        ({"code": "1" * 21, "name": "x"}, "may have up to 20 characters"),
        ({"code": "123\x00456", "name": "x"}, "holds a sign that no one can read"),
    ],
)
def test_what_cannot_be_used_is_told_and_is_no_wrong_code(
    phone: Client, sent: dict[str, str], sentence: str
) -> None:
    answer = phone.post("/pair/", sent)
    assert answer.status_code == 422
    assert sentence in answer.content.decode()
    code = make_code(by=None).digits
    assert phone.post("/pair/", {"code": code, "name": "Tam"}).status_code == 302


def test_the_form_needs_its_token() -> None:
    phone = Client(enforce_csrf_checks=True, REMOTE_ADDR="192.168.1.20")
    sent = {"code": make_code(by=None).digits, "name": "Tam"}
    assert phone.post("/pair/", sent).status_code == 403
    page = phone.get("/pair/").content.decode()
    token = re.search(r'name="csrfmiddlewaretoken" value="(\w+)"', page)
    assert token is not None
    sent["csrfmiddlewaretoken"] = token[1]
    assert phone.post("/pair/", sent).status_code == 302
