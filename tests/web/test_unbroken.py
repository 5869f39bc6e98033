"""A number of a bath or lot stands in one piece wherever a page shows it."""

import pytest
from django.test import Client
from playwright.sync_api import Page
from pytest_django.live_server_helper import LiveServer

from shadewright.web.unbroken import unbroken
from shadewright.workflows.studio import found_studio
from tests.workflows.dyed import finished
from tests.workflows.pots import ready

NARROW = "(main, px) => { main.style.width = `${px}px`; }"
LINES = "all => all.map(one => one.getClientRects().length || 1)"
"""How many boxes each is laid out in; what is hidden has none."""


@pytest.mark.parametrize(
    "html",
    [
        '<input name="number" value="261126-B3">',
        "<title>Lot 261126-B3</title>",
        '<svg role="img"><text x="1">261126-B3</text></svg>',
        "<textarea>261126-B3 came out well</textarea>",
        "<p>J-1, 2026-11-26, 261126-X3, 1261126-B3</p>",
        "<button>Undo 261126-B3 now</button>",
        '<a class="button first" href="/">Why is 261126-B3 so?</a>',
    ],
)
def test_what_is_no_number_in_a_line_stays_as_it_is(html: str) -> None:
    assert unbroken(html) == html


@pytest.mark.django_db
def test_it_is_kept_whole_in_links_and_sentences(client: Client, ines: object) -> None:
    del ines
    number = finished(ready().number, is_sure=True)
    listed = client.get("/lots/").content.decode()
    assert f'><span class="lot-number">{number}</span></a>' in listed
    missing = client.get("/lots/250101-B9/").content.decode()
    assert 'no lot “<span class="lot-number">250101-B9</span>”.' in missing


def test_a_narrow_line_does_not_break_it(phone: Page, live_server: LiveServer) -> None:
    found_studio(name="Reach", person="Ines")
    number = finished(ready().number, is_sure=True)
    phone.goto(f"{live_server.url}/lots/{number}/")
    pieces = phone.locator("main .lot-number")
    assert pieces.count() > 1
    for width in range(80, 240, 8):
        phone.locator("main").evaluate(NARROW, width)
        assert set(pieces.evaluate_all(LINES)) == {1}
