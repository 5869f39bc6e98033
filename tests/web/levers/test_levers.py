"""What would make it surer: on the plan, on the recipe, for the whole shelf."""

from decimal import Decimal
from urllib.parse import parse_qs, urlsplit

import pytest
from django.test import Client
from playwright.sync_api import Page
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import MeasuringTool, Recipe
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now
from tests.browser import axe, goes_sideways
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE
from tests.workflows.bench import made, new_dye

HELP = "/shelf/help/"


@pytest.fixture
def things(ines: object) -> Dyeing:
    """Two dyes at 1 %, a recipe's things, and three tools, one of an odd name."""
    del ines
    tools = (
        ("Kitchen scale", ToolKind.BALANCE, 2000.0, 0.1),
        (HOSTILE[:60], ToolKind.SYRINGE, 20.0, None),
        ("Tall cylinder", ToolKind.CYLINDER, 500.0, None),
    )
    for name, kind, size, step in tools:
        MeasuringTool.objects.create(name=name, kind=kind, size=size, readability=step)
    return dyeing_things()


def plan(client: Client, things: Dyeing, **typed: str | int) -> Answer:
    """Plan 20 g at 0.6 % of a dye whose bottle was made here."""
    kelp = new_dye("Kelp")
    made(kelp)
    text = RecipeText(
        doses=(DoseLine(dye_id=kelp, dye_name="Kelp", depth_percent=0.6),)
    )
    number = write_recipe(name="Pale", text=text, stamp=stamp_now(by=None)).id
    asked = {"version": number, "base": things.base, "fibre_g": 20, **typed}
    return read(client.get("/baths/new/", asked))


def test_the_plan_says_what_would_make_it_surer(client: Client, things: Dyeing) -> None:
    page = plan(client, things)
    assert page.status == 200
    assert "What would make it surer" in page.text
    assert "at best ±" in page.text
    assert "becomes ±" in page.text
    assert HOSTILE[:60] not in page.source


def test_one_tap_follows_the_advice(client: Client, things: Dyeing) -> None:
    coarse = MeasuringTool.objects.create(
        name="Yarn scale", kind=ToolKind.BALANCE, size=5000, readability=1
    )
    page = plan(client, things, notes="blue tag", yarn_scale=coarse.pk)
    assert "Weigh the yarn on the Kitchen scale, not on the Yarn scale" in page.text
    (address,) = [one for one in page.links if one.startswith("/baths/new/?")]
    asked = parse_qs(urlsplit(address).query)
    assert asked["notes"] == ["blue tag"]
    assert asked["yarn_scale"] == [str(coarse.pk - 3)]
    followed = read(client.get(address))
    assert "not on the Yarn scale" not in followed.text
    assert "blue tag" in followed.source


def test_a_stock_to_be_thinned_leads_to_its_bottle(
    client: Client, things: Dyeing
) -> None:
    MeasuringTool.objects.create(
        name="Small cylinder", kind=ToolKind.CYLINDER, size=100, tool_class="A"
    )
    page = plan(client, things)
    (address,) = [one for one in page.links if "/dilute/" in one]
    begun = read(client.get(address))
    assert begun.value("want_percent") in {"0.1", "0.5"}
    assert begun.value("volume_ml") == "500"
    (tool,) = parse_qs(urlsplit(address).query)["tool_id"]
    assert f'<option value="{tool}" selected>' in begun.source
    assert "make up to 500 ml" in begun.text


def page_of_recipe() -> str:
    """Return the address of the only recipe."""
    return f"/recipes/{Recipe.objects.get().pk}/"


def test_a_recipe_says_how_well_it_is_known(client: Client, things: Dyeing) -> None:
    things.recipe()
    address = page_of_recipe()
    page = read(client.get(address))
    assert "How well it is known" in page.text
    assert "the surest bottle of each dye" in page.text
    assert "at a batch of 100 g" in page.text
    assert HELP in page.links
    MeasuringTool.objects.update(is_retired=True)
    assert "Not known yet: say which syringe" in read(client.get(address)).text


def test_the_whole_shelf_begins_with_what_is_free(
    client: Client, things: Dyeing
) -> None:
    things.recipe()
    page = read(client.get(HELP))
    assert page.status == 200
    assert "Begin with this" in page.text
    assert "Habits, which cost nothing" in page.text
    assert "Type its price" in page.text
    assert HELP in read(client.get("/tools/")).links


@pytest.mark.usefixtures("things")
def test_a_strength_to_keep_is_made_the_surest_way(client: Client) -> None:
    kelp = new_dye("Kelp")
    code = made(kelp).code
    pale = DoseLine(dye_id=kelp, dye_name="Kelp", depth_percent=0.02)
    text = RecipeText(doses=(pale,), liquor_ratio=30)
    write_recipe(name="Pale", text=text, stamp=stamp_now(by=None))
    page = read(client.get(HELP))
    # half a gram on a scale of 0.1 g is a poor start; 50 ml of a 1 % stock a good one
    assert any(one.startswith(f"/bottles/{code}/dilute/?") for one in page.links)
    assert not any("strength_percent" in one for one in page.links)


@pytest.mark.parametrize("typed", ["abc", "-3", "0", "1e9", "NaN", "9" * 40, HOSTILE])
def test_what_is_no_price_is_said_and_kept_as_typed(
    client: Client, things: Dyeing, typed: str
) -> None:
    things.recipe()
    page = read(client.get(HELP, {"fine-scale": typed}))
    assert page.status == 422
    assert "A price is a number above 0" in page.text
    assert page.value("fine-scale") == typed


def test_prices_put_tools_in_order(client: Client, things: Dyeing) -> None:
    things.recipe()
    page = read(client.get(HELP, {"fine-scale": "24,50"}))
    assert page.status == 200
    assert "Each 10 of its price narrows the average by" in page.text
    assert page.value("fine-scale") == "24,50"


def test_a_price_that_was_written_down_is_taken(client: Client, things: Dyeing) -> None:
    things.recipe()
    MeasuringTool.objects.create(
        name="Fine scale, given away",
        kind=ToolKind.BALANCE,
        readability=0.01,
        price=Decimal("31.00"),
        is_retired=True,
    )
    assert read(client.get(HELP)).value("fine-scale") == "31.00"
    typed = read(client.get(HELP, {"fine-scale": "20"}))
    assert typed.value("fine-scale") == "20"


def test_with_nothing_to_compare_it_says_what_is_wanted(
    client: Client, ines: object
) -> None:
    del ines
    page = read(client.get(HELP))
    assert page.status == 200
    assert {"/recipes/", "/shelf/", "/tools/"} <= set(page.links)


@pytest.mark.django_db(transaction=True)
def test_it_is_sound_on_phone_and_desk(
    live_server: LiveServer, page: Page, things: Dyeing
) -> None:
    number = things.recipe()
    plan = f"/baths/new/?version={number}&base={things.base}&fibre_g=20"
    for address in (HELP, plan, page_of_recipe()):
        page.goto(f"{live_server.url}{address}")
        assert axe(page) == [], address
        assert goes_sideways(page) == 0, address
