"""A day offers the papers that would hold something, and no others."""

import pytest
from django.test import Client

from shadewright.records.models.baths import BathAct
from shadewright.workflows.stamps import today
from tests.web.pages_read import read
from tests.workflows.days.rooms import dyehouse
from tests.workflows.pots import tapped


def papers(client: Client) -> set[str]:
    """Return the papers that the page of today leads to."""
    links = read(client.get(f"/days/{today()}/")).links
    return {each.rpartition("/")[2] for each in links if each.endswith(".pdf")}


@pytest.mark.django_db
def test_an_empty_day_prints_nothing_and_a_begun_one_soaks_nothing(
    client: Client,
) -> None:
    house = dyehouse()
    assert papers(client) == set()
    number = house.bath(today())
    assert {"sheet.pdf", "soak.pdf", "pull.pdf", "cards.pdf"} <= papers(client)
    tapped(number, BathAct.STARTED, "fill")
    assert papers(client) & {"sheet.pdf", "soak.pdf"} == {"sheet.pdf"}
