"""The colour of an earlier lot is looked for from its page."""

import pytest
from django.test import Client

from shadewright.records.models.lots import ColourEvidence
from shadewright.workflows.lots import note_colour
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import read
from tests.workflows.dyed import dyed, finished
from tests.workflows.shades.studios import Fitted


def test_lot_leads_to_recipes_for_its_colour(client: Client, studio: Fitted) -> None:
    """Once its colour is known, and on its own yarn."""
    number = finished(dyed(studio.pot))
    address = f"/shades/find/?lot={number}"
    assert address not in read(client.get(f"/lots/{number}/")).links
    note_colour(
        number=number,
        colour="50, 2, -8",
        evidence=ColourEvidence.METER,
        stamp=stamp_now(by=None),
    )
    assert address in read(client.get(f"/lots/{number}/")).links
    shown = read(client.get(address))
    assert f"Low Tide {number}, 100 g Fell DK" in shown.text
    assert "read by a meter" in shown.text


@pytest.mark.usefixtures("studio")
def test_lot_without_a_colour_is_one_sentence(client: Client) -> None:
    """An old or mangled address says what is missing."""
    answer = client.get("/shades/find/?lot=261103-B9")
    assert answer.status_code == 422
    assert "no lot" in read(answer).text
