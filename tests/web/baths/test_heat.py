"""The heat of a bath on its pages: on what, how long, what it rests on."""

import pytest
from django.test import Client

from shadewright.records.models import HeatSource, Pot
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import keep_bath
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.studio import set_altitude
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read
from tests.workflows.pots import ago, tapped

PLAN = "/baths/new/"


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    Pot.objects.update(mass_kg=2.0)
    return dyeing_things()


def ring() -> int:
    row = HeatSource.objects.create(name="Left ring", kind="induction", power_kw=1.8)
    return row.pk


def live(client: Client, things: Dyeing, **typed: str | int) -> Answer:
    plain: dict[str, str | int] = {
        "version": things.recipe(),
        "base": things.base,
        "fibre_g": "100",
    }
    said = {**plain, "pot": things.pot, **typed}
    return read(client.get(PLAN, said, headers={"HX-Request": "true"}))


def planned(things: Dyeing, version: int, source: int) -> str:
    wish = BathWish(
        version_id=version,
        base_id=things.base,
        fibre_g=100.0,
        dyed_on=today(),
        pot_id=things.pot,
        source_id=source,
    )
    return keep_bath(wish=wish, stamp=stamp_now(by=None))


def test_without_burners_the_plan_leads_to_the_shelf(
    client: Client, things: Dyeing
) -> None:
    page = live(client, things)
    assert "Once your burners are on the shelf" in page.text
    assert "/burners/new/" in page.links
    assert 'name="source"' not in page.source


def test_a_guess_is_called_a_guess(client: Client, things: Dyeing) -> None:
    page = live(client, things, source=ring())
    assert "50 min to 90 °C, as the recipe says." in page.text
    assert "a guess: no heat-up of this pot on this burner is timed yet" in page.text
    assert "Turn it down to about" in page.text
    assert "kWh" in page.text
    assert "The pot’s own weight is not known and left out." in page.text


def test_what_was_timed_stands_on_every_page(client: Client, things: Dyeing) -> None:
    version, source = things.recipe(), ring()
    for minutes in (36.0, 40.0, 38.0):
        number = planned(things, version, source)
        tapped(number, BathAct.HEAT_ON, "heat", at=ago(minutes=minutes + 100))
        tapped(number, BathAct.AT_TOP, "top", at=ago(minutes=100))
    bath = planned(things, version, source)
    said = "from 3 heat-ups of this pot here"
    plan = {"again": bath}
    for address, asked in (
        (PLAN, plan),
        (f"/baths/{bath}/", {}),
        (f"/bench/{bath}/", {"step": "heat"}),
    ):
        page = read(client.get(address, asked))
        assert said in page.text, address
        assert "33 to 44 min" in page.text, address


def test_the_pots_last_burner_stands_there_first(
    client: Client, things: Dyeing
) -> None:
    version = things.recipe()
    planned(things, version, ring())
    asked = {"version": version, "base": things.base, "pot": things.pot}
    page = read(client.get(PLAN, asked | {"fibre_g": "100"}))
    assert "Last: Left ring" in page.text
    assert "as the recipe says" in page.text


def test_high_up_the_plan_and_the_bath_say_that_it_boils_first(
    client: Client, things: Dyeing
) -> None:
    set_altitude(3500.0)
    assert "90 °C cannot be reached" in live(client, things, source=ring()).text
    bath = things.bath(things.recipe("High Tide"))
    assert "90 °C cannot be reached" in read(client.get(f"/baths/{bath}/")).text


def test_a_burner_that_is_none_is_refused(client: Client, things: Dyeing) -> None:
    ring()
    page = live(client, things, source="999")
    assert "On must be one of those offered." in page.text
