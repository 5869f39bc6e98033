"""Several pots in the browser: what is next, what rings at the desk, the screen on."""

import re
from datetime import time

import pytest
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import DyeRoom, Studio
from shadewright.workflows.bath_pages import BathAct, bath_now
from tests.browser import axe, goes_sideways
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped

COUNTS_TONES = """
let tones = 0;
const voice = AudioContext.prototype.createOscillator;
AudioContext.prototype.createOscillator = function () {
  tones += 1;
  document.documentElement.dataset.tones = tones > 3 ? "many" : "few";
  return voice.call(this);
};
"""
LETS_THE_SCREEN_STAY_ON = """
window.asked = 0;
Object.defineProperty(navigator, "wakeLock", { value: {
  request: async () => { window.asked += 1; return { released: false }; },
}});
"""
PLAIN_HTTP = """
Object.defineProperty(navigator, "wakeLock", { value: undefined });
Object.defineProperty(window, "isSecureContext", { value: false });
"""


@pytest.fixture
def pot(live_server: LiveServer) -> Ready:
    del live_server
    founded()
    return ready()


def left_out(number: str, *, minutes: float) -> None:
    """Leave every step before the heat out."""
    for key in ("fill", "dose-1", "dose-2", "yarn", "add-1"):
        tapped(number, BathAct.MISSED, key, at=ago(minutes=minutes))


def on_the_heat(number: str, *, minutes: float) -> str:
    """Put a bath on the heat so long ago, its first look done just then."""
    left_out(number, minutes=minutes + 2)
    tapped(number, BathAct.HEAT_ON, "heat", at=ago(minutes=minutes + 1))
    tapped(number, BathAct.CHECKED, "look", at=ago(minutes=minutes))
    return number


def test_the_desk_rings_when_nobody_has_looked(
    live_server: LiveServer, desk: Page, pot: Ready
) -> None:
    on_the_heat(pot.number, minutes=19.9)
    desk.add_init_script(COUNTS_TONES)
    desk.goto(live_server.url)  # the first page of all, perhaps
    desk.get_by_role("button", name="Let it sound").click()
    alarm = desk.locator(".alarm")
    expect(alarm).to_contain_text("Nobody has looked for 20")
    expect(alarm).to_contain_text("On the heat: B1 Low Tide")
    expect(desk).to_have_title(re.compile(r"^Now: "))
    heard = desk.locator("html[data-tones=many]")  # two strokes of two tones
    expect(heard).to_have_count(1)
    assert axe(desk) == []
    alarm.get_by_role("button", name="I looked").click()
    expect(alarm).to_have_count(0)
    expect(desk).to_have_title(re.compile(r"^(?!Now)"))
    expect(desk.locator("[data-unsent]")).to_have_text("")
    assert bath_now(pot.number).lines[0].step == "watch/heard"


def test_the_page_rings_at_the_close_and_says_what_is_still_hot(
    live_server: LiveServer, page: Page, pot: Ready
) -> None:
    # Midnight is past at any hour of the day.
    DyeRoom.objects.create(
        studio=Studio.objects.get(), opens_at=time(0), closes_at=time(0)
    )
    on_the_heat(pot.number, minutes=5)
    page.goto(live_server.url)
    alarm = page.locator(".alarm")
    expect(alarm).to_contain_text("The room closes. Still on the heat: B1 Low Tide.")
    assert axe(page) == []
    page.goto(f"{live_server.url}/bench/{pot.number}/?view=main")
    expect(alarm).to_contain_text("The room closes.")
    assert axe(page) == []
    assert goes_sideways(page) == 0
    alarm.get_by_role("button", name="Heard").click()
    expect(alarm).to_have_count(0)
    expect(page.locator("[data-unsent]")).to_have_text("")
    assert bath_now(pot.number).lines[0].step == "closing/heard"
    page.goto(f"{live_server.url}/bench/{pot.number}/?view=round")
    written = page.locator("[data-written]")
    expect(written).to_contain_text("Alarm heard: the room closes")


def test_one_tap_leads_to_what_is_next_at_another_pot(
    live_server: LiveServer, phone: Page, pot: Ready
) -> None:
    other = pot.another()
    tapped(pot.number, BathAct.STARTED, "fill")
    phone.goto(f"{live_server.url}/bench/{pot.number}/?view=main")
    bar = phone.locator("[data-next]:visible")
    expect(bar).to_have_text("Next B2 Low Tide: Fill the pot with water")
    tapped(other, BathAct.HEAT_ON, "heat", at=ago(minutes=14.9))
    left_out(other, minutes=20)
    expect(bar).to_contain_text(re.compile(r"Then B2 Low Tide: Look.*0:0"))
    phone.context.set_offline(True)
    expect(bar).to_contain_text("Now B2 Low Tide: Look")
    phone.context.set_offline(False)
    bar.click()
    expect(phone).to_have_url(re.compile(f"/bench/{other}/$"))
    expect(phone.get_by_role("heading", level=1)).to_have_text("B2 Low Tide")
    expect(phone.locator("[data-next]:visible")).to_contain_text("B1 Low Tide: Slate")


def test_the_list_puts_what_is_next_first_and_follows_the_other_phone(
    live_server: LiveServer, phone: Page, pot: Ready
) -> None:
    other = on_the_heat(pot.another(), minutes=5)
    tapped(other, BathAct.AT_TOP, "top", at=ago(minutes=2))
    phone.goto(f"{live_server.url}/bench/")
    first = phone.locator(".pot.next")
    expect(first).to_contain_text("B2 Low Tide")
    tapped(pot.number, BathAct.STARTED, "fill")
    expect(first).to_contain_text("B1 Low Tide")
    expect(first).to_contain_text("Slate")
    tapped(other, BathAct.NOTE, "hold/more", value=-29.0, unit="min")
    expect(first.locator(".clock")).to_have_text(re.compile(r"^\+\d:\d\d$"))
    size = first.locator(".clock").evaluate(
        "(x) => parseFloat(getComputedStyle(x).fontSize)"
    )
    assert size >= 60
    keys = phone.locator(".pots .button, .alarm .button").all()
    assert all(box["height"] >= 63.5 for key in keys if (box := key.bounding_box()))
    assert goes_sideways(phone) == 0
    assert axe(phone) == []


@pytest.mark.parametrize(
    ("browser_is", "said"),
    [
        (LETS_THE_SCREEN_STAY_ON, "The screen stays on while this page is open."),
        (PLAIN_HTTP, "On plain http no page may keep the screen on"),
    ],
)
def test_the_screen_stays_on_or_the_page_says_that_it_does_not(
    live_server: LiveServer, phone: Page, pot: Ready, browser_is: str, said: str
) -> None:
    phone.add_init_script(browser_is)
    for address in (f"/bench/{pot.number}/", "/bench/"):
        phone.goto(live_server.url + address)
        expect(phone.locator("[data-awake]")).to_contain_text(said)
