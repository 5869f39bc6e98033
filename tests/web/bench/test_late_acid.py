"""Acid that was to go in on the way up, and was not there at the top."""

import pytest
from django.test import Client

from shadewright.records.models.baths import BathAct
from shadewright.records.models.recipes import When
from tests.web.pages_read import read
from tests.workflows.bench import founded
from tests.workflows.pots import ready, tapped

pytestmark = pytest.mark.django_db
LATE = "the bath is at its top"


@pytest.mark.parametrize("when", [When.ON_THE_WAY, When.AFTER_DYE])
def test_acid_that_is_missing_at_the_top_is_given_in_quarters(
    client: Client, when: When
) -> None:
    founded()
    pot = ready(when=when, at_c=60.0 if when is When.ON_THE_WAY else None)
    address = f"/bench/{pot.number}/?step=add-1&view=main"
    tapped(pot.number, BathAct.HEAT_ON, "heat")
    assert LATE not in read(client.get(address)).text
    tapped(pot.number, BathAct.AT_TOP, "top", value=90.0, unit="°C")
    said = read(client.get(address)).text
    assert LATE in said
    assert "Turn the heat down" in said
    tapped(pot.number, BathAct.ADDED, "add-1", value=2.0, unit="g")
    assert LATE not in read(client.get(address)).text
