"""The server is killed again and again during 200 taps from two phones at once.

Every tap that was acknowledged, or that the phone still held, stands in the
ledger afterwards, once; the bottle's ledger agrees to the millilitre.
"""

import json
import os
import signal
import subprocess
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import suppress
from pathlib import Path
from random import Random
from threading import Event, Semaphore
from typing import Any
from urllib.parse import urlsplit

import pytest

from tests.clones import free_port, plain_environment, wait_until_it_serves
from tests.conftest import SERVER
from tests.house.reading import ROOT
from tests.web.bench.killed_studio import BOTTLE_ML
from tests.web.bench.rough_network import Phone

pytestmark = [pytest.mark.store, pytest.mark.slow]

TAPS_EACH = 100
KILLS = 6
MOST_IN_HAND = 6
SEED = 20261125


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


def asked(home: dict[str, str], verb: str) -> dict[str, Any]:
    """Ask the studio, in a process of its own."""
    command = [sys.executable, "-m", "tests.web.bench.killed_studio", verb]
    done = subprocess.run(
        command, env=home, cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return dict(json.loads(done.stdout))


class Server:
    """The studio's server, killed and started at will."""

    def __init__(self, home: dict[str, str]) -> None:
        self.home = home
        self.port = free_port()
        self.process: subprocess.Popen[str] | None = None

    def start(self) -> None:
        command = [sys.executable, "-m", "shadewright", "serve", "--no-browser"]
        self.process = subprocess.Popen(
            [*command, "--port", str(self.port), "--data", self.data],
            env=self.home,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        wait_until_it_serves(f"http://127.0.0.1:{self.port}", self.process)

    @property
    def data(self) -> str:
        return self.home["SHADEWRIGHT_DATA"]

    def kill(self) -> None:
        if self.process is None:
            return
        with suppress(ProcessLookupError):
            os.kill(self.process.pid, signal.SIGKILL)
        self.process.communicate()


@pytest.fixture
def server(home: dict[str, str]) -> Iterator[Server]:
    """A server that is not started yet."""
    server = Server(home)
    yield server
    server.kill()


def seeded(number: int) -> Random:
    """Return luck that is the same in every run."""
    return Random(SEED + number)  # ruff: ignore[suspicious-non-cryptographic-random-usage]


def use(phone: Phone, is_up: Event) -> None:
    """Tap, send when luck has it, and go on however the network is.

    With many taps in hand the phone waits for the server, so that the kills
    are spread over all of them.
    """
    for _ in range(TAPS_EACH):
        phone.tick()
        if len(phone.waiting()) > MOST_IN_HAND:
            is_up.wait(timeout=30)
        if phone.luck.random() < 0.7:
            phone.send()


def kill_at_random(
    server: Server,
    sends: Semaphore,
    luck: Random,
    is_up: Event,
    using: Sequence[Future[None]],
) -> int:
    """Kill it a moment after a request left, and start it again; count the kills."""
    kills = 0
    for _ in range(KILLS):
        for _ in range(luck.randint(3, 9)):
            while not sends.acquire(timeout=0.5):
                if all(one.done() for one in using):
                    return kills
        Event().wait(luck.uniform(0.0, 0.02))
        is_up.clear()
        server.kill()
        kills += 1
        server.start()
        is_up.set()
    return kills


def test_no_tap_is_lost_or_written_twice(
    home: dict[str, str], server: Server, tmp_path: Path
) -> None:
    pot = asked(home, "prepare")
    server.start()
    sends, is_up = Semaphore(0), Event()
    phones = [
        Phone(
            file=tmp_path / f"phone-{number}.json",
            port=server.port,
            bath=pot["bath"],
            bottle=pot["bottle"],
            luck=seeded(number),
            sent=sends.release,
        )
        for number in (1, 2)
    ]
    is_up.set()
    with ThreadPoolExecutor(max_workers=2) as both:
        using = [both.submit(use, phone, is_up) for phone in phones]
        kills = kill_at_random(server, sends, seeded(0), is_up, using)
        for one in using:
            one.result(timeout=120)
        for phone in phones:
            phone.flush()
    found = asked(home, "read")
    made = [key for phone in phones for key in phone.made]
    acknowledged = {key for phone in phones for key in phone.acknowledged}
    undone = {key for phone in phones for key in phone.taken_back}
    assert len(made) == 2 * TAPS_EACH
    assert acknowledged == set(made)
    assert sorted(found["deeds"]) == sorted(made)
    assert set(found["undone"]) == undone
    doses = len(made) - len(undone)
    assert found["left_ml"][pot["bottle"]] == BOTTLE_ML - (doses - len(undone))
    assert kills >= 5
    assert sum(phone.cuts for phone in phones) >= 20
    print(f"kills {kills}, cuts {[phone.cuts for phone in phones]}")  # ruff: ignore[print]
