"""Yarn put on a day: what is shown while it is typed, what is kept, what is refused."""

from datetime import timedelta
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Base, Bath, BathFor, Order, OrderLine, Pot
from shadewright.records.models import Recipe as RecipeRow
from shadewright.web.ways import way_round
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.days.split_keeping import baths_kept
from shadewright.workflows.days.stock_needs import stock_needs
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now, today
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read

DAY = f"/days/{today():%Y-%m-%d}"
ADD = f"{DAY}/add/"


@pytest.fixture
def things(ines: object) -> Dyeing:
    """A pot of 12 l, which takes 363 g at 1:30, and one of 6 l, which takes 181 g."""
    del ines
    Pot.objects.create(name="Small pot", volume_l=6.0)
    return dyeing_things()


def live(client: Client, **typed: str | int) -> Answer:
    """Ask as htmx does while somebody types."""
    return read(client.get(ADD, typed, headers={"HX-Request": "true"}))


def ordered(version: int, base: int, skeins: int, *, number: int = 7) -> OrderLine:
    order = Order.objects.create(number=number, deed=uuid4(), for_whom="The yarn club")
    return OrderLine.objects.create(
        order=order,
        position=1,
        recipe=RecipeRow.objects.get(versions=version),
        base_id=base,
        skeins=skeins,
        skein_g=100.0,
    )


def test_first_there_is_a_recipe_a_base_and_a_pot(client: Client, ines: object) -> None:
    del ines
    assert "/recipes/new/" in read(client.get(ADD)).links
    things = dyeing_things()
    things.recipe()
    Pot.objects.update(is_retired=True)
    none = read(client.get(ADD))
    assert "First a pot, with what it holds" in none.text
    assert way_round("add-pot", back=ADD) in none.links


@pytest.mark.by_hand
def test_the_baths_follow_what_is_typed(client: Client, things: Dyeing) -> None:
    # 9 skeins of 100 g: 363 g hold three; three baths of 300 g, 9 l each.
    # Slate 0.6 % of 900 g is 5.4 g, 180 ml a bath: the bottle’s 490 ml do for two.
    version = things.recipe()
    page = live(client, version=version, base=things.base, skeins=9, skein_g="100")
    assert page.status == 200
    for words in (
        "3 baths, 900 g, 9 skeins.",
        "Blue pot 300 g, 3 skeins 9 l",
        "second filling",
        "One batch, separate lots",
        "5.4 g",
        "for 2 of 3",
        "0.5 g short",
        "Never dyed on this base",
        "Plan 20 g first",
        "Not tried on Fell DK yet",
    ):
        assert words in page.text
    swatch = f"/baths/new/?version={version}&base={things.base}&fibre_g=20"
    assert f"{swatch}&dyed_on={today():%Y-%m-%d}&is_swatch=on" in page.links
    assert not Bath.objects.exists()


def test_true_weights_loose_yarn_and_the_pots_that_may_be_used(
    client: Client, things: Dyeing
) -> None:
    asked: dict[str, str | int] = {"version": things.recipe(), "base": things.base}
    true = live(client, **asked, weights="98,4\n103\n\n101.6 g")
    assert "1 bath, 303 g, 3 skeins." in true.text
    small = Pot.objects.get(name="Small pot").pk
    loose = live(client, **asked, fibre_g="450", pots=small)
    assert "3 baths, 450 g." in loose.text
    four = {**asked, "skeins": 4, "skein_g": "100"}
    beside = live(client, **four).text
    assert "Blue pot 300 g, 3 skeins" in beside
    assert "Small pot 100 g, 1 skein" in beside
    alike = live(client, **four, way="alike").text
    assert "room for 2 more skeins" in alike
    assert "Blue pot would be filled more than once, and pots cool overnight" in alike
    whole = live(client, **four, way="alike", is_whole_pots="on")
    assert "2 of them for the shelf" in whole.text


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"skeins": "4", "skein_g": "900"}, "at most 363.6 g, which Blue pot takes"),
        ({"skeins": "4"}, "Say what one skein weighs."),
        ({"weights": "98\nten"}, "Skein 2"),
        (
            {"weights": "98\n97", "skeins": "3"},
            "3 skeins are said above, and 2 weights",
        ),
        ({"fibre_g": "300", "skeins": "3"}, "Say skeins or loose yarn, not both."),
        ({"skeins": "0"}, "Skeins must be at least 1"),
        ({"skeins": "2", "skein_g": "100", "mill_lot": "9999"}, "one of those offered"),
    ],
)
def test_what_cannot_be_meant_is_said_with_a_way_on(
    client: Client, things: Dyeing, typed: dict[str, str], said: str
) -> None:
    page = live(client, version=things.recipe(), base=things.base, **typed)
    assert page.status == 200
    assert said in page.text


