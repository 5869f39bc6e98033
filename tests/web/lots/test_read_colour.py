"""The colour that is read of a lot, and what its page says of it."""

from uuid import uuid4

from django.test import Client

from shadewright.records.models import Bath
from shadewright.workflows.shades.swatches import Standing, swatches_now
from tests.web.pages_read import read
from tests.workflows.pots import Ready


def test_a_lot_whose_colour_is_read_shows_it_and_is_offered(
    client: Client, lot: str
) -> None:
    page = read(client.get(f"/lots/{lot}/"))
    address = f"/shades/swatches/of/{lot}/read/"
    assert address in page.links
    assert not swatches_now()
    form = read(client.get(address))
    assert "Read its colour" in form.text
    assert not swatches_now(), "to look is not yet to read"
    data = {"deed": uuid4(), "way": "meter", "texts": "48, −3, 9"}
    answer = client.post(address, data)
    (now,) = swatches_now()
    assert answer.headers["Location"] == f"/shades/swatches/{now.id}/"
    assert now.standing is Standing.OFFERED
    told = read(client.get(f"/lots/{lot}/"))
    assert "L 48.0, a −3.0, b 9.0" in told.text
    assert "Could teach" in told.text
    assert f"Lot {lot}" in read(client.get(f"/shades/swatches/{now.id}/")).text


def test_of_a_swatch_its_colour_is_the_next_step(client: Client, lot: str) -> None:
    address = f"/shades/swatches/of/{lot}/read/"
    first = f'<a class="button first" href="{address}">'
    assert first not in read(client.get(f"/lots/{lot}/")).source
    Bath.objects.filter(number=lot).update(is_swatch=True)
    page = read(client.get(f"/lots/{lot}/")).source
    assert first in page
    assert page.count("button first") == 1
    client.post(address, {"deed": uuid4(), "way": "meter", "texts": "48, −3, 9"})
    assert first not in read(client.get(f"/lots/{lot}/")).source


def test_a_second_reading_is_of_the_same_swatch(client: Client, lot: str) -> None:
    address = f"/shades/swatches/of/{lot}/read/"
    for texts in ("48, −3, 9", "48.2, −3.1, 9"):
        client.post(address, {"deed": uuid4(), "way": "meter", "texts": texts})
    (now,) = swatches_now()
    assert now.reading is not None
    assert now.reading.lab.L == 48.2


def test_a_colour_that_cannot_be_read_makes_no_swatch(
    client: Client, pot: Ready
) -> None:
    address = f"/shades/swatches/of/{pot.number}/read/"
    data = {"deed": uuid4(), "way": "meter", "texts": "muddy"}
    assert client.post(address, data).status_code == 422
    assert not swatches_now()
