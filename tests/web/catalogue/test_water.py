"""Waters: which one baths are filled with."""

import pytest
from django.test import Client

from shadewright.records.models import Water
from shadewright.workflows.waters import usual_water

pytestmark = pytest.mark.usefixtures("ines")
KEY = "Fill baths with it"


def words(client: Client, water: Water) -> str:
    return client.get(f"/waters/{water.pk}/").content.decode()


def test_the_only_water_is_the_usual_one(client: Client) -> None:
    assert usual_water() is None
    tap = Water.objects.create(name="Tap", alkalinity_mg_per_l=120.0)
    assert KEY not in words(client, tap)
    found = usual_water()
    assert found is not None
    assert found.words.replace("\u00a0", " ") == "Tap, alkalinity 120 mg/l"


def test_of_two_waters_one_is_chosen(client: Client) -> None:
    tap, rain = (Water.objects.create(name=name) for name in ("Tap", "Rain butt"))
    assert usual_water() is None
    page = client.post(f"/waters/{rain.pk}/usual/", follow=True).content.decode()
    assert "Baths are filled with Rain butt" in page
    assert KEY in words(client, tap)
    assert KEY not in words(client, rain)


def test_a_retired_water_is_usual_no_more(client: Client) -> None:
    tap = Water.objects.create(name="Tap")
    Water.objects.create(name="Rain butt")
    client.post(f"/waters/{tap.pk}/usual/")
    client.post(f"/waters/{tap.pk}/retire/")
    found = usual_water()
    assert found is not None
    assert found.name == "Rain butt"
    assert KEY not in words(client, tap)


def test_a_water_that_is_not_there(client: Client) -> None:
    assert client.post("/waters/77/usual/").status_code == 404
