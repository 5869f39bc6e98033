"""The list of lots: searched, sorted, a page at a time."""

import pytest
from django.test import Client

from shadewright.records.models.lots import ColourEvidence, Grade
from shadewright.workflows import lot_pages
from shadewright.workflows.lots import note_colour
from shadewright.workflows.people import Person
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import read
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready


def numbers(client: Client, asked: str = "") -> list[str]:
    links = read(client.get(f"/lots/{asked}")).links
    parts = [link.split("/") for link in links if link.startswith("/lots/2")]
    return [part[2] for part in parts]


def test_without_lots_it_says_what_would_stand_here(
    client: Client, ines: Person
) -> None:
    del ines
    page = read(client.get("/lots/"))
    assert "Your lots would stand here" in page.text
    assert "/baths/" in page.links


def test_it_lists_the_newest_first_and_sorts(
    client: Client, lot: str, pot: Ready
) -> None:
    other = finished(dyed(pot, pot.another()), grade=Grade.ONE_OFF, grams=110.0)
    assert numbers(client) == [other, lot]
    assert numbers(client, "?sort=grams") == [lot, other]
    assert numbers(client, "?sort=-place") == [lot, other]
    assert numbers(client, "?sort=nonsense") == [other, lot]
    page = read(client.get("/lots/"))
    assert "98.5 g" in page.text
    assert "Low Tide version 1" in page.text


def test_a_colour_stands_beside_what_it_rests_on(client: Client, lot: str) -> None:
    note_colour(
        number=lot,
        colour="#a0522d",
        evidence=ColourEvidence.PHOTO,
        stamp=stamp_now(by=None),
    )
    assert "taken from a photo" in read(client.get("/lots/")).text


def test_it_is_searched(client: Client, lot: str, pot: Ready) -> None:
    other = finished(dyed(pot, pot.another()), place="Attic")
    assert numbers(client, "?q=attic") == [other]
    assert numbers(client, "?q=fell+c2") == [lot]
    page = read(client.get("/lots/?q=%3Cb%3E"))
    assert "No lot with “<b>”" in page.text


def test_long_lists_are_turned(
    client: Client, lot: str, pot: Ready, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(lot_pages, "LOTS_A_PAGE", 1)
    other = finished(dyed(pot, pot.another()))
    assert numbers(client) == [other]
    assert "?page=2" in read(client.get("/lots/")).links
    assert numbers(client, "?page=2") == [lot]
    for strange in ("0", "-1", "x", "9" * 30, "7"):
        assert client.get(f"/lots/?page={strange}").status_code == 200
