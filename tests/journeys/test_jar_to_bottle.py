"""The first half of the thread: a powder jar becomes a labelled bottle, and is found.

From an empty studio to the bottle's own page, with 0.2 g too much on the scale,
on the phone and at the desk; every page on the way is sound.
"""

import re

import pytest
import zxingcpp
from playwright.sync_api import Page, Response, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.exchange import code_from_text
from shadewright.paper import label_format
from tests.browser import axe, goes_sideways
from tests.paper.pictures import cut_out, phone_photo, thermal_print

pytestmark = pytest.mark.django_db(transaction=True)

FORMAT = label_format("a4-21")


def sound(page: Page) -> None:
    assert axe(page) == []
    assert goes_sideways(page) == 0


def press(page: Page, words: str) -> None:
    page.get_by_role("button", name=words, exact=True).click()


def test_from_a_jar_to_a_bottle_and_back(live_server: LiveServer, page: Page) -> None:
    found_the_studio(page, live_server.url)
    receive_the_jar(page, live_server.url)
    plan_the_stock(page, live_server.url)
    weigh(page)
    dissolve(page)
    make_up(page)
    code = label(page)
    pdf = printed(page, f"{live_server.url}/bottles/{code}/label.pdf")
    assert code_on(pdf) == code
    find_by_photo(page, live_server.url, pdf)
    expect(page).to_have_url(f"{live_server.url}/bottles/{code}/")
    expect(page.locator("main")).to_contain_text("1.04")
    sound(page)
    nothing_waits_but_the_sheet(page, live_server.url)


def found_the_studio(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("The studio’s name").fill("Fell Lane")
    page.get_by_label("Your name").fill("Ines")
    sound(page)
    press(page, "Begin")
    expect(page.get_by_role("status")).to_contain_text("Fell Lane is founded")


def receive_the_jar(page: Page, address: str) -> None:
    page.goto(f"{address}/dyes/new/")
    page.get_by_label("Your name for it").fill("Slate")
    page.locator("main form .first").click()
    expect(page.locator("h1")).to_have_text("Slate")
    page.goto(f"{address}/jars/new/")
    page.get_by_label("Dye", exact=True).select_option(label="Slate")
    page.get_by_label("Powder in the jar").fill("100")
    page.get_by_label(re.compile(r"^Lot\b")).fill("L7")
    sound(page)
    press(page, "Put it on the shelf")
    expect(page.locator("h1")).to_contain_text("J-1")


def plan_the_stock(page: Page, address: str) -> None:
    page.goto(address)
    sound(page)
    page.get_by_role("link", name="Make a stock").click()
    sound(page)
    page.get_by_label("Dye", exact=True).select_option(label="Slate")
    expect(page.locator("#plan")).to_contain_text("5 g")
    expect(page.get_by_role("radio", name=re.compile(r"J-1: 100"))).to_be_checked()
    page.get_by_role("button", name=re.compile(r"^0.5")).click()
    expect(page.locator("#plan")).to_contain_text("2.5 g")
    expect(page.get_by_label("Strength", exact=True)).to_have_value("0.5")
    page.get_by_role("button", name=re.compile(r"^1\s%")).click()
    expect(page.get_by_label("Strength", exact=True)).to_have_value("1")
    sound(page)
    press(page, "Begin")


def weigh(page: Page) -> None:
    expect(page.locator("main")).to_contain_text("Before the jar is opened")
    sound(page)
    press(page, "All is laid out")
    page.get_by_label("What the scale really shows").press_sequentially("5.2")
    outcome = page.locator("#outcome")
    expect(outcome).to_contain_text("1.04")
    expect(outcome).to_contain_text("0.2\u00a0g over. Nothing needs mending")
    expect(outcome).to_contain_text("make up to 520\u00a0ml")
    page.reload()
    expect(page.get_by_label("What the scale really shows")).to_have_value("5.2")
    expect(outcome).to_contain_text("1.04")
    sound(page)
    press(page, "Weighed")


def dissolve(page: Page) -> None:
    """Wet, dissolve, look and cool; called away once in between."""
    sound(page)
    press(page, "It is a smooth paste")
    page.get_by_role("link", name="Leave it for now").click()
    sound(page)
    page.get_by_role("link", name=re.compile(r"^Go on")).click()
    for done in ("It is dissolved", "No grains left", "It is cold"):
        sound(page)
        press(page, done)


def make_up(page: Page) -> None:
    page.get_by_label("What it really came to").press_sequentially("500")
    expect(page.locator("#outcome")).to_contain_text("1.04")
    press(page, "Made up")
    expect(page.locator(".faults")).to_contain_text("2.7\u00a0% too strong")
    expect(page.get_by_label("What it really came to")).to_have_value("500")
    page.get_by_label("It is cold").check()
    sound(page)
    press(page, "Made up")


def label(page: Page) -> str:
    page.get_by_label("Place on the shelf").fill("top shelf")
    sound(page)
    press(page, "Put it on the shelf")
    sound(page)
    return page.locator(".ask").inner_text()


def printed(page: Page, address: str) -> bytes:
    """Open the sheet; then fetch the same label, as a viewer keeps its bytes."""
    page.get_by_role("link", name="Print the label").click()
    sound(page)
    page.get_by_label("Label paper", exact=True).select_option(FORMAT.key)
    with page.expect_response(is_pdf):
        press(page, "Open the labels")
    return page.context.request.get(address).body()


def is_pdf(response: Response) -> bool:
    return response.headers.get("content-type") == "application/pdf"


def code_on(pdf: bytes) -> str:
    (square,) = zxingcpp.read_barcodes(thermal_print(pdf))
    return code_from_text(square.text)


def find_by_photo(page: Page, address: str, pdf: bytes) -> None:
    corner = FORMAT.corners_mm[0]
    photo = phone_photo(cut_out(thermal_print(pdf), corner, FORMAT.label_mm))
    page.goto(f"{address}/find/")
    sound(page)
    page.get_by_label("Photo of the label").set_input_files({
        "name": "IMG_0001.jpg",
        "mimeType": "image/jpeg",
        "buffer": photo,
    })
    press(page, "Read the photo")


def nothing_waits_but_the_sheet(page: Page, address: str) -> None:
    page.goto(address)
    waits = page.get_by_role("listitem").filter(has=page.locator(".what"))
    expect(waits).to_have_count(1)
    expect(waits).to_contain_text("1 dye has no safety data sheet")
