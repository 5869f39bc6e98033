"""Yarn put on a day in a real browser: sound, and followed while somebody types."""

from uuid import uuid4

from playwright.sync_api import Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Order, OrderLine, Pot, Recipe
from shadewright.workflows.people import Person
from shadewright.workflows.stamps import today
from tests.browser import axe, goes_sideways
from tests.web.dyeing import dyeing_things


def test_from_an_order_to_baths_to_the_stock_to_make(
    page: Page, live_server: LiveServer, ines: Person
) -> None:
    del ines
    things = dyeing_things()
    Pot.objects.create(name="Small pot", volume_l=6.0)
    recipe = Recipe.objects.get(versions=things.recipe())
    order = Order.objects.create(number=7, deed=uuid4(), for_whom="The yarn club")
    OrderLine.objects.create(
        order=order,
        position=1,
        recipe=recipe,
        base_id=things.base,
        skeins=8,
        skein_g=100.0,
    )
    page.goto(f"{live_server.url}/days/{today():%Y-%m-%d}/add/")
    page.get_by_role("link", name="Take this").click()
    told = page.get_by_role("status").filter(has_text="baths")
    expect(told).to_contain_text("4 baths, 800 g, 8 skeins.")
    page.get_by_text("Which pots, and how it is split").click()
    page.get_by_text("Alike: baths of one weight").click()
    expect(told).to_contain_text("3 baths, 800 g, 8 skeins.")
    expect(page.get_by_role("cell", name="3 for order 7").first).to_be_visible()
    page.get_by_text("Liquor, water, how well").click()
    page.get_by_label("Liquor ratio").fill("25")
    expect(told).to_contain_text("2 baths, 800 g")
    page.get_by_text("Each skein weighed, or loose yarn").click()
    page.get_by_label("What each skein weighs").fill("98\nninety")
    expect(page.get_by_text("Not like this")).to_be_visible()
    page.get_by_label("What each skein weighs").fill("")
    expect(told).to_contain_text("2 baths, 800 g")
    page.get_by_label("Liquor ratio").fill("")
    expect(told).to_contain_text("3 baths, 800 g")
    assert axe(page) == []
    assert goes_sideways(page) == 0
    page.get_by_role("button", name="Put these baths on the day").click()
    expect(page.get_by_role("heading", name="Stock for the day")).to_be_visible()
    expect(page.get_by_text("3 baths are planned")).to_be_visible()
    assert axe(page) == []
    assert goes_sideways(page) == 0
    page.get_by_role("link", name="Make 100").first.click()
    expect(page.get_by_role("textbox", name="Volume")).to_have_value("100")
