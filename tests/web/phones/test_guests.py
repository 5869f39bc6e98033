"""A stranger on the network reaches the pairing page and nothing else."""

import re
from collections.abc import Iterator
from uuid import uuid4

import pytest
from django.http import HttpResponseBase
from django.test import Client
from django.urls import URLPattern, URLResolver, get_resolver
from pytest_django.fixtures import Settings

from shadewright.web import guests
from shadewright.workflows.devices import devices, make_code, pair
from shadewright.workflows.people import people
from shadewright.workflows.studio import found_studio

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("studio")]
HOST = "192.168.1.5"
PHONE = "192.168.1.20"
METHODS = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "BREW"]
DOOR = "/pair/"
VALUES = {
    "int": "1",
    "uuid": str(uuid4()),
    "str": "K7R",
    "slug": "k7r",
    "path": "a/b",
    "day": "2026-11-26",
}


def every_address(
    patterns: list[URLPattern | URLResolver], start: str = "/"
) -> Iterator[str]:
    for pattern in patterns:
        address = f"{start}{pattern.pattern}"
        if isinstance(pattern, URLResolver):
            yield from every_address(pattern.url_patterns, address)
        else:
            yield re.sub(
                r"<(?:(\w+):)?\w+>", lambda m: VALUES[m.group(1) or "str"], address
            )


ADDRESSES = sorted(
    set(every_address(get_resolver("shadewright.web.urls").url_patterns))
)
STRANGE = [
    "/static/django_htmx/django-htmx.js",
    "/media/x.jpg",
    "/phones",
    "//",
    "/no/",
]


@pytest.fixture
def studio(settings: Settings) -> None:
    settings.ALLOWED_HOSTS = ["127.0.0.1", "localhost", HOST]
    found_studio(name="Secret Lane", person="Ines Secret")


@pytest.fixture
def stranger() -> Client:
    return guest(PHONE)


@pytest.fixture
def phone() -> Client:
    token = pair(code=make_code(by=None).digits, name="Tam’s phone", address=PHONE)
    client = guest(PHONE)
    client.cookies["shadewright_studio_phone"] = token
    return client


def guest(address: str) -> Client:
    return Client(raise_request_exception=False, REMOTE_ADDR=address, SERVER_NAME=HOST)


def is_turned_away(answer: HttpResponseBase) -> bool:
    if answer.status_code == 302:
        return answer.headers["Location"] == DOOR
    text = getattr(answer, "content", b"").decode()
    return answer.status_code == 403 and "Secret" not in text


def test_there_are_addresses_to_try() -> None:
    assert len(ADDRESSES) > 20
    assert {"/", "/phones/", "/healthz", "/people/", DOOR} <= set(ADDRESSES)


@pytest.mark.parametrize("address", sorted({*ADDRESSES, *STRANGE} - {DOOR}))
def test_a_stranger_is_turned_away_everywhere(stranger: Client, address: str) -> None:
    for method in METHODS:
        answer = stranger.generic(method, address)
        assert is_turned_away(answer), (method, answer.status_code)
    assert people()[0].name == "Ines Secret"


@pytest.mark.parametrize("method", sorted(set(METHODS) - {"GET", "POST"}))
def test_the_door_only_opens_to_those_who_ask_as_a_browser_does(
    stranger: Client, method: str
) -> None:
    answer = stranger.generic(method, DOOR)
    assert answer.status_code == 405
    assert "Secret" not in answer.content.decode()


def test_the_door_shows_nothing_of_the_studio(stranger: Client) -> None:
    page = stranger.get(DOOR).content.decode()
    assert "Pair this phone" in page
    assert "Secret" not in page
    assert "<nav" not in page


def test_all_that_the_door_is_made_of_is_given(stranger: Client) -> None:
    page = stranger.get(DOOR).content.decode()
    parts = re.findall(r'(?:src|href)="(/static/[^"]+)"', page)
    assert len(parts) > 8
    for part in parts:
        answer = stranger.get(part)
        assert answer.status_code == 200, part
        answer.close()
        assert is_turned_away(stranger.post(part)), part


def test_an_htmx_page_of_a_removed_phone_goes_to_the_door(stranger: Client) -> None:
    answer = stranger.get("/shelf/", headers={"hx-request": "true"})
    assert answer.status_code == 403
    assert answer.headers["HX-Redirect"] == DOOR


@pytest.mark.parametrize("address", ["127.0.0.1", "127.3.2.1", "::1"])
def test_this_machine_needs_no_pairing(address: str) -> None:
    client = guest(address)
    assert client.get("/shelf/").status_code == 200
    assert client.get("/phones/").status_code == 200
    assert client.get("/healthz").status_code == 200
    assert client.get(DOOR).headers["Location"] == "/phones/"


