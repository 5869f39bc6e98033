"""Writing a recipe: rows, old ones as they are, bad input of every kind."""

from typing import Any
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Dye, Recipe
from shadewright.workflows.recipes import recipe, recipes, version
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE

NEW = "/recipes/new/"


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


def form(things: Dyeing, **typed: object) -> dict[str, str]:
    plain = {
        "deed": uuid4(),
        "rows": 4,
        "name": "Low Tide",
        "dye_1": things.slate,
        "depth_1": "0,6 %",
        "helper_1": things.acid,
        "amount_1": "2",
        "unit_1": "% owf",
        "when_1": "after dye",
        "unit_2": "g/l",
        "when_2": "at top",
        "liquor_ratio": "1:30",
        "top_c": "90",
    }
    return {name: str(value) for name, value in (plain | typed).items()}


def send(client: Client, things: Dyeing, address: str = NEW, **typed: object) -> Answer:
    return read(client.post(address, form(things, **typed), follow=True))


def test_a_recipe_is_written_and_shown(client: Client, things: Dyeing) -> None:
    asked = read(client.get(NEW))
    assert asked.value("liquor_ratio") == "30"
    assert asked.source.count('name="dye_') == 4
    done = send(client, things, ties="four, loose", notes="Slow.\nSoak.")
    assert "Low Tide, version 1, is written down" in done.text
    assert "Slate 0.6 %" in done.text
    assert "2 % on fibre" in done.text
    assert recipes()[0].newest.is_complete


def test_acid_on_the_way_up_has_its_temperature(client: Client, things: Dyeing) -> None:
    up = {"when_1": "on the way", "start_c": "40"}
    done = send(client, things, at_1="60 °C", **up)
    assert "on the way up, at 60 °C" in done.text
    (written,) = recipes()
    assert written.newest.text.helpers[0].at_c == 60.0
    again = read(client.get(f"/recipes/{written.id}/versions/new/?from=1"))
    assert again.value("at_1") == "60"
    missing = send(client, things, **up)
    assert "Type at what temperature it goes in" in missing.text
    for outside in ("30", "95"):
        refused = send(client, things, at_1=outside, **up)
        assert "On the way up is between start and top." in refused.text
    assert len(recipes()) == 1


def test_the_same_form_twice_writes_one_version(client: Client, things: Dyeing) -> None:
    typed = form(things)
    places = {client.post(NEW, typed).headers["Location"] for _ in "12"}
    assert len(places) == 1
    assert Recipe.objects.count() == 1


def test_more_rows_keep_what_was_typed(client: Client, things: Dyeing) -> None:
    more = send(client, things, act="more", depth_1="much", notes=HOSTILE)
    assert more.status == 200
    assert more.source.count('name="dye_') == 7
    assert more.value("depth_1") == "much"
    assert HOSTILE in more.text
    seventh: dict[str, Any] = {"rows": 7, "dye_7": things.gorse, "depth_7": "0.2"}
    assert "Gorse 0.2 %" in send(client, things, **seventh).text
    assert send(client, things, rows="9" * 50, act="more").source.count("dye_") > 4


def test_an_old_recipe_is_taken_in_as_it_is(client: Client, things: Dyeing) -> None:
    done = send(
        client,
        things,
        dye_1="",
        depth_1="",
        words_1="3 tsp of my blue",
        as_written="3 tsp of my blue,\na glug of vinegar",
    )
    assert "Incomplete" in done.text
    assert "“3 tsp of my blue”" in done.text
    bare = {"dye_1": "", "depth_1": "", "helper_1": "", "amount_1": ""}
    done = send(client, things, name="Spoons", as_written="two spoons", **bare)
    assert "no dye is named" in done.text


def test_the_next_version_begins_as_the_one_before(
    client: Client, things: Dyeing
) -> None:
    first = version(things.recipe())
    Dye.objects.filter(pk=things.gorse).update(is_retired=True)
    address = f"/recipes/{first.recipe_id}/versions/new/"
    asked = read(client.get(f"{address}?from=1"))
    assert asked.value("depth_2") == "0.3"
    assert f'<option value="{things.gorse}" selected>' in asked.source
    assert asked.value("ties") == "four, loose"
    assert 'name="name"' not in asked.source
    done = send(
        client,
        things,
        address,
        depth_1="0.7",
        dye_2=things.gorse,
        depth_2="0.3",
        why_changed="too pale",
    )
    assert "Low Tide, version 2, is written down" in done.text
    assert "Slate: 0.7 %, was 0.6 %" in done.text
    assert recipe(first.recipe_id).versions[1] == first
    assert read(client.get(f"{address}?from=7")).status == 404
    assert read(client.get("/recipes/99/versions/new/")).status == 404


