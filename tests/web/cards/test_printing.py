"""Cards and tags come as PDFs, and what cannot be printed is said in a sentence."""

import pytest
from django.test import Client

from shadewright.records.models.baths import BathAct
from tests.paper.pictures import words_on
from tests.web.pages_read import read
from tests.web.sample import HOSTILE
from tests.workflows.pots import Ready, tapped

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize("paper", ["a4", "a5", "letter"])
def test_two_cards_in_the_order_asked_for(
    client: Client, pot: Ready, paper: str
) -> None:
    other = pot.another(fibre_g=50.0)
    asked = {"number": [other, pot.number, other], "paper": paper}
    answer = client.get("/baths/cards.pdf", asked)
    assert answer.headers["Content-Type"] == "application/pdf"
    assert other.lower() in answer.headers["Content-Disposition"]
    words = words_on(answer.content)
    assert words.index(other) < words.index(pot.number)
    assert words.count("Fill the pot with water") == 2
    assert "2 Slate 1 % 30 ml" in words
    assert f"bottle {pot.slate}" in words


def test_what_was_poured_is_not_asked_for_again(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.STARTED, "fill")
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66.0, unit="ml", bottle=pot.slate)
    tapped(pot.number, BathAct.MISSED, "dose-2")
    tapped(pot.number, BathAct.HEAT_ON, "heat", value=95.0, unit="°C")
    words = words_on(client.get(f"/baths/cards.pdf?number={pot.number}").content)
    assert "Heat on Done: at 18:30" in words
    assert "2 Slate 1 % Done: 66 ml at 18:30 on 25 Nov" in words
    assert "3 Gorse 1 % Left out at 18:30 on 25 Nov" in words
    assert f"bottle {pot.slate}" not in words
    assert "Citric acid" in words


def test_tags_of_swatches(client: Client, pot: Ready) -> None:
    answer = client.get("/baths/tags.pdf", {"number": pot.number})
    assert answer.headers["Content-Type"] == "application/pdf"
    words = words_on(answer.content)
    assert "Write these numbers on the in-pot tags" in words
    for part in (pot.number, "Fell DK", "Slate 0.6 %", "Gorse 0.3 %", "25 Nov 2026"):
        assert part in words


@pytest.mark.parametrize("room", ["cards", "tags"])
@pytest.mark.parametrize(
    ("asked", "status", "sentence"),
    [
        ({}, 422, "Choose at least one"),
        ({"number": "261125-B99"}, 404, "There is no bath “261125-B99”."),
        ({"number": HOSTILE}, 404, "There is no bath"),
        ({"number": "NUMBER", "paper": "a0"}, 422, "one of a4, a5, letter"),
        ({"number": "NUMBER", "paper": HOSTILE}, 422, "one of a4, a5, letter"),
    ],
)
def test_what_cannot_be_printed(
    client: Client,
    pot: Ready,
    room: str,
    asked: dict[str, str],
    status: int,
    sentence: str,
) -> None:
    named = {key: value.replace("NUMBER", pot.number) for key, value in asked.items()}
    page = read(client.get(f"/baths/{room}.pdf", named))
    assert page.status == status
    assert sentence in page.text
    assert HOSTILE not in page.source


def test_nothing_is_printed_by_a_post(client: Client, pot: Ready) -> None:
    assert client.post(f"/baths/cards.pdf?number={pot.number}").status_code == 405
