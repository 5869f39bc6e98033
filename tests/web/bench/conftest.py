"""A studio in a process of its own, for the tests that kill its server."""

from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest

from tests.clones import plain_environment
from tests.conftest import SERVER
from tests.house.reading import ROOT
from tests.web.bench.killed_server import Server


@pytest.fixture
def home(request: pytest.FixtureRequest, tmp_path: Path) -> dict[str, str]:
    """The environment of a studio of its own, on the database that is tested."""
    server = request.config.stash.get(SERVER, None)
    url = "" if server is None else _new_database(server.url)
    return {
        **plain_environment(),
        "SHADEWRIGHT_DATA": str(tmp_path / "studio"),
        "SHADEWRIGHT_DATABASE": url,
        "PYTHONPATH": str(ROOT),
    }


def _new_database(url: str) -> str:
    import psycopg

    whole = urlsplit(url)._replace(path="/postgres").geturl()
    with psycopg.connect(whole, autocommit=True) as connection:
        connection.execute("DROP DATABASE IF EXISTS killed WITH (FORCE)")
        connection.execute("CREATE DATABASE killed")
    return urlsplit(url)._replace(path="/killed").geturl()


@pytest.fixture
def server(home: dict[str, str]) -> Iterator[Server]:
    """A server that is not started yet."""
    server = Server(home)
    yield server
    server.kill()
