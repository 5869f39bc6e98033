"""A tap on a usual strength holds back Begin until the plan has followed it."""

import re

import pytest
from playwright.sync_api import Page, Route, expect
from pytest_django.live_server_helper import LiveServer

from tests.web.benches import Bench, small_bench

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def bench(live_server: LiveServer) -> Bench:
    del live_server
    return small_bench()


def test_what_is_begun_is_the_strength_that_was_tapped_last(
    live_server: LiveServer, phone: Page, bench: Bench
) -> None:
    asked = f"{live_server.url}/stocks/new/?dye={bench.dye}&volume_ml=500"
    phone.goto(f"{asked}&strength_percent=0.5")
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    phone.route("**/stocks/new/?**", hold)
    begin = phone.get_by_role("button", name="Begin", exact=True)
    expect(begin).to_be_enabled()
    with phone.expect_request("**/stocks/new/?**"):
        phone.get_by_role("button", name=re.compile(r"^1\s%")).click()
    expect(begin).to_be_disabled()  # the form still says 0.5 %
    for route in held:
        route.continue_()
    begin.click()
    expect(phone.locator("main")).to_contain_text("Slate stock, 500 ml at 1 %")
