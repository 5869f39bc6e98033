"""The list of wanted colours."""

import pytest
from django.test import Client

from shadewright.records.models import WantedColour
from shadewright.workflows.shades.wanted import keep_wanted, wanted_of_text
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import read

pytestmark = pytest.mark.usefixtures("ines")


def test_empty_list_leads_to_a_search(client: Client) -> None:
    """One obvious step."""
    shown = read(client.get("/shades/wanted/"))
    assert "No colour is kept yet" in shown.text
    assert "/shades/find/" in shown.links


def test_each_colour_has_its_way_to_a_recipe(client: Client) -> None:
    """It stands with how it was come by and how far that may be off."""
    kept = keep_wanted(
        wanted_of_text("#556f4a"), name="Wet Fern", stamp=stamp_now(by=None)
    )
    shown = read(client.get("/shades/wanted/"))
    assert "Wet Fern" in shown.text
    assert "picked on a screen" in shown.text
    assert f"/shades/find/?wanted={kept.key}" in shown.links
    assert "No recipe yet." in shown.text


def test_colour_is_retired_and_comes_back(client: Client) -> None:
    """Nothing is deleted."""
    kept = keep_wanted(
        wanted_of_text("#556f4a"), name="Wet Fern", stamp=stamp_now(by=None)
    )
    client.post(f"/shades/wanted/{kept.key}/retire/")
    shown = read(client.get("/shades/wanted/"))
    assert "No colour is kept yet" in shown.text
    assert "Retired (1)" in shown.text
    retired = read(client.get("/shades/wanted/retired/"))
    assert "Wet Fern" in retired.text
    client.post(f"/shades/wanted/{kept.key}/back/")
    assert not WantedColour.objects.get().is_retired
