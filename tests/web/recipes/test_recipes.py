"""The list of recipes and a recipe with its versions."""

from dataclasses import replace

import pytest
from django.test import Client

from shadewright.records.models import Auxiliary, Bath, Dye, Lot
from shadewright.records.models.catalogue import AuxiliaryKind, DyeClass
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import version, write_recipe, write_version
from shadewright.workflows.stamps import stamp_now
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read

pytestmark = pytest.mark.usefixtures("ines")


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


def page(client: Client, address: str) -> Answer:
    return read(client.get(address))


def home(version_id: int) -> str:
    return f"/recipes/{version(version_id).recipe_id}/"


def test_an_empty_list_leads_to_the_first(client: Client) -> None:
    shown = page(client, "/recipes/")
    assert "No recipe yet" in shown.text
    assert "/recipes/new/" in shown.links


def test_the_list_sorts_searches_and_marks(client: Client, things: Dyeing) -> None:
    tide = things.recipe()
    old = RecipeText(doses=(DoseLine(as_written="a glug"),))
    write_recipe(name="Ancient", text=old, stamp=stamp_now(by=None))
    shown = page(client, "/recipes/")
    assert "Slate 0.6 %, Gorse 0.3 %" in shown.text
    assert "“a glug”" in shown.text
    assert "incomplete" in shown.text
    assert home(tide) in shown.links
    assert shown.text.index("Ancient") < shown.text.index("Low Tide")
    turned = page(client, "/recipes/?sort=-name").text
    assert turned.index("Low Tide") < turned.index("Ancient")
    assert "Ancient" not in page(client, "/recipes/?q=gorse").text
    assert "Nothing with “puce”" in page(client, "/recipes/?q=puce").text


def test_a_recipe_tells_all_that_it_says(client: Client, things: Dyeing) -> None:
    number = things.recipe()
    shown = page(client, home(number))
    for words in (
        "Slate 0.6 %",
        "All together 0.9 %",
        "1:30",
        "2 % on fibre, after the dye, before the heat",
        "from 40 °C to 90 °C, by 1 °C a minute, hold 30 min",
        "four, loose",
        "Not written down: Stirring, Look at 15 minutes, Notes.",
        "On no base yet",
    ):
        assert words in shown.text
    assert f"/baths/new/?version={number}" in shown.links
    assert f"{home(number)}versions/new/?from=1" in shown.links


def test_versions_say_what_they_changed(client: Client, things: Dyeing) -> None:
    first = things.recipe()
    text = replace(version(first).text, top_c=95.0, why_changed="too pale")
    write_version(parent_id=first, text=text, stamp=stamp_now(by=None))
    shown = page(client, home(first))
    assert "Top: 95 °C, was 90 °C" in shown.text
    assert "too pale" in shown.text
    earlier = page(client, f"{home(first)}versions/1/")
    assert "An earlier version: the newest is version 2" in earlier.text
    assert "to 90 °C" in earlier.text
    changed = page(client, f"{home(first)}changes/")
    assert "Top 90 °C 95 °C" in changed.text
    assert "They say the same" in page(client, f"{home(first)}changes/?from=2").text
    assert page(client, f"{home(first)}changes/?from=9").status == 404
    assert page(client, f"{home(first)}changes/?from=<b>").status == 200
    assert page(client, f"{home(first)}versions/9/").status == 404
    assert page(client, "/recipes/999/").status == 404


def test_its_cautions_stand_there(client: Client, things: Dyeing) -> None:
    Dye.objects.filter(pk=things.gorse).update(dye_class=DyeClass.LEVELLING)
    shown = page(client, home(things.recipe()))
    assert "levelling wants pH 2 to 4, milling wants pH 5 to 7" in shown.text


@pytest.mark.parametrize(
    ("kind", "is_missed"),
    [
        (AuxiliaryKind.ACID, False),
        (AuxiliaryKind.ACID_SALT, False),
        (AuxiliaryKind.SALT, True),
    ],
)
def test_a_recipe_without_acid_says_so(
    client: Client, things: Dyeing, kind: AuxiliaryKind, *, is_missed: bool
) -> None:
    Auxiliary.objects.filter(pk=things.acid).update(kind=kind)
    shown = page(client, home(things.recipe()))
    assert ("No acid stands in this recipe" in shown.text) == is_missed
    assert ("Write it into a new version." in shown.text) == is_missed


def test_an_incomplete_one_cannot_be_dyed_but_completed(client: Client) -> None:
    text = RecipeText(
        doses=(DoseLine(as_written="3 tsp of my blue"),), as_written="3 tsp\na glug"
    )
    old = write_recipe(name="Ancient", text=text, stamp=stamp_now(by=None))
    shown = page(client, home(old.id))
    assert "no dye and depth in % for “3 tsp of my blue”" in shown.text
    assert "Complete it" in shown.text
    assert "Plan a bath" not in shown.text


def test_bases_and_baths_of_it_stand_beside(client: Client, things: Dyeing) -> None:
    number = things.recipe()
    dyed, left = things.bath(number), things.bath(number)
    Lot.objects.create(bath=Bath.objects.get(number=dyed), number=dyed)
    give_up(number=left, why="", stamp=stamp_now(by=None))
    shown = page(client, home(number))
    assert "Fell DK version 1" in shown.text
    assert {f"/baths/{dyed}/", f"/baths/{left}/"} <= set(shown.links)
    assert "given up" in shown.text
    write_version(parent_id=number, text=things.text(), stamp=stamp_now(by=None))
    assert "version 1; version 2 not yet" in page(client, home(number)).text


def test_a_recipe_is_retired_and_comes_back(client: Client, things: Dyeing) -> None:
    number = things.recipe()
    gone = read(client.post(f"{home(number)}retire/", follow=True))
    assert "Low Tide is retired" in gone.text
    assert "1 retired" in gone.text
    assert "Low Tide" in page(client, "/recipes/retired/").text
    assert "Bring back" in page(client, home(number)).text
    back = read(client.post(f"{home(number)}back/", follow=True))
    assert "Low Tide is in the list again" in back.text
    assert client.get(f"{home(number)}retire/").status_code == 405


def test_a_new_name_is_taken_and_the_old_one_found(
    client: Client, things: Dyeing
) -> None:
    number = things.recipe()
    things.recipe("Moss")
    asked = page(client, f"{home(number)}rename/")
    assert asked.value("name") == "Low Tide"
    for name, sentence in (
        ("", "Name is missing."),
        ("moss", "There is a recipe “Moss” already."),
        ("x" * 61, "Name may have up to 60 characters"),
    ):
        refused = read(client.post(f"{home(number)}rename/", {"name": name}))
        assert refused.status == 422
        assert sentence in refused.fault("name")
        assert refused.value("name") == name
    done = read(client.post(f"{home(number)}rename/", {"name": "Ebb"}, follow=True))
    assert "Named Low Tide before." in done.text
    assert "was Low Tide" in page(client, "/recipes/?q=tide").text