@pytest.mark.parametrize(
    "address", [HOST, "", "localhost", "0", "::ffff:127.0.0.1", "126.0.0.1"]
)
def test_nothing_but_loopback_is_this_machine(address: str) -> None:
    """Its own address on the network is a guest's, like any other."""
    assert is_turned_away(guest(address).get("/shelf/"))


@pytest.mark.parametrize(
    "header",
    ["x-forwarded-for", "forwarded", "x-real-ip", "client-ip", "remote-addr", "via"],
)
def test_what_a_header_says_of_where_it_came_from_is_not_believed(
    stranger: Client, header: str
) -> None:
    said = "for=127.0.0.1" if header == "forwarded" else "127.0.0.1"
    assert is_turned_away(stranger.get("/shelf/", headers={header: said}))


def test_a_forwarded_host_makes_nobody_the_desk(stranger: Client) -> None:
    for headers in ({"host": "127.0.0.1"}, {"x-forwarded-host": "localhost"}):
        assert is_turned_away(stranger.get("/shelf/", headers=headers))


@pytest.mark.parametrize("address", ["/", "/shelf/", "/jars/", "/healthz", "/stocks/"])
def test_a_paired_phone_does_what_the_desk_does(phone: Client, address: str) -> None:
    at_desk = guest("127.0.0.1").get(address)
    assert phone.get(address).status_code == at_desk.status_code


@pytest.mark.parametrize(
    "address",
    ["/phones/", "/phones/open/", "/phones/1/remove/", "/people/", "/own-studio/"],
)
@pytest.mark.parametrize("method", ["GET", "POST", "DELETE"])
def test_some_things_are_done_at_the_desk_alone(
    phone: Client, address: str, method: str
) -> None:
    answer = phone.generic(method, address)
    assert answer.status_code == 403
    assert "looked after at the computer" in answer.content.decode()
    assert len(devices()) == 1


def test_no_page_of_that_kind_stands_elsewhere() -> None:
    words = ("phone", "device", "people", "backup", "restore", "own-studio")
    kind = {one for one in ADDRESSES if any(word in one for word in words)}
    assert {one.split("/")[1] for one in kind} <= guests.AT_THE_DESK


def test_a_removed_phone_is_out_at_once(phone: Client) -> None:
    assert phone.get("/shelf/").status_code == 200
    guest("127.0.0.1").post(f"/phones/{devices()[0].id}/remove/")
    assert is_turned_away(phone.get("/shelf/"))
    assert is_turned_away(phone.post("/person/", {"person": "1"}))


@pytest.mark.parametrize("token", ["", "x", "None", "é", "0" * 5000])
def test_another_token_lets_nobody_in(stranger: Client, token: str) -> None:
    stranger.cookies["shadewright_studio_phone"] = token
    assert is_turned_away(stranger.get("/shelf/"))


def test_the_demos_cookie_opens_no_studio(phone: Client) -> None:
    token = phone.cookies.pop("shadewright_studio_phone").value
    phone.cookies["shadewright_demo_phone"] = token
    assert is_turned_away(phone.get("/shelf/"))


@pytest.mark.parametrize(
    "host", ["studio.example", "192.168.1.6", "192.168.1.5.example"]
)
def test_a_foreign_host_is_refused_to_all(
    phone: Client, stranger: Client, host: str
) -> None:
    for client in (phone, stranger):
        for address in (DOOR, "/shelf/"):
            assert client.get(address, headers={"host": host}).status_code == 400


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://192.168.1.6:8000"},
        {"origin": "http://127.0.0.1"},
        {"origin": "null"},
        {"sec-fetch-site": "cross-site"},
    ],
)
def test_another_sites_act_is_refused_to_a_paired_phone(
    phone: Client, headers: dict[str, str]
) -> None:
    answer = phone.post("/person/", {"person": str(people()[0].id)}, headers=headers)
    assert answer.status_code == 403
    assert "Another site asked" in answer.content.decode()


def test_its_own_act_is_done(phone: Client) -> None:
    sent = {"person": str(people()[0].id)}
    answer = phone.post("/person/", sent, headers={"origin": f"http://{HOST}"})
    assert answer.status_code == 302
    assert answer.headers["Location"] == "/"


def test_a_refusal_carries_the_safety_headers(stranger: Client) -> None:
    for address in ("/shelf/", "/healthz", DOOR):
        answer = stranger.get(address)
        assert "default-src 'none'" in answer.headers["Content-Security-Policy"]
        assert answer.headers["Cache-Control"] == "private, no-cache"
