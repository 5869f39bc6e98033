"""A row whose steps look equal."""

import pytest
from django.test import Client

from shadewright.records.models import Recipe, SwatchPlan
from shadewright.web.mix_text import mix_text
from tests.web.pages_read import read
from tests.workflows.shades.two_yarns import TwoYarns


def typed(yarns: TwoYarns, **more: str | int) -> dict[str, str | int]:
    """Return a form filled in by hand."""
    fields: dict[str, str | int] = {
        "base": yarns.wool,
        "steps": 4,
        "yarn": "50",
        "palest": "10",
        "first_1": yarns.dye("Sloe"),
        "first_1_depth": "1,2",
    }
    return fields | more


def test_what_is_typed_comes_into_the_address(client: Client, yarns: TwoYarns) -> None:
    went = client.get("/shades/gradient/", typed(yarns))
    sloe = yarns.dye("Sloe")
    assert went.headers["Location"] == (
        f"/shades/gradient/?base={yarns.wool}&mix={sloe}:1.2&steps=4&palest=10&yarn=50"
    )


def test_an_end_is_taken_from_a_recipe(client: Client, yarns: TwoYarns) -> None:
    version = yarns.recipe(Gorse=0.4, Kelp=0.1)
    went = client.get("/shades/gradient/", typed(yarns, last_recipe=version.id))
    assert (
        f"last={mix_text(yarns.mix(Gorse=0.4, Kelp=0.1))}" in went.headers["Location"]
    )


def test_the_row_is_drawn_and_told_in_words(client: Client, yarns: TwoYarns) -> None:
    mix = mix_text(yarns.mix(Sloe=1.2))
    shown = read(client.get(f"/shades/gradient/?mix={mix}&steps=4"))
    assert "4 skeins in a row, from Sloe 1.2 % to" in shown.source.replace("\xa0", " ")
    assert shown.text.count("ΔE") == 4
    assert "Dye for the whole row: Sloe" in shown.text


def test_a_row_is_saved_as_recipes_in_one_tap(client: Client, yarns: TwoYarns) -> None:
    mix = mix_text(yarns.mix(Sloe=1.2))
    shown = read(client.get(f"/shades/gradient/?mix={mix}&steps=3"))
    names = ("deed", "base", "mix", "last", "steps", "palest", "yarn")
    sent = {name: shown.value(name) for name in names} | {"called": "Dusk"}
    went = client.post("/shades/gradient/save/", sent)
    assert went.headers["Location"] == "/recipes/?q=Dusk"
    kept = set(Recipe.objects.values_list("name", flat=True))
    assert kept == {f"Dusk {place} of 3" for place in (1, 2, 3)}
    again = client.post("/shades/gradient/save/", sent | {"deed": str(yarns.wool)})
    assert again.status_code == 422


def test_a_row_is_planned_as_swatches_in_one_tap(
    client: Client, yarns: TwoYarns
) -> None:
    """Sent twice, it is planned once."""
    mix = mix_text(yarns.mix(Sloe=1.2))
    shown = read(client.get(f"/shades/gradient/?mix={mix}&steps=3"))
    names = ("deed", "base", "mix", "steps", "palest")
    sent = {name: shown.value(name) for name in names}
    went = client.post("/shades/gradient/swatches/", sent)
    again = client.post("/shades/gradient/swatches/", sent)
    plan = SwatchPlan.objects.get()
    assert went.headers["Location"] == f"/shades/plans/{plan.pk}/"
    assert again.headers["Location"] == went.headers["Location"]
    assert plan.recipe.versions.count() == 3


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"first_1_depth": "much"}, "Depth of dye 1"),
        ({"first_1": "", "first_1_depth": "1"}, "Choose the dye of this depth"),
        ({"steps": "40"}, "Steps must be one of those offered"),
        ({"yarn": "0"}, "Dry yarn of each skein"),
    ],
)
def test_what_cannot_be_is_said_beside_its_field(
    client: Client, yarns: TwoYarns, more: dict[str, str | int], said: str
) -> None:
    shown = read(client.get("/shades/gradient/", typed(yarns, **more)))
    assert shown.status == 422
    assert said in shown.text


def test_a_dye_that_stands_twice_is_refused(client: Client, yarns: TwoYarns) -> None:
    sloe = yarns.dye("Sloe")
    more = typed(yarns, first_2=sloe, first_2_depth="0.1")
    assert "stands there twice" in read(client.get("/shades/gradient/", more)).text


@pytest.mark.usefixtures("ines")
def test_without_a_palette_it_leads_to_the_first_swatches(client: Client) -> None:
    assert "No palette yet" in read(client.get("/shades/gradient/")).text
