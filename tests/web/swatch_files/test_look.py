"""A file of swatches in a real browser: sound at every width, kept with the keys."""

import pytest
from playwright.sync_api import Browser, Page
from pytest_django.live_server_helper import LiveServer

from shadewright.workflows.shades.swatches import swatches_now
from tests.browser import LOOKS, axe, goes_sideways, watched_page

pytestmark = pytest.mark.usefixtures("ines")

TABLE = (
    "base,doses,L,a,b,note\n"
    "Fell DK,,92,-0.4,7.9,bare\n"
    "Fell DK,Gorse=1;Madder of the north=0.25,55,85,-60,\n"
    f"Fell DK,Sloe=x,38,4,-32,{'a long note without a gap'.replace(' ', '-') * 6}\n"
)
LEVEL = ",".join(["25"] * 16)
SPECTRA = (
    "name,"
    + ",".join(f"R{nm}" for nm in range(400, 701, 20))
    + f"\nGorse 1 %,{LEVEL}\n"
    f"A mystery from the shed,{LEVEL}\nBad,1\n"
)


def show(page: Page, live_server: LiveServer, text: str) -> None:
    """Paste a text and look at its lines."""
    page.goto(f"{live_server.url}/shades/swatches/files/")
    page.get_by_label("Or its text, pasted").fill(text)
    page.get_by_role("button", name="Show its lines").click()
    page.get_by_role("heading", name="What stands in the file").wait_for()


@pytest.mark.slow
@pytest.mark.parametrize("look", LOOKS)
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, look: str
) -> None:
    size, scheme = LOOKS[look]
    with watched_page(browser, size, scheme=scheme) as page:
        page.goto(f"{live_server.url}/shades/swatches/files/")
        assert axe(page) == []
        for text in (TABLE, SPECTRA):
            show(page, live_server, text)
            page.locator("summary").first.click()
            assert axe(page) == []
            assert goes_sideways(page) == 0


def test_with_the_keyboard_from_lines_to_swatches(
    phone: Page, live_server: LiveServer
) -> None:
    show(phone, live_server, TABLE)
    phone.get_by_label("What Fell DK is made of").fill("wool")
    phone.get_by_role("button", name="Keep 2 swatches").press("Enter")
    phone.get_by_text("2 swatches are kept").wait_for()
    phone.get_by_label("Or its text, pasted").fill("base,doses,L,a,b\n")
    assert len(swatches_now()) == 2
