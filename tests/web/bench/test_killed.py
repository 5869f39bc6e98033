"""The server is killed again and again during 200 taps from two phones at once.

Every tap that was acknowledged, or that the phone still held, stands in the
ledger afterwards, once; the bottle's ledger agrees to the millilitre.
"""

from collections.abc import Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from pathlib import Path
from random import Random
from threading import Event, Semaphore

import pytest

from tests.web.bench.killed_server import Server, asked
from tests.web.bench.killed_studio import BOTTLE_ML
from tests.web.bench.rough_network import Phone

pytestmark = [pytest.mark.store, pytest.mark.slow]

TAPS_EACH = 100
KILLS = 6
MOST_IN_HAND = 6
SEED = 20261125


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
            bath=pot["baths"][0],
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
