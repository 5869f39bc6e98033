"""A real browser for the tests: Debian's Chromium, on a phone and on a desk.

A test that takes ``page`` runs twice, 390 px and 1280 px wide; ``phone`` and
``desk`` are one of them. Each is watched: a test fails if its page asks for
anything outside this machine, breaks the content security policy or has an
error in a script. Such tests are marked ``browser`` by themselves.

::

    def test_today_opens(live_server: LiveServer, page: Page) -> None:
        page.goto(live_server.url)
        assert axe(page) == []
"""

import ctypes
import os
import shutil
import sys
from collections.abc import Generator, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import urlsplit

import axe_playwright_python
import pytest
from playwright.sync_api import (
    Browser,
    ConsoleMessage,
    Error,
    Page,
    expect,
    sync_playwright,
)

from tests.clicks import clicks_that_wait, note_forms, wait_until_come

DRIVER_LIBRARY = "libatomic.so.1"
NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")
QUIET = (
    "--disable-gpu",
    "--disable-quic",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
PHONE, DESK = (390, 844), (1280, 860)
LOOKS = {
    "narrow": ((320, 700), "dark"),
    "desk": (DESK, "light"),
}
"""Window and scheme in which a page must be sound: each width, each scheme once."""
PATIENCE_MS = 30_000
"""How long a test waits for what it expects: a busy machine is no fault of a page."""
WIRES = {"http", "https", "ws", "wss"}
HOME = ("127.0.0.1", "localhost", "::1")
# The rules of WCAG 2.2 AA, and those that are good sense beyond it.
RULES = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice")
AXE = Path(axe_playwright_python.__file__).with_name("axe.min.js")
RUN_AXE = """async ([part, rules]) => {
  const found = await axe.run(part, { runOnly: rules, resultTypes: ["violations"] });
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target} ${failureSummary}`));
}"""
"""What passes is not asked for: to name every node of it takes longer than the look."""


@dataclass
class Watch:
    """What a page did that none of our pages may do."""

    faults: list[str] = field(default_factory=list)

    def on(self, page: Page) -> None:
        """Begin to watch a page."""
        page.on("request", lambda request: self.asked(request.url))
        page.on("console", self.said)
        page.on("pageerror", self.broke)

    def asked(self, url: str) -> None:
        """Note a request that leaves this machine."""
        parts = urlsplit(url)
        if parts.scheme in WIRES and parts.hostname not in HOME:
            self.faults.append(f"asked for {url}")

    def said(self, message: ConsoleMessage) -> None:
        """Note a breach of the content security policy."""
        if "Content Security Policy" in message.text:
            self.faults.append(message.text)

    def broke(self, error: Error) -> None:
        """Note an error in a script."""
        self.faults.append(f"script error: {error.message}")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One Chromium for all browser tests."""
    program = find_program()
    if not program:
        pytest.fail("Chromium is missing: sudo apt install chromium")
    is_root = hasattr(os, "geteuid") and os.geteuid() == 0
    expect.set_options(timeout=PATIENCE_MS)
    flags = [*QUIET, *(["--no-sandbox"] if is_root else [])]
    with _django_beside_a_loop(), clicks_that_wait(), sync_playwright() as player:
        browser = player.chromium.launch(executable_path=program, args=flags)
        yield browser
        browser.close()


def find_program() -> str:
    """Return the Chromium of this machine, or nothing."""
    return next(filter(None, map(shutil.which, NAMES)), "")


def has_driver_library() -> bool:
    """Say whether the library is there that Playwright's own Node asks for."""
    if sys.platform != "linux":
        return True
    try:
        ctypes.CDLL(DRIVER_LIBRARY)
    except OSError:
        return False
    return True


@pytest.fixture
def phone(browser: Browser) -> Iterator[Page]:
    """A watched page, 390 px wide."""
    with watched_page(browser, PHONE) as page:
        yield page


@pytest.fixture
def desk(browser: Browser) -> Iterator[Page]:
    """A watched page, 1280 px wide."""
    with watched_page(browser, DESK) as page:
        yield page


@pytest.fixture(params=[PHONE, DESK], ids=["phone", "desk"])
def page(browser: Browser, request: pytest.FixtureRequest) -> Iterator[Page]:
    """A watched page, once on the phone and once on the desk."""
    with watched_page(browser, request.param) as page:
        yield page


@contextmanager
def watched_page(
    browser: Browser, size: tuple[int, int], *, scheme: str = "light"
) -> Generator[Page]:
    """Open a page of its own; fail at the end if it did what none may do."""
    context = browser.new_context(
        viewport={"width": size[0], "height": size[1]},
        color_scheme="dark" if scheme == "dark" else "light",
        reduced_motion="reduce",
        locale="en-GB",
    )
    context.set_default_timeout(PATIENCE_MS)
    note_forms(context)
    watch = Watch()
    context.on("page", watch.on)
    try:
        yield context.new_page()
        assert watch.faults == []
    finally:
        context.close()


def axe(page: Page, *, inside: str = "html") -> list[str]:
    """Return what axe-core finds wrong with the page, or a part, one line a fault."""
    wait_until_come(page)
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found: list[str] = page.evaluate(RUN_AXE, [inside, list(RULES)])
    return found


def goes_sideways(page: Page) -> int:
    """Return by how many pixels the page is wider than its window."""
    wait_until_come(page)
    wider = page.evaluate("document.documentElement.scrollWidth - innerWidth")
    return max(0, int(wider))


@contextmanager
def _django_beside_a_loop() -> Generator[None]:
    """Let the ORM work while Playwright's event loop stands in this thread."""
    os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "1"
    try:
        yield
    finally:
        del os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"]
