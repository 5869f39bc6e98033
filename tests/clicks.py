"""A click is done only when the page has come that it asked for.

A form leaves a moment after the click that sends it. Playwright waits for what it
has heard of by then, and no longer than until the new page begins: on a busy machine
a test looks at the page that is about to go, or at half of the new one. So here
every click and every key waits until no form is on its way and the page is whole.
"""

from collections.abc import Callable, Generator
from contextlib import contextmanager
from functools import wraps

import pytest
from playwright.sync_api import BrowserContext, Locator, Page

NOTE_FORMS = "addEventListener('submit', event => { window.formOnItsWay = event })"
HAS_COME = """() => {
  const event = window.formOnItsWay;
  const isKept = !event || event.defaultPrevented || event.target.method === "dialog";
  return isKept && document.readyState === "complete";
}"""
"""True on a page that is whole, with no form on its way that no script has kept."""
ACTS = ("click", "press")


def note_forms(context: BrowserContext) -> None:
    """Let every page of a context note the form that it sends."""
    context.add_init_script(NOTE_FORMS)


def wait_until_come(page: Page) -> None:
    """Wait until no form is on its way and the page is whole."""
    if not page.is_closed():
        page.wait_for_function(HAS_COME)


@contextmanager
def clicks_that_wait() -> Generator[None]:
    """Make each click and each key of a locator wait for what it set going."""
    with pytest.MonkeyPatch.context() as patch:
        for act in ACTS:
            patch.setattr(Locator, act, _waiting(getattr(Locator, act)))
        yield


def _waiting(act: Callable[..., None]) -> Callable[..., None]:
    @wraps(act)
    def act_and_wait(target: Locator, *words: object, **options: object) -> None:
        act(target, *words, **options)
        wait_until_come(target.page)

    return act_and_wait
