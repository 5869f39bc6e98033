"""How sour a bath is, on the recipe, the plan and the bath; a spent bath."""

from typing import TYPE_CHECKING

import pytest
from django.test import Client

from shadewright.records.models import Auxiliary, Dye, Recipe, Water
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bench import Tap, tap
from shadewright.workflows.cards import bath_cards
from shadewright.workflows.stamps import stamp_now, today
from tests.paper.pictures import words_on
from tests.web.dyeing import Dyeing, dyeing_things

if TYPE_CHECKING:
    from shadewright.workflows.people import Person

NOTE = "Water only, no fibre: the bath reads higher."


@pytest.fixture
def things(ines: "Person") -> Dyeing:
    """Two milling dyes, a vinegar, a base, a pot."""
    del ines
    return dyeing_things()


def at_recipe(things: Dyeing) -> str:
    """Return the address of the recipe, written once."""
    if not Recipe.objects.exists():
        things.recipe()
    return f"/recipes/{Recipe.objects.get().pk}/"


def read(client: Client, address: str) -> str:
    return client.get(address).content.decode().replace("\u00a0", " ")


def measured(number: str, ph: float) -> None:
    what = Tap(bath=number, act=BathAct.PH, value=ph, unit="pH")
    tap(what, stamp=stamp_now(by=None))


def test_a_recipe_says_its_ph_in_the_usual_water(
    client: Client, things: Dyeing
) -> None:
    page = read(client, at_recipe(things))
    # 2 % of 100 g in 3 l: 2 g of acetic acid, 11.1 mmol/l
    assert "pH <strong>3.4 ± 0.2</strong>, reckoned" in page
    assert NOTE in page
    assert "No water is chosen" in page
    assert "Milling dyes want pH 5 to 7." in page
    Water.objects.create(name="Tap", alkalinity_mg_per_l=250.0)
    page = read(client, at_recipe(things))
    assert "pH <strong>4.6 ± 0.2</strong>" in page
    assert "Tap, alkalinity 250 mg/l." in page


def test_a_water_that_nobody_looked_up_says_so(client: Client, things: Dyeing) -> None:
    water = Water.objects.create(name="Rain butt")
    page = read(client, at_recipe(things))
    assert "Rain butt: its alkalinity is not known" in page
    assert f'href="/waters/{water.pk}/edit/"' in page


def test_a_helper_that_is_no_known_acid_says_so(client: Client, things: Dyeing) -> None:
    Auxiliary.objects.filter(pk=things.acid).update(name="Sour stuff")
    page = read(client, at_recipe(things))
    assert "“Sour stuff” is no acid that this sum knows by its name." in page
    assert "± 0.2" not in page


def test_a_plan_begins_with_the_usual_water(client: Client, things: Dyeing) -> None:
    version = things.recipe()
    water = Water.objects.create(name="Tap", alkalinity_mg_per_l=150.0)
    page = read(client, f"/baths/new/?version={version}&base={things.base}&fibre_g=100")
    assert f'<option value="{water.pk}" selected>Tap, alkalinity 150 mg/l' in page
    assert "pH <strong>4.3 ± 0.2</strong>" in page


def test_a_bath_keeps_its_water_and_tells_what_to_do(
    client: Client, things: Dyeing
) -> None:
    version = things.recipe()
    water = Water.objects.create(name="Tap", alkalinity_mg_per_l=150.0)
    form = {
        "version": version,
        "base": things.base,
        "fibre_g": "100",
        "water": water.pk,
        "dyed_on": f"{today():%Y-%m-%d}",
        "deed": "1f1c7f52-5b4e-4a0e-8a9c-0d1c2b3a4f55",
        "purpose": "",
        "act": "keep",
    }
    place = client.post("/baths/new/", form).headers["Location"]
    page = read(client, place)
    assert "pH <strong>4.3 ± 0.2</strong>" in page
    assert "The bath is at" not in page
    number = place.strip("/").rpartition("/")[2]
    measured(number, 8.2)
    page = read(client, place)
    assert "Measured: <strong>pH 8.2, " in page
    assert "Give it time and temperature first" in page
    assert "Turn the heat down and" in page
    measured(number, 6.0)
    assert "The bath is at" not in read(client, place)


def test_a_spent_bath_is_made_neutral(client: Client, things: Dyeing) -> None:
    number = things.bath(things.recipe())
    page = read(client, f"/baths/{number}/")
    assert f'href="/baths/{number}/pour-away/"' in page
    spent = read(client, f"/baths/{number}/pour-away/")
    assert "At most <strong>2.8 g</strong>" in spent  # 2 g x 84.006 / 60.052
    assert "foams" in spent
    assert "sewer authority" in spent
    assert "A dye holds a metal" not in spent
    Dye.objects.filter(pk=things.slate).update(is_metal_complex=True)
    assert "A dye holds a metal" in read(client, f"/baths/{number}/pour-away/")


def test_a_bath_whose_acid_is_not_known_says_so(client: Client, things: Dyeing) -> None:
    Auxiliary.objects.filter(pk=things.acid).update(name="Sour stuff")
    number = things.bath(things.recipe())
    spent = read(client, f"/baths/{number}/pour-away/")
    assert "“Sour stuff” is no acid" in spent
    assert "At most" not in spent


def test_no_bath_no_page(client: Client, things: Dyeing) -> None:
    del things
    assert client.get("/baths/261125-B9/pour-away/").status_code == 404


def test_the_bench_says_what_to_do_about_a_high_ph(
    client: Client, things: Dyeing
) -> None:
    number = things.bath(things.recipe())
    assert "What to do" not in read(client, f"/bench/{number}/")
    measured(number, 8.2)
    page = read(client, f"/bench/{number}/")
    assert "The bath is at pH 8.2, and milling dyes want pH 5 to 7." in page
    assert "Last: Read pH 8.2, " in page
    assert "Give it time and temperature first" in page
    measured(number, 6.5)
    assert "What to do" not in read(client, f"/bench/{number}/")


def test_the_card_says_how_sour_the_bath_should_be(things: Dyeing) -> None:
    number = things.bath(things.recipe())
    printed = words_on(bath_cards([number]))
    assert "pH 3.4 ± 0.2, water only, no fibre: the bath reads higher." in printed
    assert "Milling dyes want pH 5 to 7." in printed
