"""The shelf in a real browser: sound at every width, worked by keys alone."""

import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Base, Dye
from shadewright.workflows.jars import receive_jar
from shadewright.workflows.people import Person
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import stamp_now
from tests.browser import LOOKS, axe, goes_sideways, watched_page

FIXED = (
    "/shelf/",
    "/shelf/enter/",
    "/jars/",
    "/jars/new/",
    "/dyes/",
    "/acids/new/",
    "/tools/new/",
    "/people/",
)


def enter(page: Page, *keys: str) -> None:
    """Type a bottle in, field after field; Enter sends it."""
    for place, typed in enumerate(keys):
        if place:
            page.keyboard.press("Tab")
        page.keyboard.type(typed)
    page.keyboard.press("Enter")


@pytest.mark.slow
@pytest.mark.parametrize("look", LOOKS)
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, gorse: Dye, look: str
) -> None:
    gorse.is_metal_complex = True
    gorse.save()
    base = Base.objects.create(name="Sock", fibres="Wool")
    jar = receive_jar(dye_id=gorse.pk, powder_g=50, stamp=stamp_now(by=None))
    size, scheme = LOOKS[look]
    with watched_page(browser, size, scheme=scheme) as page:
        page.goto(f"{live_server.url}/shelf/enter/")
        enter(page, "Gorse", "", "1", "350")
        page.wait_for_url("**/shelf/enter/?after=*")
        assert axe(page) == []
        own = (f"/jars/{jar.id}/", f"/dyes/{gorse.pk}/edit/", f"/bases/{base.pk}/")
        for address in (*FIXED, *own):
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address


def test_a_studio_begins_and_its_bottles_are_entered_by_keys_alone(
    page: Page, live_server: LiveServer
) -> None:
    page.goto(live_server.url + "/shelf/")
    page.get_by_label("The studio’s name").fill("Long Reach")
    page.get_by_label("Your name").fill("Ines")
    page.get_by_role("button", name="Begin").click()
    page.get_by_role("link", name="Enter the bottles you have").click()
    expect(page.locator(":focus")).to_have_id("id_dye")
    enter(page, "Gorse", "", "1", "350")
    page.wait_for_url("**/shelf/enter/?after=*")
    first = page.locator(".big-code").inner_text()
    expect(page.locator(":focus")).to_have_id("id_dye")
    page.keyboard.type("Kelp")
    for _ in ("the tick for a new dye", "the strength", "what is left"):
        page.keyboard.press("Tab")
    page.keyboard.type("0,2 l")
    page.keyboard.press("Enter")
    page.wait_for_function("code => !location.href.includes(code)", arg=first)
    assert [bottle.volume_ml for bottle in shelf()] in ([350, 200], [200, 350])
    second = page.locator(".big-code").inner_text()
    assert {bottle.dye_name for bottle in shelf()} == {"Gorse", "Kelp"}
    page.get_by_role("button", name=f"Undo {second}").click()
    page.get_by_text("Taken back").wait_for()
    assert [bottle.code for bottle in shelf()] == [first]


def test_a_faulty_bottle_leads_to_its_field(
    page: Page, live_server: LiveServer, ines: Person
) -> None:
    del ines
    page.goto(f"{live_server.url}/shelf/enter/")
    enter(page, "Gorse", "", "1", "half")
    page.get_by_role("link", name="Left in it is written as a volume").click()
    expect(page.locator(":focus")).to_have_id("id_volume_ml")
    assert page.get_by_label("Left in it").input_value() == "half"
    assert axe(page) == []
