"""A recipe on every base, and carried to one."""

from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import FoundFor, SwatchPlan
from shadewright.records.models.swatches import PlanKind
from shadewright.workflows.recipes import recipe
from tests.web.pages_read import read
from tests.workflows.shades.two_yarns import TwoYarns


def test_every_base_is_named_with_what_is_known_on_it(
    client: Client, yarns: TwoYarns
) -> None:
    version = yarns.recipe(Sloe=0.6, Peat=0.2)
    shown = read(client.get(f"/shades/carry/{version.id}/"))
    assert "Hollow 4-ply , which it was made for" in shown.text
    assert "Peat was never dyed on it: guessed from the other bases" in shown.text
    assert "not possible yet" in shown.text
    assert "untested" in shown.text
    assert "Carried to Drift silk" in shown.text
    assert f"/shades/carry/{version.id}/?from={yarns.wool}&to={yarns.silk}" in (
        " ".join(shown.links)
    )


def test_carried_it_is_the_next_version_in_one_tap(
    client: Client, yarns: TwoYarns
) -> None:
    version = yarns.recipe(Sloe=0.6)
    address = f"/shades/carry/{version.id}/"
    shown = read(client.get(address, {"to": yarns.silk}))
    sent = {"deed": shown.value("deed"), "from": yarns.wool, "to": yarns.silk}
    went = client.post(address, sent)
    assert went.headers["Location"] == f"/recipes/{version.recipe_id}/versions/2/"
    client.post(address, sent)
    assert len(recipe(version.recipe_id).versions) == 2
    newest = recipe(version.recipe_id).newest
    assert newest.text.why_changed == "carried to Drift silk from Hollow 4-ply"
    assert FoundFor.objects.get().base_name == "Drift silk"
    again = read(client.get(f"/shades/carry/{newest.id}/"))
    assert "Drift silk , which it was made for" in again.text


def test_a_set_of_swatches_gets_no_version_more(
    client: Client, yarns: TwoYarns
) -> None:
    version = yarns.recipe(Sloe=0.6)
    kept = SwatchPlan.objects.create(
        deed=uuid4(),
        kind=PlanKind.LADDER,
        recipe_id=version.recipe_id,
        base_id=yarns.wool,
        yarn_g=10.0,
    )
    sent = {"deed": uuid4(), "from": yarns.wool, "to": yarns.silk}
    went = client.post(f"/shades/carry/{version.id}/", sent)
    assert went.headers["Location"] == f"/shades/plans/{kept.pk}/"
    assert len(recipe(version.recipe_id).versions) == 1


def test_the_recipe_leads_there(client: Client, yarns: TwoYarns) -> None:
    version = yarns.recipe(Sloe=0.6)
    shown = read(client.get(f"/recipes/{version.recipe_id}/"))
    assert f"/shades/carry/{version.id}/" in shown.links
    assert f"/shades/mix/?mix={yarns.dye('Sloe')}:0.6" in shown.links


@pytest.mark.parametrize(
    ("query", "status"), [("to=999", 404), ("to=x", 404), ("from=999", 404)]
)
def test_a_bad_address_is_one_sentence(
    client: Client, yarns: TwoYarns, query: str, status: int
) -> None:
    version = yarns.recipe(Sloe=0.6)
    assert client.get(f"/shades/carry/{version.id}/?{query}").status_code == status
    assert client.get("/shades/carry/999/").status_code == 404


def test_it_is_not_carried_to_where_nothing_is_known(
    client: Client, yarns: TwoYarns
) -> None:
    version = yarns.recipe(Sloe=0.6)
    address = f"/shades/carry/{version.id}/"
    deed = read(client.get(address)).value("deed")
    refused = client.post(address, {"deed": deed, "to": yarns.nylon})
    assert refused.status_code == 422
    assert "A swatch on Moss nylon is missing" in read(refused).text
    assert client.post(address, {"deed": deed}).status_code == 422


@pytest.mark.usefixtures("ines")
def test_without_a_palette_it_leads_to_the_first_swatches(client: Client) -> None:
    assert "No palette yet" in read(client.get("/shades/carry/1/")).text
