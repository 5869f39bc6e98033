"""No key stands at the pot before its script does; without scripts all of them do."""

import pytest
from playwright.sync_api import Browser, Page, Route, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models.baths import BathAct
from tests.browser import PHONE, axe, goes_sideways
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = pytest.mark.django_db(transaction=True)
WORDS = "The keys come once this page has loaded whole."


@pytest.fixture
def pot(live_server: LiveServer) -> Ready:
    del live_server
    founded()
    return ready()


def test_no_key_can_be_pressed_before_the_script_stands(
    live_server: LiveServer, page: Page, pot: Ready
) -> None:
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/bench/bench.*js", hold)
    address = f"{live_server.url}/bench/{pot.number}/?view=main"
    page.goto(address, wait_until="commit")
    expect(page.get_by_text(WORDS)).to_be_visible()
    done = page.locator(".panel:not([hidden]) .first")
    expect(done.first).to_be_hidden()
    expect(page.locator(".live form button").locator("visible=true")).to_have_count(0)
    assert goes_sideways_now(page) == 0
    for route in held:
        route.continue_()
    expect(page.get_by_role("button", name="Done, ").first).to_be_visible()
    expect(page.get_by_text(WORDS)).to_be_hidden()
    assert axe(page) == []
    assert goes_sideways(page) == 0


def goes_sideways_now(page: Page) -> int:
    """Return by how much the page is too wide while it has not come whole."""
    return int(page.evaluate("document.documentElement.scrollWidth - innerWidth"))


def test_a_page_whose_script_never_comes_says_so(
    live_server: LiveServer, page: Page, pot: Ready
) -> None:
    page.route("**/bench/taps.*js", lambda route: route.abort())
    page.goto(f"{live_server.url}/bench/{pot.number}/?view=main")
    expect(page.get_by_text("If they stay away, load it anew.")).to_be_visible()
    assert axe(page) == []


def test_without_scripts_the_keys_write_by_plain_forms(
    browser: Browser, live_server: LiveServer, pot: Ready
) -> None:
    tapped(pot.number, BathAct.STARTED, "fill", at=ago(minutes=5))
    context = browser.new_context(
        java_script_enabled=False,
        viewport={"width": PHONE[0], "height": PHONE[1]},
    )
    page = context.new_page()
    page.goto(f"{live_server.url}/bench/{pot.number}/?view=main")
    expect(page.get_by_text(WORDS)).to_be_hidden()
    page.get_by_role("button", name="Done, 60").click()
    expect(page.get_by_role("button", name="Done, 30").first).to_be_visible()
    context.close()
