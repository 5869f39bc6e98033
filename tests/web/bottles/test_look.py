"""A bottle and its acts in a real browser, on a phone and on a desk."""

import re

import pytest
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.web.bottles.acts import ACTS
from tests.browser import axe, goes_sideways
from tests.workflows.bench import entered, founded, made, new_dye, new_jar


@pytest.fixture
def code(transactional_db: None) -> str:
    """A made bottle beside a stronger one of the same dye."""
    del transactional_db
    founded()
    dye_id = new_dye()
    entered(dye_id, volume_ml=300.0, strength_percent=4.0)
    return made(dye_id, new_jar(dye_id)).code


def sound(page: Page) -> None:
    assert axe(page) == []
    assert goes_sideways(page) == 0


@pytest.mark.slow
def test_every_page_is_sound(live_server: LiveServer, page: Page, code: str) -> None:
    for act in ("", *(f"{key}/" for key in ACTS)):
        page.goto(f"{live_server.url}/bottles/{code}/{act}")
        sound(page)


@pytest.mark.parametrize("act", ["", "powder/"])
def test_it_is_sound_in_the_dark_and_on_a_narrow_phone(
    live_server: LiveServer, desk: Page, code: str, act: str
) -> None:
    desk.emulate_media(color_scheme="dark")
    desk.set_viewport_size({"width": 320, "height": 700})
    desk.goto(f"{live_server.url}/bottles/{code}/{act}")
    sound(desk)


def test_draw_undo_strengthen_and_pour_away(
    live_server: LiveServer, page: Page, code: str
) -> None:
    page.goto(f"{live_server.url}/bottles/{code}/")
    page.get_by_role("link", name="Draw", exact=True).click()
    page.get_by_label("Drawn").fill("a lot")
    page.get_by_role("button", name="Drawn").click()
    expect(page.get_by_label("Drawn")).to_have_value("a lot")
    sound(page)
    page.get_by_label("Drawn").fill("35")
    page.get_by_role("button", name="Drawn").click()
    toast = page.locator(".toasts")
    expect(toast).to_contain_text(re.compile(r"465.ml left"))
    toast.get_by_role("button", name="Undo").click()
    page.goto(f"{live_server.url}/bottles/{code}/")
    expect(page.get_by_text("Undone: Drawn")).to_be_visible()
    sound(page)
    page.get_by_role("link", name="Strengthen").click()
    page.get_by_label("Strength wanted").fill("1.5")
    page.get_by_role("button", name="Work it out").click()
    expect(page.get_by_label("Powder added")).to_have_value("2.5")
    page.get_by_role("button", name="Added").click()
    expect(page.locator(".headline")).to_contain_text("1.5")
    page.get_by_role("link", name="Pour away").click()
    page.get_by_role("button", name="Poured away").click()
    expect(page.get_by_text("poured away").first).to_be_visible()
    expect(page.get_by_role("link", name="Draw", exact=True)).to_have_count(0)
    sound(page)
