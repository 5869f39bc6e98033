"""Why a lot does not match, and its drift, on their pages."""

from uuid import uuid4

import pytest
from django.test import Client
from playwright.sync_api import Browser, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.workflows.judging.histories import history_up_to
from tests.browser import DESK, PHONE, axe, goes_sideways, watched_page
from tests.web.pages_read import read
from tests.workflows.bench import founded
from tests.workflows.judging.lots_in_a_row import (
    LotsInARow,
    lots_in_a_row,
    palette_of_both,
)


@pytest.fixture
def row(db: None) -> LotsInARow:
    """Lots of which the last is from a new jar, and paler by its dye."""
    del db
    founded()
    found = lots_in_a_row(off=(2.2, 0.0, 1.9), is_new_jar=True)
    palette_of_both(found.pot)
    return found


def test_a_new_jar_is_named_and_its_bottle_corrected(
    browser: Browser, live_server: LiveServer, row: LotsInARow
) -> None:
    with watched_page(browser, PHONE) as page:
        page.goto(f"{live_server.url}/lots/{row.last}/")
        page.get_by_role("link", name="Why does it not match?").click()
        expect(page.get_by_text("Nobody wrote it down")).to_be_visible()
        expect(page.get_by_text("If it was the bottle")).to_be_visible()
        assert axe(page) == []
        assert goes_sideways(page) == 0
        page.get_by_role("button", name="count as that").click()
        expect(page.get_by_role("button", name="Undo")).to_be_visible()
        page.get_by_role("link", name="Drift, lot by lot").click()
        expect(page.get_by_role("img", name="Distance from the mean")).to_be_visible()
        assert axe(page) == []
        assert goes_sideways(page) == 0
        drift = page.url
    with watched_page(browser, DESK, scheme="dark") as page:
        for address in (drift, f"{live_server.url}/lots/{row.last}/why/"):
            page.goto(address)
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address


@pytest.mark.store
def test_a_hold_that_nobody_ticked_may_be_the_cause(db: None, client: Client) -> None:
    del db
    founded()
    last = lots_in_a_row(off=(2.6, -0.4, 0.6), hold_min=None).last
    page = read(client.get(f"/lots/{last}/why/"))
    assert "Hold : not written down; 30 min before" in page.text
    assert "Ask whoever dyed it." in page.text
    assert "find out the hold, which nobody wrote down: it was 30 before" in page.text


@pytest.mark.store
def test_few_lots_and_no_colour_are_met_with_the_next_step(
    client: Client, row: LotsInARow
) -> None:
    first = read(client.get(f"/lots/{row.numbers[0]}/why/"))
    assert "no lot before it was read" in first.text
    bare = row.pot.another()
    finish = {"deed": str(uuid4()), "grade": "first", "is_sure": "on"}
    client.post(f"/baths/{bare}/finish/", finish)
    page = read(client.get(f"/lots/{bare}/why/"))
    assert "Read its colour" in page.text
    what = history_up_to(bare).what
    table = client.get(f"/drift/{what.recipe_id}/{what.base_id}/history.csv")
    assert len(table.text.splitlines()) == 1 + len(row.numbers) + 1
    strange = f"/drift/{what.recipe_id}/{what.base_id}/history.csv?lot=T7KK"
    assert client.get(strange).status_code == 404
    assert client.get("/drift/99999/99999/").status_code == 404
