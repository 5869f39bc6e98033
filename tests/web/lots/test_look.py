"""Every page of the room in a real browser: three widths, light and dark."""

from pathlib import Path
from uuid import uuid4

import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_django.fixtures import Settings
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import ColourEvidence
from shadewright.workflows.lots import add_photo, note_colour
from shadewright.workflows.mending import merge
from shadewright.workflows.people import add_person
from shadewright.workflows.stamps import stamp_now
from tests.browser import axe, goes_sideways, watched_page
from tests.exchange.test_photo import photo
from tests.workflows.bench import founded, made, new_jar
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready, tapped

SIZES = {"320": (320, 700), "390": (390, 844), "1280": (1280, 860)}


def many_lots() -> tuple[Ready, int, str]:
    """Return a pot that is dyed, a jar, and a lot with everything on it."""
    founded()
    add_person("Bo")
    pot = ready(bottle_ml=1000.0)
    jars = [new_jar(pot.slate_dye), new_jar(pot.slate_dye)]
    bottle, other = (made(pot.slate_dye, jar) for jar in jars)
    merge(code=bottle.code, from_codes=[other.code], stamp=stamp_now(by=None))
    number = pot.another()
    tapped(number, BathAct.STARTED, "fill", value=2.9, unit="l")
    code = bottle.code
    tapped(number, BathAct.DOSED, "dose-1", value=66.0, unit="ml", bottle=code)
    tapped(number, BathAct.PROBLEM, "hold")
    finished(
        number, grams=98.5, skeins=1, place="Shelf C2", note="A pale tie at one end"
    )
    colour = {"colour": "45, 25.5, −3", "evidence": ColourEvidence.METER}
    note_colour(number=number, stamp=stamp_now(by=None), **colour)  # type: ignore[arg-type]
    picture = photo(size=(800, 500))
    add_photo(number=number, photo=picture, stamp=stamp_now(by=None, deed=uuid4()))
    finished(dyed(pot, pot.another()))
    return pot, jars[0], number


@pytest.mark.parametrize(
    ("size", "scheme"), [("320", "dark"), ("390", "light"), ("1280", "light")]
)
def test_every_page_is_sound(
    browser: Browser,
    live_server: LiveServer,
    settings: Settings,
    tmp_path: Path,
    size: str,
    scheme: str,
) -> None:
    settings.MEDIA_ROOT = tmp_path
    pot, jar, number = many_lots()
    addresses = (
        f"/baths/{pot.number}/finish/",
        "/lots/",
        f"/lots/{number}/",
        f"/lots/compare/?a={number}",
        f"/lots/compare/?a={number}&b={pot.number[:-1]}3",
        f"/lots/{number}/trace/",
        f"/jars/{jar}/trace/",
        f"/bottles/{pot.slate}/trace/",
    )
    with watched_page(browser, SIZES[size], scheme=scheme) as page:
        for address in addresses:
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address
            assert page.locator("h1").count() == 1, address


def test_a_pot_takes_one_tap_to_finish(phone: Page, live_server: LiveServer) -> None:
    founded()
    pot = ready()
    dyed(pot)
    phone.goto(f"{live_server.url}/baths/{pot.number}/finish/")
    key = phone.get_by_role("button", name="Write the lot")
    box = key.bounding_box()
    assert box is not None
    assert box["height"] >= 64
    key.click()
    expect(phone.get_by_text(f"Lot {pot.number} is written")).to_be_visible()


def test_a_faulty_finish_keeps_what_was_typed(
    phone: Page, live_server: LiveServer
) -> None:
    founded()
    pot = ready()
    phone.goto(f"{live_server.url}/baths/{pot.number}/finish/")
    phone.get_by_role("combobox", name="Place").fill("Attic")
    phone.get_by_label("Dry weight").fill("heavy")
    phone.get_by_role("button", name="Write the lot").click()
    expect(phone.locator(":focus")).to_have_class("faults")
    expect(phone.get_by_role("combobox", name="Place")).to_have_value("Attic")
    assert axe(phone) == []
    phone.get_by_label("Dry weight").fill("")
    phone.get_by_role("button", name="Write the lot").click()
    phone.get_by_label("Write the lot all the same").check()
    phone.get_by_role("button", name="Write the lot").click()
    expect(phone.get_by_text(f"Lot {pot.number} is written")).to_be_visible()
