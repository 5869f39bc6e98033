"""The bench in the browser: sizes, axe, nothing sideways, in every view."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Browser, Page
from pytest_django.live_server_helper import LiveServer

from tests.browser import axe, goes_sideways, watched_page
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped

VIEWS = ("main", "ask", "other", "problem", "bottle", "wrong", "out", "note", "round")
SIZES = {"phone": (390, 844), "lying": (844, 390), "desk": (1280, 860)}
SCHEMES = {"phone": "dark", "lying": "light", "desk": "light"}
"""Each window in one scheme: sizes hang on no colour, and colours on no size."""

MEASURE = """() => {
  const shown = [...document.querySelectorAll(".button, [data-go]")]
    .filter((one) => one.offsetParent && !one.disabled)
    .map((one) => ({words: one.textContent.trim(), box: one.getBoundingClientRect()}));
  const gaps = [];
  for (const a of shown) for (const b of shown) {
    if (a === b) continue;
    const across = Math.max(a.box.left - b.box.right, b.box.left - a.box.right);
    const down = Math.max(a.box.top - b.box.bottom, b.box.top - a.box.bottom);
    gaps.push([Math.max(across, down), a.words, b.words]);
  }
  gaps.sort((a, b) => a[0] - b[0]);
  return {
    small: shown.filter((one) => one.box.height < 63.5 || one.box.width < 63.5)
      .map((one) => [one.words, one.box.width, one.box.height]),
    nearest: gaps[0] ?? [99, "", ""],
    smallest_text: Math.min(...[...document.querySelectorAll("main *")]
      .filter((one) => one.offsetParent && one.childNodes.length &&
        [...one.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim()))
      .map((one) => parseFloat(getComputedStyle(one).fontSize))),
  };
}"""


@pytest.fixture
def pot(live_server: LiveServer) -> Ready:
    del live_server
    founded()
    one = ready()
    one.another()  # so that the bar leads there
    return one


@pytest.fixture
def opened(live_server: LiveServer, pot: Ready) -> Callable[[Page, str], None]:
    """Open a view of the first dose."""
    tapped(pot.number, "started", "fill")  # type: ignore[arg-type]

    def go(page: Page, view: str) -> None:
        page.goto(f"{live_server.url}/bench/{pot.number}/?view={view}")

    return go


@pytest.mark.parametrize("size", SIZES)
def test_every_view_keeps_the_sizes_of_the_bench(
    browser: Browser, opened: Callable[[Page, str], None], size: str
) -> None:
    with watched_page(browser, SIZES[size], scheme=SCHEMES[size]) as page:
        for view in VIEWS:
            opened(page, view)
            found = page.evaluate(MEASURE)
            assert found["small"] == [], view
            assert found["nearest"][0] >= 11.5, (view, found["nearest"])
            assert found["smallest_text"] >= 18, view
            assert goes_sideways(page) == 0, view
            assert axe(page) == [], view


@pytest.mark.parametrize("size", SIZES)
def test_the_number_is_read_at_two_metres(
    browser: Browser, opened: Callable[[Page, str], None], size: str
) -> None:
    with watched_page(browser, SIZES[size]) as page:
        opened(page, "main")
        number = page.locator(".amount:visible [data-number]")
        assert number.inner_text() == "60"
        px = number.evaluate("(one) => parseFloat(getComputedStyle(one).fontSize)")
        assert px >= 60
        window = page.evaluate("innerHeight")
        keys = page.locator(".bench-keys:visible").bounding_box()
        assert keys is not None
        assert keys["y"] + keys["height"] <= window + 1
