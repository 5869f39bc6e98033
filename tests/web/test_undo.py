"""Undo from a toast or a ledger: once, today, and back to a page of ours."""

from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.records.models import Dye
from shadewright.workflows.jars import jar, receive_jar
from shadewright.workflows.stamps import stamp_now

pytestmark = pytest.mark.usefixtures("ines")


@pytest.fixture
def received() -> tuple[int, str]:
    """A jar, and the address that takes it back."""
    deed = uuid4()
    dye = Dye.objects.create(name="Gorse")
    stamp = stamp_now(by=None, deed=deed)
    found = receive_jar(dye_id=dye.pk, powder_g=50, stamp=stamp)
    return found.id, reverse("undo", args=[deed])


def test_a_deed_is_taken_back(client: Client, received: tuple[int, str]) -> None:
    jar_id, address = received
    answer = client.post(address, {"next": "/healthz"})
    assert answer.headers["Location"] == "/healthz"
    assert jar(jar_id).left_g == 0


def test_pressed_twice_it_undoes_once(
    client: Client, received: tuple[int, str]
) -> None:
    jar_id, address = received
    assert [client.post(address).status_code for _ in range(2)] == [302, 302]
    assert jar(jar_id).left_g == 0


def test_the_way_back_is_a_page_of_ours(
    client: Client, received: tuple[int, str]
) -> None:
    answer = client.post(received[1], {"next": "https://elsewhere.example/"})
    assert answer.headers["Location"] == "/"


def test_what_was_never_done_cannot_be_undone(client: Client) -> None:
    answer = client.post(reverse("undo", args=[uuid4()]))
    assert answer.status_code == 404
    assert "Perhaps it was undone." in answer.content.decode()


def test_a_link_does_not_undo(client: Client, received: tuple[int, str]) -> None:
    assert client.get(received[1]).status_code == 405
