"""Two phones at several baths, on a connection that comes and goes; the server dies.

A real server in a process of its own, killed and started again on the same studio; two
phones in a real browser. Whatever a page once kept as a tap stands in the ledger at the
end, once; the bottle agrees; and a step that both ticked says so on both. No key stands
before the page's script does, so none ever sends a plain form that nobody answers.
"""

import os
from collections import Counter
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from tests.browser import PHONE, watched_page
from tests.web.bench.killed_server import Server, asked
from tests.web.bench.killed_studio import BOTTLE_ML
from tests.web.bench.rough_phone import LONG_MS, RoughPhone

pytestmark = pytest.mark.slow

ROUNDS = 60
KILLS = (12, 30, 48)
DOWN_FOR = 4
SEED = int(os.environ.get("TWO_PHONES_SEED", "20261125"))


def seeded(number: int) -> Random:
    """Return luck that is the same in every run."""
    return Random(SEED + number)  # ruff: ignore[suspicious-non-cryptographic-random-usage]


@pytest.fixture
def studio(home: dict[str, str], server: Server) -> dict[str, Any]:
    """A studio with a few baths, served."""
    prepared = asked(home, "prepare")
    server.start()
    return prepared


@pytest.fixture
def phones(
    browser: Browser, server: Server, studio: dict[str, Any]
) -> Iterator[list[RoughPhone]]:
    """Two phones, each with its own storage."""
    with watched_page(browser, PHONE) as one, watched_page(browser, PHONE) as other:
        yield [
            RoughPhone(
                page=page,
                home=server.url,
                baths=studio["baths"],
                luck=seeded(number),
                fates=seeded(10 + number),
                kill=server.kill,
            )
            for number, page in enumerate((one, other), start=1)
        ]


def use_both(phones: list[RoughPhone], server: Server) -> int:
    """Use both by turns; kill the server while a tap is on its way to it."""
    luck, kills, down = seeded(0), 0, 0
    for turn in range(ROUNDS):
        phone = luck.choice(phones)
        if turn in KILLS:
            phone.kills_next = True
            phone.done()
            phone.kills_next = False
            server.kill()
        phone.act(is_up=server.is_up)
        down = 0 if server.is_up else down + 1
        if down >= DOWN_FOR:
            server.start()
            kills, down = kills + 1, 0
    return kills


def tick_the_same_step(phones: list[RoughPhone], bath: str) -> None:
    """Let both tick one step while neither knows of the other."""
    for phone in phones:
        phone.open(bath)
        phone.page.context.set_offline(True)
        phone.done()
    for phone in phones:
        phone.page.context.set_offline(False)
    for phone in phones:
        both = phone.page.locator(".double")
        expect(both).to_contain_text("was ticked 2 times", timeout=LONG_MS)
        expect(both.locator("[data-undo]")).to_have_count(2)
        phone.expect_all_sent()


def test_no_tap_is_lost_or_doubled_and_both_phones_agree(
    phones: list[RoughPhone], server: Server, studio: dict[str, Any]
) -> None:
    for phone in phones:
        phone.go_elsewhere()
    kills = use_both(phones, server)
    for phone in phones:
        phone.calm()
        phone.open(phone.baths[0])
        phone.expect_all_sent()
    tick_the_same_step(phones, studio["apart"])
    made = [tap for phone in phones for tap in phone.made()]
    server.kill()
    found = asked(server.home, "read")
    print(len(made), kills, [phone.cuts for phone in phones])  # ruff: ignore[print]
    ticks = [tap for tap in made if "undoes" not in tap]
    wanted = {tap["undoes"] for tap in made if "undoes" in tap}
    stands = [deed for deed in found["deeds"] if deed not in found["undoing"]]
    assert sorted(stands) == sorted(tap["key"] for tap in ticks)
    assert Counter(found["undone"]) == Counter(wanted)
    assert found["left_ml"][studio["bottle"]] == pytest.approx(
        BOTTLE_ML - sum(_slate_ml(tap, studio, wanted) for tap in ticks)
    )
    assert [phone.plain for phone in phones] == [[], []]
    assert kills == len(KILLS)
    assert len(made) >= ROUNDS // 4


def _slate_ml(tap: dict[str, Any], studio: dict[str, Any], undone: set[str]) -> float:
    is_slate = tap["act"] == "dosed" and tap.get("bottle") == studio["bottle"]
    return tap["value"] if is_slate and tap["key"] not in undone else 0.0
