"""A pot from the first tap to the last, in the browser; taps counted."""

import re

import pytest
from playwright.sync_api import APIResponse, Page, Route, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import BathLine
from shadewright.workflows.bath_pages import BathAct, bath_now
from shadewright.workflows.shelf import shelf_bottle
from tests.fingers import Finger
from tests.workflows.bench import entered, founded
from tests.workflows.pots import Ready, ago, ready, tapped


@pytest.fixture
def pot(live_server: LiveServer) -> Ready:
    del live_server
    founded()
    return ready()


@pytest.fixture
def finger(phone: Page) -> Finger:
    return Finger(phone)


def opened(live_server: LiveServer, phone: Page, pot: Ready) -> None:
    phone.goto(f"{live_server.url}/bench/{pot.number}/?view=main")


def sees(phone: Page, words: str) -> None:
    seen = phone.get_by_text(words).locator("visible=true").first
    expect(seen).to_be_visible()


def type_signs(phone: Page, signs: str) -> None:
    for sign in signs:
        phone.locator(f"[data-sign='{sign}']:visible").click()


def all_sent(phone: Page) -> None:
    expect(phone.locator("#live [data-unsent]")).to_have_text("")


def test_the_taps_of_a_pot_are_few(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    phone.goto(live_server.url)

    def start() -> None:
        finger("Start", role="link")
        finger("Done, ")

    assert finger.count(start) <= 3
    assert finger.count(lambda: finger("Done, 60")) == 1

    def deviate() -> None:
        finger("Other", role="link")
        finger("+1: 31")

    assert finger.count(deviate) <= 2
    expect(phone.locator(".bench-notes")).to_contain_text(
        "0.31\u00a0% instead of 0.3\u00a0%"
    )
    for words in ("Done", "Done, 2", "Done, 90", "Done", "Done, 90", "Done"):
        finger(words)

    all_sent(phone)

    def finish() -> None:
        finger("Done")  # the heat is off
        finger("Write the lot", role="link")
        finger("Write the lot")

    assert finger.count(finish) <= 3
    expect(phone.get_by_role("heading", level=1)).to_contain_text(pot.number)
    assert bath_now(pot.number).has_lot
    assert shelf_bottle(pot.gorse).volume_ml == 469.0


@pytest.mark.parametrize("step", ["fill", "dose-1", "heat"])
def test_done_is_in_view_without_scrolling(
    live_server: LiveServer, page: Page, pot: Ready, step: str
) -> None:
    pot.another()  # so that the bar is there too
    page.goto(f"{live_server.url}/bench/{pot.number}/?step={step}&view=main")
    done = page.get_by_role("button", name="Done").locator("visible=true")
    expect(done).to_be_in_viewport(ratio=1)


def test_taps_without_a_connection_wait_and_outlive_a_reload(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    opened(live_server, phone, pot)
    phone.context.set_offline(True)
    finger("Done, ")
    finger("Done, 60")
    finger("Done, 30")
    sees(phone, "3 taps wait on this phone. They are safe.")
    sees(phone, "Yarn in, wet through")
    finger("Undo")
    sees(phone, "Done, 30")
    sees(phone, "4 taps wait on this phone. They are safe.")
    assert BathLine.objects.count() == 0
    phone.goto("about:blank")
    phone.context.set_offline(False)
    opened(live_server, phone, pot)
    all_sent(phone)
    sees(phone, "Done, 30")
    assert [line.step for line in bath_now(pot.number).standing] == ["dose-1", "fill"]
    assert BathLine.objects.count() == 4
    assert shelf_bottle(pot.slate).volume_ml == 440.0
    assert shelf_bottle(pot.gorse).volume_ml == 500.0
    assert phone.evaluate("localStorage.length") == 0


def test_after_a_reload_it_asks_for_the_dose_at_hand(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    opened(live_server, phone, pot)
    finger("Done, ")
    phone.goto(f"{live_server.url}/bench/{pot.number}/")
    sees(phone, "Was Slate 60")
    finger("Yes, it is in")
    sees(phone, "Done, 30")
    all_sent(phone)
    phone.goto(f"{live_server.url}/bench/{pot.number}/")
    sees(phone, "Was Gorse 30")
    finger("No, not yet", role="link")
    sees(phone, "Done, 30")
    assert "said after an interruption" in bath_now(pot.number).lines[0].note


def test_the_other_phone_is_seen_within_seconds(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    opened(live_server, phone, pot)
    finger("Done, ")
    all_sent(phone)
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=pot.slate)
    sees(phone, "Done, 30")
    sees(phone, "Last: Slate 60")


def test_a_bottle_is_checked_without_a_connection(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    tapped(pot.number, BathAct.STARTED, "fill")
    opened(live_server, phone, pot)
    phone.context.set_offline(True)
    finger("Check bottle", role="link")
    type_signs(phone, pot.gorse)
    sees(phone, f"must be {pot.slate}, as on the card; got {pot.gorse} (Gorse).")
    type_signs(phone, pot.slate)
    sees(phone, f"Bottle {pot.slate} is on this card")
    finger("Done, 60")
    phone.context.set_offline(False)
    all_sent(phone)
    assert bath_now(pot.number).lines[0].note == "bottle confirmed"


def test_a_bottle_that_runs_out_gives_way_to_the_next_at_once(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    other = entered(pot.slate_dye, strength_percent=2.0).code
    tapped(pot.number, BathAct.STARTED, "fill")
    opened(live_server, phone, pot)
    phone.context.set_offline(True)
    finger("Problem", role="link")
    finger("Bottle ran out", role="link")
    finger("After half")
    sees(phone, other)
    finger("Done, 15")  # half of 0.6 g is 0.3 g, 15 ml of 2 %
    sees(phone, "Done, 30")
    phone.context.set_offline(False)
    all_sent(phone)
    assert shelf_bottle(pot.slate).volume_ml == 0.0
    assert shelf_bottle(other).volume_ml == 485.0
    assert bath_now(pot.number).steps[1].is_done


def test_a_number_is_typed_with_gloves(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    tapped(pot.number, BathAct.STARTED, "fill")
    opened(live_server, phone, pot)
    finger("Other", role="link")
    finger("Done, with this")
    sees(phone, "Type the number first.")
    field = phone.locator("[name=value]:visible")
    field.fill("1e9")  # from the phone's own keyboard
    finger("Done, with this")
    sees(phone, "No pot holds so much. Type the number again.")
    assert not bath_now(pot.number).steps[1].is_done
    field.fill("")
    type_signs(phone, "4.5")
    finger("Note pH")
    all_sent(phone)
    line = bath_now(pot.number).lines[0]
    assert (line.act, line.value, line.unit) == (BathAct.PH, 4.5, "pH")
    assert (line.step, line.bottle) == ("dose-1", "")


NEAR_S = 1.0

WHEN_IT_CHANGES = """() => new Promise((done) => {
  const place = [...document.querySelectorAll("[data-timer] strong")]
    .find((one) => one.offsetParent);
  const before = place.textContent;
  new MutationObserver(() => {
    const shown = place.textContent;
    if (shown === before) return;
    const [minutes, seconds] = shown.replace("+", "").split(":").map(Number);
    const left = minutes * 60 + seconds;
    done([shown.startsWith("+") ? -left : left, Date.now()]);
  }).observe(place, { childList: true });
})"""
"""A figure of whole seconds is read as it changes: until then it is up to 1 s old."""


def test_a_clock_is_right_after_half_an_hour_of_sleep_and_a_reload(
    live_server: LiveServer, phone: Page, pot: Ready
) -> None:
    rings_s = ago(minutes=1).timestamp() + 900
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=ago(minutes=1))
    half_an_hour = 1800
    phone.clock.install()

    def open_and_hear() -> None:
        with phone.expect_response(re.compile(r"/now/$")):
            opened(live_server, phone, pot)
        expect(phone.locator("[data-timer]:visible strong")).to_have_text(
            re.compile(r"\d:\d\d")
        )

    def is_out_by(offset_s: float) -> float:
        shown_s, now_ms = phone.evaluate(WHEN_IT_CHANGES)
        return float(abs(rings_s - (now_ms / 1000 - offset_s) - shown_s))

    open_and_hear()
    assert is_out_by(0) <= NEAR_S
    phone.context.set_offline(True)
    phone.clock.fast_forward("30:00")
    phone.clock.run_for(600)
    assert is_out_by(0) <= NEAR_S  # the phone’s own clock went on alone
    phone.context.set_offline(False)
    open_and_hear()
    # here the phone’s clock is half an hour ahead of the server’s, which counts
    assert is_out_by(half_an_hour) <= NEAR_S


def test_an_alarm_rings_in_words_and_is_heard_with_one_tap(
    live_server: LiveServer, desk: Page, pot: Ready
) -> None:
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=ago(minutes=14.95))
    desk.goto(live_server.url)
    desk.get_by_role("button", name="Let it sound").click()
    alarm = desk.locator(".alarm")
    expect(alarm).to_contain_text("Look at 15 minutes")
    expect(desk.locator("html")).to_have_class("rings")
    assert desk.title().startswith("Now: ")
    expect(desk.locator("[data-spoken]")).to_contain_text("now")
    alarm.get_by_role("button", name="Heard").click()
    expect(alarm).to_have_count(0)
    expect(desk.locator("[data-unsent]")).to_have_text("")
    assert bath_now(pot.number).clocks[0].is_heard


def test_an_answer_that_comes_late_leaves_no_tap_behind(
    live_server: LiveServer, phone: Page, finger: Finger, pot: Ready
) -> None:
    held: list[tuple[Route, APIResponse]] = []
    phone.route("**/bench/taps/", lambda route: held.append((route, route.fetch())))
    opened(live_server, phone, pot)
    finger("Done, ")
    sees(phone, "1 tap waits on this phone. It is safe.")
    while not BathLine.objects.exists():
        phone.wait_for_event("response")
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=pot.slate)
    sees(phone, "Done, 30")  # the page is new; the first tap still waits
    for route, answer in held:
        route.fulfill(response=answer)
    all_sent(phone)
    sees(phone, "Last: Slate 60")
