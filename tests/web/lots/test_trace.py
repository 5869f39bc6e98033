"""Traces on the page: nested lists, each name a link, each gap with its sign."""

import pytest
from django.test import Client

from shadewright.records.models.baths import BathAct
from shadewright.workflows import trace_onwards
from tests.web.pages_read import read
from tests.workflows.bench import made, new_jar
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, tapped


def dosed(number: str, code: str) -> None:
    tapped(number, BathAct.DOSED, "dose-1", value=30.0, unit="ml", bottle=code)


def test_a_lot_leads_back_to_its_jars(client: Client, pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    bottle = made(pot.slate_dye, jar)
    number = pot.another()
    dosed(number, bottle.code)
    finished(number)
    page = read(client.get(f"/lots/{number}/trace/"))
    assert {
        f"/baths/{number}/",
        f"/bottles/{bottle.code}/",
        f"/jars/{jar}/trace/",
    } <= set(page.links)
    assert "What went in" in page.text
    assert "Gorse: not written down whether it went in" in page.text
    assert "supplier’s lot not written down" in page.text


def test_a_missing_link_has_a_sign_and_words(client: Client, lot: str) -> None:
    page = read(client.get(f"/lots/{lot}/trace/"))
    missing = page.source.count('class="node missing"')
    assert missing == page.text.count("entered as it stood: jar not known") + 1
    assert "mill lot not written down" in page.text
    assert "1 skein, 98.5" in page.text


def test_a_jar_leads_on_to_every_lot(client: Client, pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    assert "It went into no bath yet" in read(client.get(f"/jars/{jar}/trace/")).text
    bottle = made(pot.slate_dye, jar)
    numbers = [pot.another(), pot.another()]
    for number in numbers:
        dosed(number, bottle.code)
    finished(numbers[0])
    page = read(client.get(f"/jars/{jar}/trace/"))
    assert "It went into 2 baths." in page.text
    assert f"/lots/{numbers[0]}/" in page.links
    assert f"/lots/{numbers[1]}/" not in page.links
    assert "no lot" in page.text


def test_a_bottle_shows_both_ways(client: Client, lot: str, pot: Ready) -> None:
    page = read(client.get(f"/bottles/{pot.slate}/trace/"))
    assert "What went in" in page.text
    assert "Where it went" in page.text
    assert f"/lots/{lot}/" in page.links


def test_a_jar_behind_many_baths_is_turned(
    client: Client, lot: str, pot: Ready, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(trace_onwards, "BATHS_A_PAGE", 1)
    other = pot.another()
    dosed(other, pot.slate)
    finished(other)
    first = read(client.get(f"/bottles/{pot.slate}/trace/"))
    assert "It went into 2 baths; page 1 of 2." in first.text
    assert f"/lots/{other}/" in first.links
    assert "?page=2" in first.links
    second = read(client.get(f"/bottles/{pot.slate}/trace/?page=2"))
    assert f"/lots/{lot}/" in second.links


def test_what_is_not_there_cannot_be_traced(client: Client, pot: Ready) -> None:
    del pot
    for address in ("lots/0/trace", "jars/999/trace", "bottles/Z9Z/trace"):
        assert client.get(f"/{address}/").status_code == 404
