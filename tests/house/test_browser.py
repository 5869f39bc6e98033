"""The browser fixtures see what they are there to see."""

from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from time import sleep

import pytest
from playwright.sync_api import Browser, Page

from tests.browser import DESK, PHONE, axe, goes_sideways, watched_page

GOOD = "<!doctype html><html lang=en><title>Good</title><main><h1>Good</h1></main>"
WIDE = GOOD + "<svg width=2000 height=9 aria-hidden=true></svg>"
OUTSIDE = GOOD + "<img alt='' src=//example.invalid/x.png>"
BROKEN = GOOD + "<script src=/nothing.js></script><script>nothing()</script>"
FORM = GOOD + "<form action=/slow><button>Go</button></form>"
SLOW = GOOD.replace("Good", "Slow")
INLINE = GOOD + "<p style='color: teal'>Teal</p>"
PAGES = {
    "/good": GOOD,
    "/wide": WIDE,
    "/outside": OUTSIDE,
    "/broken": BROKEN,
    "/inline": INLINE,
    "/form": FORM,
    "/slow": SLOW,
}


class Handler(BaseHTTPRequestHandler):
    """Serve the pages above, under a policy that allows no inline style."""

    def do_GET(self) -> None:
        """Answer with a page; take a while over the slow one."""
        path = self.path.rstrip("?")
        if path == "/slow":
            sleep(0.5)
        self.send_response(200)
        self.send_header("Content-Security-Policy", "style-src 'self'")
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.end_headers()
        self.wfile.write(PAGES.get(path, GOOD).encode())

    def log_message(self, *_words: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="module")
def site() -> Iterator[str]:
    """A site of pages that keep the rules and of pages that break them."""
    with ThreadingHTTPServer(("127.0.0.1", 0), Handler) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()


def test_good_page_has_no_fault(site: str, page: Page) -> None:
    page.goto(f"{site}/good")
    assert axe(page) == []
    assert goes_sideways(page) == 0


def test_sizes_are_those_of_a_phone_and_a_desk(phone: Page, desk: Page) -> None:
    widths = [page.evaluate("innerWidth") for page in (phone, desk)]
    assert widths == [PHONE[0], DESK[0]] == [390, 1280]


def test_axe_finds_a_page_without_a_language(phone: Page) -> None:
    phone.set_content("<title>Bad</title><img src='data:,'>")
    assert {line.split(":")[0] for line in axe(phone)} >= {"html-has-lang", "image-alt"}


def test_sideways_scroll_is_measured(site: str, phone: Page) -> None:
    phone.goto(f"{site}/wide")
    assert goes_sideways(phone) > 1000


@pytest.mark.parametrize(
    ("path", "fault"),
    [
        ("outside", "asked for http://example.invalid/x.png"),
        ("broken", "script error"),
        ("inline", "Content Security Policy"),
    ],
)
def test_watch_fails_a_page_that_breaks_the_rules(
    site: str, browser: Browser, path: str, fault: str
) -> None:
    with (
        pytest.raises(AssertionError, match=fault),
        watched_page(browser, PHONE) as page,
    ):
        page.goto(f"{site}/{path}")


@pytest.mark.parametrize(("act", "words"), [("click", ()), ("press", ("Enter",))])
def test_a_key_waits_for_the_page_behind_its_form(
    site: str, page: Page, act: str, words: tuple[str, ...]
) -> None:
    """Ours waits though Playwright is told not to, as it may on a busy machine."""
    page.goto(f"{site}/form")
    getattr(page.get_by_role("button"), act)(*words, no_wait_after=True)
    assert page.title() == "Slow"


def test_a_test_with_a_browser_is_asked_once_more_and_no_other(
    request: pytest.FixtureRequest, phone: Page
) -> None:
    del phone
    again = request.node.get_closest_marker("flaky")
    assert again.kwargs == {"reruns": 1}
    for item in request.session.items:
        is_asked_again = item.get_closest_marker("flaky") is not None
        assert is_asked_again == (item.get_closest_marker("browser") is not None)
