"""Recipes and baths in a real browser: sound at every width, and while typing."""

import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.people import Person
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import recipes, version, write_recipe, write_version
from shadewright.workflows.stamps import stamp_now
from tests.browser import LOOKS, axe, goes_sideways, watched_page
from tests.web.dyeing import Dyeing, dyeing_things


def dyed(things: Dyeing) -> tuple[str, ...]:
    """Write recipes, plan and begin baths; return the address of every page."""
    first = things.recipe()
    write_version(parent_id=first, text=things.text(), stamp=stamp_now(by=None))
    text = RecipeText(doses=(DoseLine(as_written="3 tsp of my blue"),))
    old = write_recipe(name="Ancient", text=text, stamp=stamp_now(by=None))
    going, planned = things.bath(first), things.bath(first)
    for act, step in ((BathAct.STARTED, "fill"), (BathAct.MISSED, "dose-1")):
        tap = Tap(bath=going, act=act, step=step)
        keep_tap(tap, stamp=stamp_now(by=None))
    home = f"/recipes/{version(first).recipe_id}/"
    plan = f"/baths/new/?version={first}&base={things.base}&fibre_g="
    return (
        "/recipes/",
        home,
        f"{home}changes/",
        f"{home}rename/",
        f"{home}versions/new/",
        f"/recipes/{old.recipe_id}/",
        "/recipes/new/",
        "/baths/",
        "/baths/new/",
        f"{plan}900",
        f"{plan}none",
        f"/baths/{going}/",
        f"/baths/{going}/give-up/",
        f"/baths/{going}/pour-away/",
        "/acid-for-acid/",
        "/waters/new/",
        f"/baths/{planned}/doses/dose-1/",
    )


@pytest.mark.slow
@pytest.mark.parametrize("look", LOOKS)
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, ines: Person, look: str
) -> None:
    del ines
    size, scheme = LOOKS[look]
    with watched_page(browser, size, scheme=scheme) as page:
        for address in dyed(dyeing_things()):
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address


def test_a_recipe_is_written_and_a_bath_planned_from_it(
    page: Page, live_server: LiveServer, ines: Person
) -> None:
    del ines
    things = dyeing_things()
    page.goto(f"{live_server.url}/recipes/")
    page.get_by_role("link", name="New recipe").click()
    page.get_by_label("Name").fill("Low Tide")
    page.get_by_label("Dye 1").select_option("Slate")
    page.get_by_label("Depth 1").fill("0,6")
    page.get_by_label("Acid or helper 1").select_option("Vinegar")
    page.get_by_label("Amount 1").fill("2")
    page.get_by_role("button", name="Write it down").last.click()
    page.get_by_text("Low Tide, version 1, is written down").wait_for()
    page.get_by_role("link", name="Plan a bath").click()
    page.get_by_label("Base").select_option("Fell DK")
    page.get_by_label("Dry yarn").fill("97")
    page.get_by_text("58.2 ml of").wait_for()
    page.get_by_label("Pot").select_option("Blue pot, 12 l")
    page.get_by_label("Dry yarn").fill("970")
    page.locator("#id_pot_foot").get_by_text("Dye at most").wait_for()
    assert axe(page) == []
    page.get_by_label("Dry yarn").fill("100")
    page.get_by_text("60 ml of").wait_for()
    page.get_by_role("button", name="Plan this bath").click()
    page.get_by_text("is planned").wait_for()
    row = Bath.objects.get()
    assert row.fibre_g == 100.0
    assert row.pot_id == things.pot
    expect(page.get_by_role("link", name="To the bench")).to_be_visible()


def test_enter_in_a_recipe_writes_it_down(
    desk: Page, live_server: LiveServer, ines: Person
) -> None:
    del ines
    dyeing_things()
    desk.goto(f"{live_server.url}/recipes/new/")
    desk.get_by_label("Name").fill("Low Tide")
    desk.get_by_label("Or in words 1").fill("3 tsp of my blue")
    desk.keyboard.press("Enter")
    desk.get_by_text("Incomplete").first.wait_for()
    assert [each.name for each in recipes()] == ["Low Tide"]