def test_an_incomplete_recipe_says_what_is_missing(
    client: Client, things: Dyeing
) -> None:
    text = RecipeText(doses=(DoseLine(as_written="a pinch of blue"),))
    old = write_recipe(name="Old card", text=text, stamp=stamp_now(by=None))
    page = live(client, recipe=old.recipe_id, base=things.base, skeins=2, skein_g="100")
    assert "The recipe is incomplete: no dye and depth" in page.text


def test_a_day_that_is_over_takes_no_yarn(client: Client, things: Dyeing) -> None:
    things.recipe()
    over = today() - timedelta(days=1)
    page = read(client.get(f"/days/{over:%Y-%m-%d}/add/"))
    assert page.status == 422
    assert ADD in page.links
    sent = client.post(f"/days/{over:%Y-%m-%d}/add/", {"skeins": "2"})
    assert sent.status_code == 422
    assert client.get("/days/2026-02-31/add/").status_code == 404
    assert not Bath.objects.exists()


def test_what_an_order_waits_for_is_put_on_the_day_once(
    client: Client, things: Dyeing
) -> None:
    version = things.recipe()
    line = ordered(version, things.base, 4)
    page = read(client.get(ADD))
    assert "Low Tide on Fell DK" in page.text
    begun = read(client.get(ADD, {"line": line.pk}))
    assert "Order 7, The yarn club: 4 of 100" in begun.text
    assert "4 skeins" in begun.text
    assert "for order 7" in begun.text
    sent = {
        "deed": uuid4(),
        "version": version,
        "base": things.base,
        "skeins": "4",
        "skein_g": "100",
        "way": "side by side",
        "for_lines": f"{line.pk}:4",
    }
    for _ in range(2):
        answer = client.post(ADD, sent)
        assert answer.status_code == 302
        assert answer["Location"] == f"{DAY}/stock/"
    assert Bath.objects.count() == 2
    assert sum(BathFor.objects.values_list("skeins", flat=True)) == 4
    assert "Order 7" not in read(client.get(ADD, {"line": line.pk})).text


def test_baths_are_taken_off_the_day_again_in_one_tap(
    client: Client, things: Dyeing
) -> None:
    deed = uuid4()
    sent = {
        "deed": deed,
        "version": things.recipe(),
        "base": things.base,
        "skeins": "4",
        "skein_g": "100",
        "way": "side by side",
    }
    client.post(ADD, sent)
    back = f"{ADD}{deed}/undo/"
    assert back in read(client.get(f"{DAY}/stock/")).source
    for _ in range(2):
        assert client.post(back)["Location"] == ADD
    statuses = {bath_now(x).status for x in baths_kept(deed)}
    assert statuses == {BathStatus.GIVEN_UP}
    again = client.post(ADD, sent, follow=True)
    assert "taken off the day again" in read(again).text
    assert "2 baths, 400 g" in read(again).text
    assert Bath.objects.count() == 2


def test_what_is_refused_is_kept_by_nobody(client: Client, things: Dyeing) -> None:
    sent = {
        "deed": uuid4(),
        "version": things.recipe(),
        "base": things.base,
        "skeins": "2",
        "skein_g": "900",
        "way": "alike",
    }
    page = read(client.post(ADD, sent))
    assert page.status == 422
    assert "wind it off" in page.text
    assert not Bath.objects.exists()


def test_the_colourway_of_a_row_to_dye_brings_its_orders(
    client: Client, things: Dyeing
) -> None:
    version = things.recipe()
    line = ordered(version, things.base, 2)
    asked: dict[str, str | int] = {"recipe": line.recipe_id, "base": things.base}
    asked["skeins"] = 3
    page = read(client.get(ADD, asked))
    assert "1 bath, 300 g, 3 skeins." in page.text
    assert "2 for order 7" in page.text
    Base.objects.filter(pk=things.base).update(skein_g=50.0)
    assert "150 g, 3 skeins" in read(client.get(ADD, asked | {"line": "x"})).text
    assert stock_needs(today()).dyes == ()


def test_the_same_yarn_may_go_on_today_or_tomorrow(
    client: Client, things: Dyeing
) -> None:
    things.recipe()
    tomorrow = today() + timedelta(days=1)
    shown = read(client.get(f"/days/{tomorrow:%Y-%m-%d}/add/", {"skeins": "3"}))
    assert f"{ADD}?skeins=3" in shown.links
    assert "Rather today" in shown.text
    assert "Rather tomorrow" not in shown.text
    assert "Rather tomorrow" in read(client.get(ADD)).text
