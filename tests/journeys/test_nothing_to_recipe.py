"""From nothing to a recipe: six dyes, one swatch each, colours picked on a screen.

On the phone, in a studio that was founded a minute ago and holds no dye and no yarn.
Every tap is counted: a key pressed, or a field gone into to type in it.
"""

import re

import pytest
from playwright.sync_api import Locator, Page, expect
from pytest_django.fixtures import Settings
from pytest_django.live_server_helper import LiveServer

from tests.journeys.test_jar_to_bottle import found_the_studio, sound

pytestmark = pytest.mark.django_db(transaction=True)

SWATCHES = {
    "Gorse": "#dcae35",
    "Rosehip": "#b5382f",
    "Foxglove": "#ad4a7d",
    "Sloe": "#3b4a6a",
    "Kelp": "#52806a",
    "Peat": "#6b503b",
}
WANTED = "#7d7a45"
MOST_TAPS = 21
TRIALS = ("#6d7a42", "#7a7440", "#8a7440")
MOST_TAPS_FOR_TRIALS = 8


class Taps:
    """Taps and types, and counts each field and each key as one."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.count = 0

    def press(self, words: str, *, role: str = "button") -> None:
        """Press a key or follow a link."""
        key = self.page.get_by_role(role, name=words, exact=True)  # type: ignore[arg-type]
        key.locator("visible=true").first.click()
        self.count += 1

    def into(self, field: Locator, text: str) -> None:
        """Go into a field and type."""
        field.fill(text)
        self.count += 1


def test_from_nothing_to_a_recipe(
    live_server: LiveServer, phone: Page, settings: Settings
) -> None:
    settings.REFITS = "at once"
    found_the_studio(phone, live_server.url)
    taps = Taps(phone)
    begin_a_palette(taps)
    find_a_recipe(taps)
    answers = phone.url
    save_it(taps)
    assert taps.count <= MOST_TAPS
    phone.goto(answers)
    trials = Taps(phone)
    plan_three_trials(trials)
    enter_what_came_out(trials)
    assert trials.count <= MOST_TAPS_FOR_TRIALS


def begin_a_palette(taps: Taps) -> None:
    """Name the yarn, and each dye with its colour; depths and the way stand ready."""
    page = taps.page
    taps.press("Shades", role="link")
    sound(page)
    taps.press("Enter your first swatches", role="link")
    sound(page)
    taps.into(page.get_by_label("Base", exact=True), "Fell DK")
    taps.into(page.get_by_label(re.compile(r"^What it is made of")), "wool")
    for number, (dye, colour) in enumerate(SWATCHES.items(), start=1):
        row = page.get_by_role("group", name=f"Swatch {number}", exact=True)
        taps.into(row.get_by_label(re.compile(r"^Dye")), dye)
        taps.into(row.locator("input[type=text]").last, colour)
    taps.press("Make the palette")
    expect(page.locator("h1")).to_contain_text("Fell DK")
    for dye in SWATCHES:
        expect(page.locator("main")).to_contain_text(dye)
    sound(page)


def find_a_recipe(taps: Taps) -> None:
    """Ask for a colour that lies among the dyes; the spread is wide, and is shown."""
    page = taps.page
    taps.press("Find a recipe", role="link")
    sound(page)
    taps.into(page.get_by_label(re.compile(r"^Colour: ")), WANTED)
    taps.press("Find")
    first = page.locator(".answer").first
    expect(first).to_be_visible()
    expect(first).to_contain_text("CIEDE2000")
    sound(page)


def save_it(taps: Taps) -> None:
    """One key makes a recipe of the first answer, on its own page."""
    page = taps.page
    taps.press("Save as recipe")
    expect(page).to_have_url(re.compile(r"/recipes/"))
    expect(page.locator("main")).to_contain_text("%")
    sound(page)


def plan_three_trials(taps: Taps) -> None:
    """Bracket the first answer with a set of swatches, and print its sheet."""
    page = taps.page
    taps.press("Three trials", role="link")
    expect(page.locator("#plan")).to_contain_text("3 swatches of 10 g")
    taps.press("Keep this set")
    expect(page.locator("main")).to_contain_text("0 dyed, 0 read")
    sheet = page.get_by_role("link", name="Print the sheet").get_attribute("href")
    assert page.request.get(f"{page.url.split('/shades')[0]}{sheet}").ok
    sound(page)


def enter_what_came_out(taps: Taps) -> None:
    """Dyed off the sheet, typed in as three colours; the palette learns from them."""
    page = taps.page
    taps.press("Enter the colours", role="link")
    sound(page)
    for number, colour in enumerate(TRIALS, start=1):
        row = page.get_by_role("group", name=re.compile(rf"^{number} "))
        taps.into(row.locator("input[type=text]"), colour)
    taps.press("Keep the colours")
    expect(page.locator("main")).to_contain_text("3 dyed, 3 read")
    sound(page)
    expect(page.locator("main")).to_contain_text(f"from {WANTED}")
    page.get_by_role("link", name="The palette", exact=True).click()
    expect(page.locator("main")).to_contain_text("6 dyes and 9 swatches")
    page.go_back()
    taps.press("Find it again", role="link")
    expect(page.locator(".answer").first).to_be_visible()
