"""An order is written down, refused in one sentence with nothing lost, and changed."""

from collections.abc import Mapping
from datetime import timedelta
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Base, Order, OrderLine, Recipe
from shadewright.workflows.people import Person
from shadewright.workflows.stamps import today
from tests.web.pages_read import Answer, read
from tests.workflows.days.wanted import ordered, recipe_of
from tests.workflows.pots import Ready


def sent(pot: Ready, **other: object) -> dict[str, object]:
    """Return a form of one line as it is sent."""
    return {
        "deed": str(uuid4()),
        "rows": "1",
        "for_whom": "Wool Week stall",
        "recipe_1": recipe_of(pot).pk,
        "base_1": pot.base,
        "skeins_1": "6",
        "skein_g_1": "",
        "said_1": "like the sea in March",
        "due_on": "",
        "notes": "",
    } | other


def posted(client: Client, what: Mapping[str, object], to: str = "new") -> Answer:
    return read(client.post(f"/orders/{to}/", what))


def test_an_order_is_written_down_with_a_name_a_colourway_and_a_number(
    client: Client, pot: Ready
) -> None:
    what = sent(pot)
    client.post("/orders/new/", what)
    page = read(client.post("/orders/new/", what, follow=True))
    assert "Order 1" in page.text
    assert "6 × Low Tide on Fell DK" in page.text
    assert "like the sea in March" in page.text
    assert "Ready between" in page.text
    assert Order.objects.count() == 1


@pytest.mark.parametrize(
    ("wrong", "field", "sentence"),
    [
        ({"for_whom": ""}, "for_whom", "For whom is missing."),
        ({"skeins_1": "0"}, "skeins_1", "must be from 1 to 10 000; got 0."),
        ({"skeins_1": "six"}, "skeins_1", "Skeins must be a whole number."),
        ({"skeins_1": ""}, "skeins_1", "How many skeins is missing"),
        ({"recipe_1": ""}, "recipe_1", "The colourway is missing: choose it."),
        ({"base_1": ""}, "base_1", "The base is missing: choose the yarn."),
        ({"skein_g_1": "-5"}, "skein_g_1", "Grams a skein must be above 0"),
        ({"due_on": "2020-01-01"}, "due_on", "must be within a year of today"),
    ],
)
def test_a_faulty_order_says_so_by_its_field_and_keeps_what_was_typed(
    client: Client, pot: Ready, wrong: dict[str, str], field: str, sentence: str
) -> None:
    page = posted(client, sent(pot) | wrong)
    assert page.status == 422
    assert sentence in page.fault(field)
    assert page.value("said_1") == "like the sea in March"
    assert Order.objects.count() == 0


def test_a_fault_stands_by_the_line_that_it_is_of(client: Client, pot: Ready) -> None:
    Base.objects.update(skein_g=None)
    line = {"recipe_1": "", "base_1": "", "skeins_1": "", "said_1": "", "rows": "2"}
    second = {"recipe_2": recipe_of(pot).pk, "base_2": pot.base, "skeins_2": "2"}
    page = posted(client, sent(pot) | line | second)
    assert "Fell DK has none written down" in page.fault("skein_g_2")


def test_more_lines_keep_what_was_typed(client: Client, pot: Ready) -> None:
    page = posted(client, sent(pot, act="more"))
    assert page.status == 200
    assert page.value("for_whom") == "Wool Week stall"
    assert page.value("rows") == "2"
    assert not page.value("skeins_2")


def test_words_alone_are_an_order(client: Client, ines: Person) -> None:
    del ines
    bare = {"deed": str(uuid4()), "rows": "1", "for_whom": "Ada"}
    page = posted(client, bare)
    assert "The colourway is missing." in page.fault("recipe_1")
    answer = client.post("/orders/new/", bare | {"notes": "grey cat"}, follow=True)
    assert "No colourway is chosen yet" in read(answer).text
    assert "no colourway yet" in read(client.get("/orders/")).text


def test_the_only_base_stands_in_every_line_and_begins_none(
    client: Client, pot: Ready
) -> None:
    chosen = f'<option value="{pot.base}" selected>'
    assert chosen in read(client.get("/orders/new/")).source
    words = sent(pot, recipe_1="", skeins_1="", said_1="", notes="six, dark green")
    assert (
        "No colourway is chosen yet"
        in read(client.post("/orders/new/", words, follow=True)).text
    )
    assert not OrderLine.objects.exists()
    assert chosen in read(client.get("/orders/1/edit/")).source


def test_an_order_that_was_due_already_is_taken(client: Client, pot: Ready) -> None:
    past = today() - timedelta(days=3)
    answer = client.post("/orders/new/", sent(pot, due_on=f"{past}"), follow=True)
    assert "3 days ago" in read(answer).text
    assert "cannot be met" in read(answer).text


def test_a_line_is_dropped_and_another_comes(client: Client, pot: Ready) -> None:
    line = ordered(pot, 4)
    number = line.order.number
    page = read(client.get(f"/orders/{number}/edit/"))
    what = sent(pot, rows="2", seen=page.value("seen"), drop_1="on", skeins_1="4")
    more = {"recipe_2": recipe_of(pot).pk, "base_2": pot.base, "skeins_2": "3"}
    answer = client.post(f"/orders/{number}/edit/", what | more, follow=True)
    assert "Not wanted any more." in read(answer).text
    assert OrderLine.objects.filter(is_dropped=True).count() == 1
    assert "3 × Low Tide" in read(client.get("/orders/")).text


def test_whoever_comes_second_to_a_change_is_told(client: Client, pot: Ready) -> None:
    number = ordered(pot, 4).order.number
    seen = read(client.get(f"/orders/{number}/edit/")).value("seen")
    posted(client, sent(pot, seen=seen), to=f"{number}/edit")
    page = posted(client, sent(pot, seen=seen, skeins_1="9"), to=f"{number}/edit")
    assert page.status == 422
    assert "Somebody changed this order" in page.text
    assert page.value("skeins_1") == "9"


def test_a_retired_colourway_stays_in_its_order(client: Client, pot: Ready) -> None:
    number = ordered(pot, 4).order.number
    Recipe.objects.update(is_retired=True)
    assert "Low Tide, retired" in read(client.get(f"/orders/{number}/edit/")).text
    assert "Low Tide" not in read(client.get("/orders/new/")).text
