"""What the tests of the bottle's pages share."""

from typing import TYPE_CHECKING

import pytest
from django.test import Client

if TYPE_CHECKING:
    from tests.web.bottles.shelf import Bench


@pytest.fixture
def bench(db: None, client: Client) -> "Bench":
    """A browser before a small shelf."""
    from tests.web.bottles.shelf import bench

    del db
    return bench(client)
