"""Taps as a phone sends them: each once, in order, none lost, rubbish named."""

import json
from typing import Any
from uuid import uuid4

import pytest
from django.test import Client
from django.utils import timezone

from shadewright.records.models import BathLine
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.devices import make_code, pair
from shadewright.workflows.shelf import shelf_bottle
from tests.web.sample import HOSTILE
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def tap(pot: Ready, **changed: object) -> dict[str, object]:
    return {
        "key": str(uuid4()),
        "bath": pot.number,
        "act": "dosed",
        "step": "dose-1",
        "value": 60,
        "unit": "ml",
        "bottle": pot.slate,
        "age_ms": 0,
        **changed,
    }


def send(client: Client, *taps: object) -> dict[str, Any]:
    answer = client.post(
        "/bench/taps/",
        json.dumps({"taps": taps}),
        content_type="application/json",
    )
    assert answer.status_code == 200
    return dict(answer.json())


def test_taps_are_kept_in_their_order_and_once(client: Client, pot: Ready) -> None:
    first, second = tap(pot), tap(pot, step="dose-2", value=30, bottle=pot.gorse)
    for _ in range(2):
        said = send(client, first, second)
        assert said == {"kept": [first["key"], second["key"]], "refused": []}
    assert [line.step for line in BathLine.objects.all()] == ["dose-1", "dose-2"]
    assert shelf_bottle(pot.slate).volume_ml == 440.0


def test_an_undo_that_comes_with_its_tap_takes_it_back(
    client: Client, pot: Ready
) -> None:
    done = tap(pot)
    back = {"key": str(uuid4()), "bath": pot.number, "undoes": done["key"]}
    again = {"key": str(uuid4()), "bath": pot.number, "undoes": done["key"]}
    assert len(send(client, done, back, again, back)["kept"]) == 4
    assert shelf_bottle(pot.slate).volume_ml == 500.0
    assert bath_now(pot.number).standing == ()


def test_a_tap_keeps_the_time_of_the_finger(client: Client, pot: Ready) -> None:
    send(client, tap(pot, age_ms=600_000))
    line = BathLine.objects.get()
    age_s = (timezone.now() - line.at).total_seconds()
    assert 599 < age_s < 605
    assert (timezone.now() - line.written_at).total_seconds() < 5


@pytest.mark.parametrize("age", [-5000, "soon", None, 1e18, float("nan"), True, []])
def test_an_age_that_cannot_be_counts_as_now(
    client: Client, pot: Ready, age: object
) -> None:
    send(client, tap(pot, age_ms=age))
    assert abs((timezone.now() - BathLine.objects.get().at).total_seconds()) < 5


@pytest.mark.parametrize(
    ("changed", "note"),
    [
        ({"value": 10**400}, "which cannot be"),
        ({"value": "lots"}, "how much went in was not said"),
        ({"value": None}, "how much went in was not said"),
        ({"value": -1}, "which cannot be"),
        ({"bottle": "b\x00\ud8008o"}, "no bottle B8O is known"),
        ({"act": "danced"}, "danced:"),
        ({"act": "undone"}, "undone:"),
        ({"note": HOSTILE}, HOSTILE),
        ({"note": "a" * 5000}, "aaaa"),
        ({"step": "z" * 500, "unit": "furlongs per fortnight"}, ""),
    ],
)
def test_an_odd_tap_is_written_with_a_note(
    client: Client, pot: Ready, changed: dict[str, object], note: str
) -> None:
    odd = tap(pot, **changed)
    assert send(client, odd)["kept"] == [odd["key"]]
    assert note in BathLine.objects.get().note


@pytest.mark.parametrize(
    ("changed", "why"),
    [
        ({"key": "no key"}, "without a key"),
        ({"key": None}, "without a key"),
        ({"bath": "999999-B9"}, "There is no bath"),
        ({"undoes": "nothing"}, "does not say what it takes back"),
        ({"undoes": str(uuid4())}, "There is no act to undo"),
    ],
)
def test_what_cannot_be_written_is_named_and_the_rest_is_kept(
    client: Client, pot: Ready, changed: dict[str, object], why: str
) -> None:
    good = tap(pot, step="dose-2")
    said = send(client, tap(pot, **changed), "rubbish", good)
    assert why in said["refused"][0]["why"]
    assert said["kept"] == [good["key"]]
    assert BathLine.objects.count() == 1


@pytest.mark.parametrize(
    "body",
    ["", "{}", "[1]", '{"taps": 4}', "{" * 4000, '{"taps": [' + "0," * 300 + "0]}"],
)
def test_a_body_that_is_no_list_of_taps_is_refused(client: Client, body: str) -> None:
    founded()
    answer = client.post("/bench/taps/", body, content_type="application/json")
    assert answer.status_code == 400
    assert "not a list of taps" in answer.json()["why"]


def test_only_a_page_of_ours_may_send(pot: Ready) -> None:
    strict = Client(enforce_csrf_checks=True)
    body = json.dumps({"taps": [tap(pot)]})
    answer = strict.post("/bench/taps/", body, content_type="application/json")
    assert answer.status_code == 403
    assert BathLine.objects.count() == 0


def test_two_phones_on_one_step_are_shown_with_an_undo_each(
    client: Client, pot: Ready
) -> None:
    token = pair(
        code=make_code(by=None).digits, name="Tam’s phone", address="192.168.1.9"
    )
    send(client, tap(pot))
    phone = Client(REMOTE_ADDR="192.168.1.9")
    phone.cookies["shadewright_studio_phone"] = token
    send(phone, tap(pot, value=61))
    page = client.get(f"/bench/{pot.number}/").content.decode()
    assert "was ticked 2 times" in page
    assert "desk" in page
    assert "Tam’s phone" in page
    double = page[page.index("was ticked 2 times") :]
    assert double[: double.index("bench-panels")].count("data-undo") == 2


def test_a_stranger_sends_no_taps(pot: Ready) -> None:
    stranger = Client(REMOTE_ADDR="192.168.1.66")
    body = json.dumps({"taps": [tap(pot)]})
    answer = stranger.post("/bench/taps/", body, content_type="application/json")
    assert answer.status_code == 403
    assert BathLine.objects.count() == 0
