"""A finger on the bench page, for the tests that count taps."""

from collections.abc import Callable

from playwright.sync_api import Page


class Finger:
    """Taps what is seen, and counts."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.taps = 0

    def __call__(self, words: str, *, role: str = "button") -> None:
        key = self.page.get_by_role(role, name=words).locator("visible=true")  # type: ignore[arg-type]
        key.first.click()
        self.taps += 1

    def count(self, act: Callable[[], None]) -> int:
        before = self.taps
        act()
        return self.taps - before
