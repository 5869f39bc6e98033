"""A search beside the pages: what becomes of one that fails."""

from collections.abc import Iterator
from threading import Semaphore

import pytest

from shadewright.core.recipes import Step
from shadewright.errors import NotConvergedError, OutOfRangeError
from shadewright.web.matching.searches import Search


def refused() -> Iterator[Step]:
    yield Step(share=0.2)
    raise OutOfRangeError(name="Depth", given="9 %", allowed="less")


def broken() -> Iterator[Step]:
    yield Step(share=0.2)
    message = "a fault of ours"
    raise ZeroDivisionError(message)


def test_refusal_is_kept_for_the_page_that_waits() -> None:
    """Its sentence is shown there."""
    search = Search()
    search.run(refused(), Semaphore())
    assert search.over.is_set()
    assert isinstance(search.fault, OutOfRangeError)


def test_fault_of_ours_is_logged_and_said(caplog: pytest.LogCaptureFixture) -> None:
    """The page does not wait for ever, and an engineer finds it in the log."""
    search = Search()
    search.run(broken(), Semaphore())
    assert search.over.is_set()
    assert isinstance(search.fault, NotConvergedError)
    assert "a fault of ours" in caplog.text


def test_stopped_search_takes_no_further_step() -> None:
    """What it did so far is forgotten."""
    search = Search(is_stopped=True)
    search.run(broken(), Semaphore())
    assert (search.fault, search.answer, search.share) == (None, None, 0.0)
