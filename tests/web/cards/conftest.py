"""A bath of yesterday whose card lies on the desk."""

from collections.abc import Iterator
from datetime import UTC, datetime
from typing import TYPE_CHECKING

import pytest
import time_machine

if TYPE_CHECKING:
    from tests.workflows.pots import Ready


@pytest.fixture
def evening() -> Iterator[datetime]:
    """The evening of a dyeing day: 18:30 in UTC, where the tests' studio is."""
    now = datetime(2026, 11, 25, 18, 30, tzinfo=UTC)
    with time_machine.travel(now, tick=False):
        yield now


@pytest.fixture
def pot(db: None, evening: datetime) -> "Ready":
    """A planned bath: 60 ml Slate, 30 ml Gorse, 2 g acid."""
    from tests.workflows.bench import founded
    from tests.workflows.pots import ready

    del db, evening
    founded()
    return ready()
