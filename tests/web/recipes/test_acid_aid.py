"""An acid to begin with, on the form of a recipe."""

from typing import TYPE_CHECKING

import pytest
from django.test import Client

from shadewright.records.models import Auxiliary, Dye
from shadewright.records.models.catalogue import AuxiliaryKind, DyeClass
from tests.web.dyeing import Dyeing, dyeing_things

if TYPE_CHECKING:
    from shadewright.workflows.people import Person


@pytest.fixture
def things(ines: "Person") -> Dyeing:
    """Two milling dyes, a vinegar, a base, a pot."""
    del ines
    return dyeing_things()


def asked(client: Client, things: Dyeing, **typed: str) -> str:
    form = {"dye_1": str(things.slate), "depth_1": "2", "act": "acid", **typed}
    page = client.post("/recipes/new/", form)
    assert page.status_code == 200
    return page.content.decode().replace("\u00a0", " ")


def test_the_usual_acid_stands_in_a_row_with_its_source(
    client: Client, things: Dyeing
) -> None:
    salt = Auxiliary.objects.create(
        name="Ammonium sulphate", kind=AuxiliaryKind.ACID_SALT
    )
    page = asked(client, things)
    assert "4 % of Ammonium sulphate now stands in row 1. Source: " in page
    assert "Lewis 1992 (from memory)" in page
    assert f'<option value="{salt.pk}" selected>Ammonium sulphate' in page
    assert 'name="amount_1" value="4"' in page


def test_a_row_that_has_the_acid_is_filled_again(
    client: Client, things: Dyeing
) -> None:
    Dye.objects.update(dye_class=DyeClass.HALF_MILLING)
    page = asked(
        client,
        things,
        depth_1="0.3",
        helper_2=str(things.acid),
        amount_2="9",
    )
    assert "1 % of Vinegar now stands in row 2" in page
    assert 'name="amount_2" value="1"' in page


def test_crystals_stand_for_anhydrous_citric_acid(
    client: Client, things: Dyeing
) -> None:
    Dye.objects.update(dye_class=DyeClass.LEVELLING)
    Auxiliary.objects.create(name="Citric acid monohydrate", kind=AuxiliaryKind.ACID)
    page = asked(client, things, depth_1="1")
    # 3 % of anhydrous acid x 210.14 / 192.12
    assert "3.28 % of Citric acid monohydrate" in page


def test_an_acid_that_is_not_there_is_named(client: Client, things: Dyeing) -> None:
    page = asked(client, things)
    assert "The usual is 4 % of ammonium sulphate" in page
    assert "none of your acids is called so" in page


def test_dyes_of_two_classes_get_none(client: Client, things: Dyeing) -> None:
    Dye.objects.filter(pk=things.gorse).update(dye_class=DyeClass.LEVELLING)
    page = asked(client, things, dye_2=str(things.gorse), depth_2="1")
    assert "levelling and milling: each wants its own acid" in page


@pytest.mark.parametrize(
    "typed", [{"dye_1": ""}, {"depth_1": "deep"}, {"dye_1": "9" * 12}, {"depth_1": ""}]
)
def test_nothing_to_go_by(
    client: Client, things: Dyeing, typed: dict[str, str]
) -> None:
    assert "first." in asked(client, things, **typed)


def test_no_list_offers_what_burns(client: Client, things: Dyeing) -> None:
    """Sulphuric, glacial acetic and strong formic acid are never put in."""
    for name in ("Sulphuric acid", "Formic acid", "Glacial acetic acid"):
        Auxiliary.objects.create(name=name, kind=AuxiliaryKind.ACID, is_liquid=True)
    for each in DyeClass:
        Dye.objects.update(dye_class=each)
        page = asked(client, things)
        for name in ("Sulphuric", "Formic", "Glacial"):
            assert f"% of {name}" not in page
