"""On a phone: the rest rescaled in one tap, the cup in two, each only once written."""

import re

import pytest
from playwright.sync_api import Page, Route, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.workflows.bath_pages import BathAct
from tests.browser import axe, goes_sideways
from tests.fingers import Finger
from tests.web.bench.test_look import MEASURE
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped


@pytest.fixture
def pot(live_server: LiveServer) -> Ready:
    """Slate went over: 66 ml for 60, and Gorse is still to come."""
    del live_server
    founded()
    pot = ready()
    tapped(pot.number, BathAct.STARTED, "fill")
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66.0, unit="ml", bottle=pot.slate)
    return pot


def test_the_rest_is_rescaled_in_one_tap_while_the_studio_answers(
    live_server: LiveServer, phone: Page, pot: Ready
) -> None:
    finger = Finger(phone)
    phone.goto(f"{live_server.url}/bench/{pot.number}/?view=main")
    assert axe(phone) == []
    assert not goes_sideways(phone)

    def cut(route: Route) -> None:
        route.abort()

    phone.route("**/tap/", cut)
    finger("Rest 10")
    expect(phone.locator("[data-fault]")).to_contain_text("this is not written")
    done = phone.get_by_role("button", name="Done, 30").locator("visible=true")
    expect(done).to_be_visible()
    phone.unroute("**/tap/")
    assert finger.count(lambda: finger("Rest 10")) == 1
    done = phone.get_by_role("button", name="Done, 33").locator("visible=true")
    expect(done).to_be_visible()
    expect(phone.locator("[data-deviation]")).to_have_count(0)


def test_the_cup_is_two_taps_and_says_one_thing_to_do(
    live_server: LiveServer, phone: Page, pot: Ready
) -> None:
    tapped(pot.number, BathAct.AT_TOP, "top", value=90.0, unit="°C", at=ago(minutes=31))
    finger = Finger(phone)
    phone.goto(f"{live_server.url}/bench/{pot.number}/?step=hold&view=main")

    def look() -> None:
        finger("Colour is left", role="link")
        finger("A quarter")

    assert finger.count(look) <= 2
    note = phone.locator(".cup")
    expect(note).to_contain_text("Time: hold it 15")
    longer = phone.get_by_role("button", name=re.compile(r"Hold 15.min longer"))
    expect(longer).to_be_visible()
    assert axe(phone) == []
    assert not goes_sideways(phone)


def test_all_of_it_is_as_big_as_the_bench(
    live_server: LiveServer, page: Page, pot: Ready
) -> None:
    for query in ("view=main", "step=hold&view=left", "step=finish&view=main"):
        page.goto(f"{live_server.url}/bench/{pot.number}/?{query}")
        found = page.evaluate(MEASURE)
        assert found["small"] == [], query
        # Above a long note the page moves on below the keys, which stay in view.
        is_long = query == "view=main"
        assert is_long or found["nearest"][0] >= 11.5, (query, found["nearest"])
        assert found["smallest_text"] >= 18, query
        assert axe(page) == [], query
        assert not goes_sideways(page), query