@pytest.mark.by_hand
def test_millilitres_of_a_named_bottle_become_a_depth(
    client: Client, things: Dyeing
) -> None:
    # 62 ml of 1 % hold 0.62 g; on 100 g of yarn that is 0.62 %.
    aid = {"act": "depth", "aid_ml": "62", "aid_yarn_g": "100"}
    bare = {"dye_1": "", "depth_1": "", "words_1": "my blue"}
    shown = send(client, things, aid_bottle=things.slate_bottle, **aid, **bare)
    assert "That is a depth of 0.62 %. It now stands in row 1" in shown.text
    assert shown.value("depth_1") == "0.62"
    assert f'<option value="{things.slate}" selected>' in shown.source
    typed = send(client, things, aid_percent="2", **aid)
    assert "That is a depth of 1.24 %. It now stands in row 2" in typed.text
    assert typed.value("depth_1") == "0,6 %"
    assert not Recipe.objects.exists()


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [
        ("aid_percent", "", "The strength is missing"),
        ("aid_percent", "-1", "must be"),
        ("aid_ml", "", "Poured is missing."),
        ("aid_ml", "3 spoons", "Poured is written as a volume"),
        ("aid_yarn_g", "0", "On dry yarn must be above 0"),
    ],
)
def test_a_depth_that_cannot_be_reckoned_says_why(
    client: Client, things: Dyeing, name: str, typed: str, sentence: str
) -> None:
    aid = {"aid_percent": "1", "aid_ml": "60", "aid_yarn_g": "100", name: typed}
    shown = send(client, things, act="depth", **aid)
    assert shown.status == 422
    assert sentence in shown.fault(name)
    assert shown.value("name") == "Low Tide"


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [
        ("name", "", "Name is missing."),
        ("name", " ", "Name is missing."),
        ("name", "x" * 61, "Name may have up to 60 characters"),
        ("depth_1", "", "The depth is missing"),
        ("depth_1", "0", "Depth 1 must be above 0"),
        ("depth_1", "-0.6", "Depth 1 must be"),
        ("depth_1", "60", "at most 50 %"),
        ("depth_1", "1e99", "Depth 1 is written as"),
        ("depth_1", "3 tsp", "Depth 1 is written as"),
        ("depth_1", "6 ml", "Depth 1 is written as"),
        ("dye_1", "", "The dye is missing: choose it."),
        ("dye_1", "999", "Dye 1 must be one of those offered."),
        ("words_1", "x" * 121, "may have up to 120 characters"),
        ("amount_1", "", "The amount is missing."),
        ("amount_1", "-2", "Amount 1 must be above 0"),
        ("amount_1", "a glug", "Amount 1 is written as"),
        ("helper_1", "", "Choose what this amount is of."),
        ("unit_1", "spoons", "Counted 1 must be one of those offered."),
        ("when_1", "soon", "Goes in 1 must be one of those offered."),
        ("liquor_ratio", "0", "Liquor ratio must be above 0"),
        ("liquor_ratio", "2:30", "Liquor ratio is written as"),
        ("liquor_ratio", "9" * 9, "Liquor ratio must be above 0"),
        ("start_c", "95", "at least the start, 95 °C"),
        ("start_c", "-4", "Start must be from 0 °C"),
        ("top_c", "101", "Top must be from 0 °C"),
        ("rise_c_per_min", "0", "Rise must be from 0.05"),
        ("rise_c_per_min", "fast", "Rise is written as"),
        ("hold_min", "-1", "Hold must be from 0 min"),
        ("hold_min", "30 h", "Hold is written as"),
        ("ties", "x" * 201, "Ties may have up to 200 characters"),
        ("notes", "x" * 4001, "Notes may have up to 4000 characters"),
    ],
)
def test_a_fault_stands_by_its_field_and_all_that_was_typed_stays(
    client: Client, things: Dyeing, name: str, typed: str, sentence: str
) -> None:
    shown = send(client, things, **{"stirring": "every 5 min", name: typed})
    assert shown.status == 422
    by = "top_c" if name == "start_c" and typed == "95" else name
    assert sentence in shown.fault(by)
    assert shown.value("stirring") == "every 5 min"
    assert not Recipe.objects.exists()


def test_nothing_at_all_is_no_recipe(client: Client, things: Dyeing) -> None:
    bare = {"dye_1": "", "depth_1": "", "helper_1": "", "amount_1": ""}
    shown = send(client, things, **bare)
    assert "The dye is missing. Choose at least one" in shown.fault("dye_1")
    twice = send(client, things, dye_2=things.slate, depth_2="0.1")
    assert "This dye stands above already" in twice.fault("dye_2")


def test_html_stays_text_in_every_field(client: Client, things: Dyeing) -> None:
    words = ("name", "words_1", "ties", "stirring", "look_at_15", "notes", "as_written")
    shown = send(client, things, **dict.fromkeys(words, HOSTILE))
    assert shown.status == 200
    assert HOSTILE not in shown.source
    assert shown.text.count("<script>alert(1)</script>") > 5
    assert HOSTILE not in read(client.get("/recipes/")).source


def test_without_a_dye_on_the_shelf_words_will_do(client: Client, ines: object) -> None:
    del ines
    assert "add a dye" in read(client.get(NEW)).text
