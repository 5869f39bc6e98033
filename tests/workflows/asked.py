"""What a verb asks the store."""

from collections.abc import Callable

from django.db import connection
from django.test.utils import CaptureQueriesContext


def asked_by(verb: Callable[[], object]) -> list[str]:
    """Return each question that a verb asks, as SQL."""
    with CaptureQueriesContext(connection) as queries:
        verb()
    return [query["sql"] for query in queries]
