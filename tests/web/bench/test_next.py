"""What is next at any pot: the list, the bar at the pot, and all off at the end."""

from datetime import timedelta

import pytest
from django.test import Client

from shadewright.records.models import Bath
from shadewright.workflows.bath_pages import BathAct
from shadewright.workflows.stamps import today
from tests.web.pages_read import read
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def bar(client: Client, number: str) -> str:
    """Return the bar of a bath’s first panel."""
    source = client.get(f"/bench/{number}/?view=main").content.decode()
    start = source.index("next-bar")
    return source[start : source.index("</a>", start)]


def test_the_bar_leads_to_the_first_thing_of_the_others(
    client: Client, pot: Ready
) -> None:
    assert " hidden" in bar(client, pot.number)
    other = pot.another()
    found = bar(client, pot.number)
    assert f'href="/bench/{other}/"' in found
    assert "B2 Low Tide: Fill the pot with water" in found
    ringing = pot.another()
    tapped(ringing, BathAct.HEAT_ON, "heat", at=ago(minutes=16))
    found = bar(client, pot.number)
    assert f'href="/bench/{ringing}/"' in found
    assert "Now" in found
    assert "+1:0" in found
    assert f'href="/bench/{pot.number}/"' in bar(client, ringing)


def test_the_page_hears_what_is_next_elsewhere(client: Client, pot: Ready) -> None:
    other = pot.another()
    tapped(other, BathAct.STARTED, "fill")
    said = client.get(f"/bench/{pot.number}/now/").json()["things"]
    assert [(x["bath"], x["lead"], x["kind"]) for x in said] == [
        (other, "Next", "hands"),
        (pot.number, "Next", "begins"),
    ]


def test_the_list_says_when_it_would_be_another(client: Client, pot: Ready) -> None:
    before = client.get("/bench/clocks/").json()["mark"]
    assert f'data-list="{before}"' in client.get("/bench/").content.decode()
    tapped(pot.number, BathAct.STARTED, "fill")
    assert client.get("/bench/clocks/").json()["mark"] != before


@pytest.mark.parametrize("address", ["/", "/bench/"])
def test_all_off_is_asked_once_the_last_heat_is_off(
    client: Client, pot: Ready, address: str
) -> None:
    tapped(pot.number, BathAct.HEAT_ON, "heat")
    assert "Look at each burner" not in read(client.get(address)).text
    tapped(pot.number, BathAct.HEAT_OFF, "off")
    page = read(client.get(address))
    assert "Is everything off? By the records every heat is off." in page.text
    assert f"/days/{today()}/off/" in page.links
    Bath.objects.update(dyed_on=today() - timedelta(days=1))
    assert "Is everything off?" in read(client.get(address)).text


def test_nobody_has_looked_is_rung_by_the_desk(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=ago(minutes=21))
    page = read(client.get("/"))
    assert "Nobody has looked for 20" in page.text
    assert "I looked" in page.text
    clocks = client.get("/bench/clocks/").json()["clocks"]
    (watch,) = [one for one in clocks if one["key"] == "watch"]
    assert watch["every"] == 20 * 60_000
    tapped(pot.number, BathAct.NOTE, "watch/heard")
    page = read(client.get("/"))
    assert "Nobody has looked for 20" not in page.text
    written = read(client.get(f"/bench/{pot.number}/")).text
    assert "Alarm heard: nobody had looked" in written
