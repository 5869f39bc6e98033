"""The whole thread: a powder jar becomes a lot, and each leads to the other.

Jar, stock, bottle, recipe, weighed yarn, card, bench, lot and trace, from an empty
studio, on the phone and at the desk. Every page on the way is sound, and the taps
at the pot are counted.
"""

import re

import pytest
from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from tests.fingers import Finger
from tests.journeys.test_jar_to_bottle import (
    dissolve,
    found_the_studio,
    label,
    plan_the_stock,
    press,
    receive_the_jar,
    sound,
)

pytestmark = pytest.mark.django_db(transaction=True)


def test_from_a_jar_to_a_lot_and_back(live_server: LiveServer, page: Page) -> None:
    bottle = make_a_bottle(page, live_server.url)
    prepare(page, live_server.url)
    write_the_recipe(page, live_server.url)
    number = plan_the_bath(page, bottle)
    the_card_answers(page)
    dye(page, live_server.url, number)
    follow_back(page, bottle)
    follow_onwards(page, number, bottle)


def make_a_bottle(page: Page, address: str) -> str:
    """Weigh 5.2 g instead of 5 g and make up to 520 ml: 1 % stands on the label."""
    found_the_studio(page, address)
    receive_the_jar(page, address)
    plan_the_stock(page, address)
    press(page, "All is laid out")
    page.get_by_label("What the scale really shows").fill("5.2")
    press(page, "Weighed")
    dissolve(page)
    page.get_by_label("What it really came to").fill("520")
    page.get_by_label("It is cold").check()
    press(page, "Made up")
    return label(page)


def prepare(page: Page, address: str) -> None:
    """Enter a base and an acid."""
    page.goto(f"{address}/bases/new/")
    page.get_by_label("Fibres").fill("wool")
    page.get_by_label("Fibre that takes no acid dye").fill("0")
    keep(page, "Fell DK")
    page.goto(f"{address}/acids/new/")
    keep(page, "Citric acid")


def keep(page: Page, name: str) -> None:
    page.get_by_label(re.compile(r"^(Your name for it|Name)$")).fill(name)
    page.locator("main form .first").click()
    expect(page.locator("h1")).to_have_text(name)


def write_the_recipe(page: Page, address: str) -> None:
    page.goto(f"{address}/recipes/")
    page.get_by_role("link", name="New recipe").click()
    sound(page)
    page.get_by_label("Name", exact=True).fill("Low Tide")
    page.get_by_label("Dye 1", exact=True).select_option(label="Slate")
    page.get_by_label("Depth 1").fill("0.5")
    page.get_by_label("Acid or helper 1").select_option(label="Citric acid")
    page.get_by_label("Amount 1").fill("2")
    for field, value in (("Start", "40"), ("Rise", "1"), ("Top", "90"), ("Hold", "30")):
        page.get_by_label(re.compile(rf"^{field}\b(?! (to|at) stop)")).fill(value)
    page.get_by_role("button", name="Write it down").last.click()
    expect(page.locator("h1")).to_have_text("Low Tide")
    sound(page)


def plan_the_bath(page: Page, bottle: str) -> str:
    """Plan 100 g of weighed yarn, and return the number of the bath."""
    page.get_by_role("link", name="Plan a bath").first.click()
    page.get_by_label("Base", exact=True).select_option(label="Fell DK")
    page.get_by_label("Weight of the dry yarn").fill("100")
    plan = page.locator("#plan")
    expect(plan).to_contain_text(f"50\u00a0ml of {bottle}")
    sound(page)
    press(page, "Plan this bath")
    expect(page.locator("h1")).to_contain_text(re.compile(r"Bath \d{6}-B1"))
    sound(page)
    return page.locator("h1").inner_text().removeprefix("Bath ")


def the_card_answers(page: Page) -> None:
    address = page.get_by_role("link", name="Card", exact=True).get_attribute("href")
    base = page.url.partition("/baths/")[0]
    answer = page.context.request.get(f"{base}{address}")
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.body().startswith(b"%PDF")


def dye(page: Page, address: str, number: str) -> None:
    """Tick every step: one dose poured otherwise, one step undone and done again."""
    finger = Finger(page)
    page.goto(address)
    sound(page)
    assert finger.count(lambda: start(finger)) <= 3
    sound(page)
    assert finger.count(lambda: deviate(finger)) <= 2
    expect(page.locator(".bench-notes")).to_contain_text("0.51")
    sound(page)
    finger("Done")  # the yarn is in
    finger("Undo")
    expect(page.get_by_role("heading", name="Yarn in").first).to_be_visible()
    for words in ("Done", "Done, 2", "Done, 90", "Done", "Done, 90", "Done"):
        assert finger.count(lambda said=words: finger(said)) == 1  # type: ignore[misc]
    expect(page.get_by_role("heading", name="Heat off").first).to_be_visible()
    assert finger.count(lambda: finish(finger)) <= 3
    expect(page.locator("h1")).to_contain_text(number)
    sound(page)


def start(finger: Finger) -> None:
    finger("Start", role="link")
    finger("Done, ")


def deviate(finger: Finger) -> None:
    finger("Other", role="link")
    finger("+1: 51")


def finish(finger: Finger) -> None:
    finger("Done")
    finger("Write the lot", role="link")
    sound(finger.page)
    finger("Write the lot")


def follow_back(page: Page, bottle: str) -> None:
    """Find the bottle, the jar and the supplier's lot behind the lot."""
    expect(page.locator("main")).to_contain_text("0.51")
    page.get_by_role("link", name="Trace").click()
    tree = page.get_by_role("region", name="What went in").locator(".tree")
    for seen in (f"{bottle} Slate", "51\u00a0ml", "J-1", "lot L7"):
        expect(tree).to_contain_text(seen)
    sound(page)


def follow_onwards(page: Page, number: str, bottle: str) -> None:
    """Follow the jar, from its own page, on to the lot."""
    page.get_by_role("link", name="J-1").click()
    page.get_by_role("navigation", name="Above this page").get_by_role(
        "link", name="J-1"
    ).click()
    page.get_by_role("link", name="Trace").click()
    tree = page.locator(".tree")
    for seen in (bottle, number):
        expect(tree).to_contain_text(seen)
    sound(page)
    tree.get_by_role("link", name=number, exact=True).last.click()
    expect(page.locator("h1")).to_contain_text(number)
