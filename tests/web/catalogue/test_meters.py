"""Meters for colour: asked once for light and eye; a wrong one is put right."""

import pytest
from django.test import Client

from shadewright.records.models import Base, Meter
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.readings import ReadWords, keep_reading
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.stamps import stamp_now
from tests.workflows.shades.swatch_rows import kept_swatch

pytestmark = pytest.mark.usefixtures("ines")

WREN = {
    "name": "Wren",
    "light": "D50",
    "observer": "2",
    "geometry": "45/0",
    "spread": "0,25",
    "spot": "",
    "notes": "springy",
}


def said(client: Client, place: str, sent: dict[str, str]) -> str:
    """Return the page that follows a form."""
    page = client.post(place, sent, follow=True).content.decode()
    return page.replace("\u00a0", " ")


def test_it_is_added_shown_and_retired(client: Client) -> None:
    page = said(client, "/meters/new/", WREN)
    for words in ("D50", "2°", "45/0", "0.25 ΔE", "springy"):
        assert words in page
    assert "0.25 ΔE" in client.get("/meters/").content.decode().replace("\u00a0", " ")
    said(client, f"/meters/{Meter.objects.get().pk}/retire/", {})
    assert "Wren" not in client.get("/meters/?q=").content.decode().split("<main")[1]


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("spread", "0", "Spread of one reading must be above 0"),
        ("spread", "6", "Spread of one reading must be above 0"),
        ("spread", "0.2 %", "Spread of one reading is written as"),
        ("spot", "50 1 2", "at least 5 readings; got 1."),
        ("light", "A", "Light must be one of those offered."),
    ],
)
def test_what_cannot_be_is_refused(
    client: Client, field: str, typed: str, sentence: str
) -> None:
    assert sentence in said(client, "/meters/new/", {**WREN, field: typed})
    assert not Meter.objects.exists()


def test_its_spread_comes_from_one_spot_read_again(client: Client) -> None:
    spot = "50.2 10 20\n49,8 10 20\n50 10.2 20\n50 9.8 20\n50 10 20"
    page = said(client, "/meters/new/", {**WREN, "spread": "", "spot": spot})
    assert Meter.objects.get().spread == 0.2
    assert "0.2 ΔE" in page
    assert "one spot" not in page


def test_a_light_that_was_wrong_is_put_right(client: Client) -> None:
    said(client, "/meters/new/", {**WREN, "light": "D65", "observer": "10"})
    meter = Meter.objects.get()
    row = kept_swatch(Base.objects.create(name="Wool"), {"Gorse": 1.0}, (70, 5, 60))
    words = ReadWords(read_by=ReadBy.METER, texts=("71 5 61",), meter_id=meter.pk)
    keep_reading(swatch_id=row.pk, words=words, stamp=stamp_now(by=None))
    page = said(client, f"/meters/{meter.pk}/edit/", WREN)
    assert "1 colour was carried anew" in page
    found = swatch_now(row.pk).reading
    assert found is not None
    assert found.lab != (71.0, 5.0, 61.0)
    assert found.sd is not None
    assert found.sd > 4.0
