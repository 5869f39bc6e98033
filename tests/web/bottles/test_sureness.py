"""A bottle's page: how sure its strength is, and with what it was mended."""

from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import MeasuringTool
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.stock_spreads import made_with
from shadewright.workflows.stocks import make_stock
from shadewright.workflows.usual_tools import set_usual_tools
from tests.web.benches import Bench, small_bench
from tests.web.pages_read import Answer, read

pytestmark = pytest.mark.django_db


@pytest.fixture
def bench() -> Bench:
    return small_bench()


@pytest.fixture
def scale() -> int:
    return MeasuringTool.objects.create(
        name="Bench scale", kind="balance", readability=0.01, own_error=0.0
    ).pk


@pytest.fixture
def cylinder() -> int:
    return MeasuringTool.objects.create(
        name="Tall cylinder", kind="cylinder", size=1000, tool_class="B"
    ).pk


@pytest.fixture
def bottle(bench: Bench, scale: int, cylinder: int) -> ShelfBottle:
    """A litre at 1 %: ± 0.0095 of it."""
    return make_stock(
        dye_id=bench.dye,
        jar_id=bench.jar,
        wanted_percent=1.0,
        powder_g=10.0,
        final_ml=1000.0,
        stamp=stamp_now(by=None),
        made_with=made_with(scale, cylinder),
    )


def page(client: Client, code: str) -> Answer:
    return read(client.get(f"/bottles/{code}/"))


def do(client: Client, code: str, key: str, **typed: str) -> Answer:
    form = {"deed": str(uuid4()), "note": "", **typed}
    return read(client.post(f"/bottles/{code}/{key}/", form, follow=True))


def test_the_page_says_how_sure_it_is_and_what_that_is_made_of(
    client: Client, bottle: ShelfBottle
) -> None:
    text = page(client, bottle.code).text
    assert "1 % ± 0.01 tight" in text
    assert "Mostly: mark of the 1000 ml cylinder." in text
    assert "What it is made of" in text
    assert "Tools weighed on Bench scale, made up in Tall cylinder" in text
    assert "spread of a strength, version 1" in text


def test_the_shelf_shows_the_spread_beside_the_strength(
    client: Client, bottle: ShelfBottle
) -> None:
    assert bottle.is_on_shelf
    shelf = read(client.get("/shelf/"))
    assert "1 % ± 0.01 tight" in shelf.text  # beside the bottle
    assert "tight: weighed" in shelf.text  # in the table


def test_water_names_its_tool_in_the_ledger_and_widens_the_spread(
    client: Client, bottle: ShelfBottle, cylinder: int
) -> None:
    done = do(client, bottle.code, "water", volume_ml="200", tool_id=str(cylinder))
    assert "Water added Tall cylinder" in done.text
    wider = shelf_bottle(bottle.code).u_strength_rel
    assert wider is not None
    assert bottle.u_strength_rel is not None
    assert wider > bottle.u_strength_rel


def test_the_usual_tool_is_chosen_beforehand_and_taken_where_none_is_named(
    client: Client, bottle: ShelfBottle, cylinder: int
) -> None:
    set_usual_tools(fill_tool=cylinder)
    form = read(client.get(f"/bottles/{bottle.code}/water/"))
    assert f'<option value="{cylinder}" selected>Tall cylinder' in form.source
    assert "As usual: Tall cylinder" in form.text
    do(client, bottle.code, "water", volume_ml="200", tool_id="")
    assert shelf_bottle(bottle.code).lacks == ()


@pytest.mark.parametrize(
    ("key", "typed", "words"),
    [
        ("water", {"volume_ml": "200"}, "what the water was measured with"),
        ("powder", {"powder_g": "2", "jar": ""}, "what the added powder was weighed"),
        (
            "level",
            {"volume_ml": "900", "is_evaporated": "yes"},
            "what the level was read from",
        ),
    ],
)
def test_what_was_done_without_a_tool_is_left_out_and_said(
    client: Client, bottle: ShelfBottle, key: str, typed: dict[str, str], words: str
) -> None:
    done = do(client, bottle.code, key, tool_id="", **typed)
    assert f"Left out: {words}" in done.text


@pytest.mark.parametrize("key", ["water", "powder", "level", "dilute"])
def test_a_tool_that_is_none_is_refused_by_its_field(
    client: Client, bottle: ShelfBottle, key: str
) -> None:
    typed = {
        "volume_ml": "100",
        "powder_g": "1",
        "jar": "",
        "is_evaporated": "no",
        "want_percent": "0.5",
    }
    refused = do(client, bottle.code, key, tool_id="99999", **typed)
    assert refused.status == 422
    assert "must be one of those offered" in refused.text


def test_a_weaker_bottle_says_what_was_not_named(
    client: Client, bottle: ShelfBottle, cylinder: int
) -> None:
    done = do(
        client,
        bottle.code,
        "dilute",
        want_percent="0.5",
        volume_ml="500",
        tool_id="",
        ware_id=str(cylinder),
    )
    assert "0.5 % ±" in done.text
    assert "Left out: what the stock was measured with." in done.text


@pytest.mark.by_hand
def test_a_weaker_bottle_is_foretold_in_grams_where_it_is_weighed(
    client: Client, bottle: ShelfBottle, scale: int, cylinder: int
) -> None:
    asked = {"want_percent": "0.1", "volume_ml": "500", "ware_id": f"{cylinder}"}
    address = f"/bottles/{bottle.code}/dilute/"
    page = read(client.get(address, {**asked, "tool_id": f"{scale}"}))
    drawn_ml = 50.0 / bottle.strength_percent
    # water of 20 °C weighs 0.9982 g a ml, and the dye in 500 ml of 0.1 % is 0.5 g
    assert f"Draw {drawn_ml * 0.9982 + 0.5:.1f}" in page.text
    assert f"g ({drawn_ml:.3g} ml) of {bottle.code}; make up to 500 ml," in page.text
    # nothing is foretold of a page that nobody filled in
    assert "make up to" not in read(client.get(address)).text
