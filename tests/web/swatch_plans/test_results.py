"""The colours of a set, entered on one page."""

import pytest
from django.test import Client

from shadewright.records.models import Base, ColourReading, WantedColour
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.plan_keeping import keep_plan
from shadewright.workflows.shades.plan_pages import swatch_set
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import Answer, read
from tests.workflows.shades.planned import dye, ladder
from tests.workflows.shades.swatch_rows import kept_singles

pytestmark = pytest.mark.django_db


@pytest.fixture
def address(ines: object) -> str:
    """A set of three swatches that nobody has begun."""
    del ines
    base = Base.objects.create(name="Hollow 4-ply")
    kept_singles(base)
    fit_now(why="test")
    wish = ladder(base, dye_ids=(dye("Gorse"),), rungs=3)
    return f"/shades/plans/{keep_plan(wish, stamp_now(by=None))}/"


def sent(client: Client, address: str, **said: str) -> Answer:
    page = read(client.get(f"{address}colours/"))
    typed = {"deed": page.value("deed"), "way": "eye"} | said
    return read(client.post(f"{address}colours/", typed, follow=True))


def test_a_set_leads_to_its_colours_and_on_to_the_palette(
    client: Client, address: str
) -> None:
    before = read(client.get(address))
    assert f"{address}colours/" in before.links
    assert not any(link.startswith("/shades/palettes/") for link in before.links)
    asked = read(client.get(f"{address}colours/"))
    assert "what was not ticked of a swatch is written down as planned" in asked.text
    done = sent(
        client, address, colour_1="#c9a53a", colour_2="60; 4; 40", pick_3="#ddbb66"
    )
    assert "3 colours kept; 3 swatches dyed as planned" in done.text
    assert "3 dyed, 3 read" in done.text
    assert f"{address}colours/" not in done.links
    assert any(link.startswith("/shades/palettes/") for link in done.links)
    assert client.get(f"{address}colours/").headers["Location"] == address


def test_a_line_left_empty_waits(client: Client, address: str) -> None:
    done = sent(client, address, colour_2="#c9a53a")
    assert "1 colour kept; 1 swatch dyed as planned" in done.text
    assert "1 dyed, 1 read" in done.text
    again = read(client.get(f"{address}colours/"))
    numbers = swatch_set(int(address.split("/")[-2])).numbers
    assert numbers[1] not in again.text
    assert f"/baths/{numbers[0]}/card/" in again.links


def test_a_bad_colour_keeps_none_and_loses_nothing(
    client: Client, address: str
) -> None:
    page = sent(client, address, colour_1="#c9a53a", colour_2="rather yellow")
    assert page.status == 422
    assert "It is neither Lab nor a screen’s colour" in (page.fault("colour_2") or "")
    assert page.value("colour_1") == "#c9a53a"
    assert page.value("colour_2") == "rather yellow"
    numbers = swatch_set(int(address.split("/")[-2])).numbers
    assert not ColourReading.objects.filter(swatch__bath__number__in=numbers).exists()


def test_nothing_filled_in_is_said(client: Client, address: str) -> None:
    page = sent(client, address)
    assert page.fault("colour_1") == "No colour is filled in yet: pick or type one."


def test_a_colour_that_was_looked_for_is_kept_with_its_trials(
    client: Client, address: str
) -> None:
    """The set says which trial came nearest to it, and leads back to the search."""
    del address
    mix = f"{dye('Gorse')}:0.6,{dye('Sloe')}:0.2"
    asked = {"kind": "bracket", "mix": mix, "colour": "#7d7a45", "name": "Moss"}
    plan = read(client.get("/shades/plans/new/", asked))
    assert "Moss, kept with the set" in plan.text
    said = {x: plan.value(x) for x in ("deed", "dyed_on", "target", "mix")}
    said["base"] = str(Base.objects.get().pk)
    typed = said | {"kind": "bracket", "yarn_g": "10", "wanted": ""}
    done = client.post("/shades/plans/new/", typed)
    client.post("/shades/plans/new/", typed)
    assert WantedColour.objects.get().name == "Moss"
    own = done.headers["Location"]
    assert "Nearest" not in read(client.get(own)).text
    page = sent(client, own, colour_1="#6d7a42", colour_2="#7d7945")
    assert "Nearest swatch 2: ΔE 0." in page.text.replace("\u00a0", " ")
    wanted = WantedColour.objects.get().pk
    assert any(f"/shades/find/?wanted={wanted}" in link for link in page.links)


@pytest.mark.parametrize("colour", ["", "zz", "NaN,0,0"])
def test_a_colour_that_cannot_be_read_is_none(
    client: Client, address: str, colour: str
) -> None:
    del address
    asked = {"kind": "next", "count": "2", "colour": colour}
    plan = read(client.get("/shades/plans/new/", asked))
    assert plan.status == 200
    assert "All colours alike" in plan.text
