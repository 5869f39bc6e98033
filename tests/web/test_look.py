"""The look in a real browser: every part once, on a phone and on a desk."""

import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.workflows.people import add_person
from tests.browser import axe, goes_sideways, watched_page

pytestmark = pytest.mark.urls("tests.web.sample")
SMALLEST = (320, 700)
PHONE, DESK = (390, 844), (1280, 860)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [SMALLEST, PHONE, DESK], ids=["320", "390", "1280"])
def test_every_part_is_sound(
    browser: Browser, live_server: LiveServer, size: tuple[int, int], scheme: str
) -> None:
    add_person("Ines")
    add_person("Tam")
    with watched_page(browser, size, scheme=scheme) as page:
        page.goto(f"{live_server.url}/sample/")
        assert axe(page) == []
        page.click("details.who summary")
        assert axe(page, inside="details.who") == []  # it lies over what is below
        assert goes_sideways(page) == 0
        page.goto(f"{live_server.url}/nowhere/")
        assert axe(page) == []


def test_a_faulty_form_takes_the_focus_and_leads_to_the_field(
    page: Page, live_server: LiveServer
) -> None:
    page.goto(f"{live_server.url}/sample/")
    page.get_by_label("Powder weighed").fill("−5 lumps")
    page.get_by_role("button", name="Weighed").click()
    expect(page.locator(":focus")).to_have_class("faults")
    expect(page.get_by_label("Powder weighed")).to_have_value("−5 lumps")
    assert axe(page) == []
    page.get_by_role("link", name="Powder weighed cannot be read").click()
    expect(page.locator(":focus")).to_have_id("id_powder_g")


def test_an_act_says_what_was_written_and_can_be_undone(
    page: Page, live_server: LiveServer
) -> None:
    page.goto(f"{live_server.url}/sample/")
    page.get_by_label("Powder weighed").fill("5.2")
    page.get_by_label("Day made").fill("2026-11-03")
    page.get_by_label("Clear").check()
    page.get_by_role("button", name="Weighed").click()
    expect(page.get_by_text("Weighed 5.2 g")).to_be_visible()
    assert axe(page) == []
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_text("Taken back")).to_be_visible()


def test_the_bench_is_taken_without_a_script(
    browser: Browser, live_server: LiveServer
) -> None:
    add_person("Ines")
    add_person("Tam")
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{live_server.url}/sample/")
    page.click("details.who summary")
    page.get_by_role("button", name="Tam").click()
    expect(page.locator(".masthead").get_by_text("Tam is at the bench")).to_be_visible()
    context.close()


def test_the_skip_link_is_the_first_stop(desk: Page, live_server: LiveServer) -> None:
    desk.goto(f"{live_server.url}/sample/")
    desk.keyboard.press("Tab")
    expect(desk.locator(":focus")).to_have_class("skip")
    desk.keyboard.press("Enter")
    expect(desk.locator(":focus")).to_have_id("main")


def test_keys_are_large_enough_for_gloves(phone: Page, live_server: LiveServer) -> None:
    phone.goto(f"{live_server.url}/sample/")
    heights = phone.locator(".desk-bench .keys .button").evaluate_all(
        "keys => keys.map(key => key.getBoundingClientRect().height)"
    )
    assert len(heights) == 3
    assert min(heights) >= 64
