"""One jar: its ledger, its bottles, weighed anew, handed in, undone."""

from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Dye
from shadewright.workflows.jars import ShelfJar, jar, receive_jar
from shadewright.workflows.people import Person
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.stocks import make_stock
from tests.web.sample import HOSTILE


@pytest.fixture
def shelf_jar(gorse: Dye) -> ShelfJar:
    """A jar of 100 g."""
    stamp = stamp_now(by=None)
    return receive_jar(dye_id=gorse.pk, powder_g=100, stamp=stamp, lot="A7")


def text(client: Client, found: ShelfJar) -> str:
    page = client.get(f"/jars/{found.id}/").content.decode()
    return page.replace("\u00a0", " ")


def test_it_tells_what_is_left_and_leads_to_a_stock(
    client: Client, shelf_jar: ShelfJar
) -> None:
    page = text(client, shelf_jar)
    assert "Gorse, 100 g left." in page
    assert "A7" in page
    assert "none yet" in page
    assert f"/stocks/new/?dye={shelf_jar.dye_id}&amp;jar={shelf_jar.id}" in page
    assert "Dry powder when the jar is open" in page


def test_a_bottle_made_from_it_stands_in_its_ledger(
    client: Client, shelf_jar: ShelfJar, ines: Person
) -> None:
    bottle = make_stock(
        dye_id=shelf_jar.dye_id,
        jar_id=shelf_jar.id,
        wanted_percent=1.0,
        powder_g=5.2,
        final_ml=500.0,
        stamp=stamp_now(by=ines.id),
    )
    page = text(client, shelf_jar)
    assert f'href="/bottles/{bottle.code}/"' in page
    assert "Weighed out" in page
    assert "−5.2 g" in page
    assert "94.8 g" in page
    assert "Ines" in page


def test_it_is_weighed_anew(client: Client, shelf_jar: ShelfJar) -> None:
    data = {"deed": uuid4(), "reading_g": "88,5", "note": "spilt some"}
    address = f"/jars/{shelf_jar.id}/weigh/"
    client.post(address, data)
    page = client.post(address, data, follow=True).content.decode()
    page = page.replace("\u00a0", " ")
    assert "holds 88.5 g" in page
    assert page.count("spilt some") == 1
    assert "−11.5 g" in page
    client.post(f"/undo/{data['deed']}/")
    assert jar(shelf_jar.id).left_g == 100
    assert "undone" in text(client, shelf_jar)


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("", "Powder left is missing."),
        ("-1", "Powder left must be from 0 g"),
        ("some", "Powder left is written as a weight"),
        ("5 ml", "Powder left is written as a weight"),
        ("9" * 12, "Powder left must be from 0 g"),
    ],
)
def test_a_weight_that_cannot_be_stays_in_its_field(
    client: Client, shelf_jar: ShelfJar, typed: str, sentence: str
) -> None:
    data = {"deed": uuid4(), "reading_g": typed, "note": HOSTILE}
    answer = client.post(f"/jars/{shelf_jar.id}/weigh/", data)
    page = answer.content.decode().replace("\u00a0", " ")
    assert answer.status_code == 422
    assert sentence in page
    assert f'value="{typed}"' in page or not typed
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert" in page
    assert jar(shelf_jar.id).left_g == 100


def test_an_empty_jar_may_be_weighed_as_nothing(
    client: Client, shelf_jar: ShelfJar
) -> None:
    data = {"deed": uuid4(), "reading_g": "0"}
    client.post(f"/jars/{shelf_jar.id}/weigh/", data)
    assert jar(shelf_jar.id).left_g == 0


def test_it_leaves_the_studio_once_and_can_come_back(
    client: Client, shelf_jar: ShelfJar
) -> None:
    data = {"deed": uuid4()}
    address = f"/jars/{shelf_jar.id}/hand-in/"
    client.post(address, data)
    page = client.post(address, data, follow=True).content.decode()
    assert "has been handed in or thrown away" in page
    assert "Weigh it anew" not in page
    assert "Make a stock" not in page
    client.post(f"/undo/{data['deed']}/")
    assert jar(shelf_jar.id).is_there
    assert jar(shelf_jar.id).left_g == 100


def test_what_is_gone_is_not_weighed(client: Client, shelf_jar: ShelfJar) -> None:
    client.post(f"/jars/{shelf_jar.id}/hand-in/", {"deed": "not a key"})
    data = {"deed": uuid4(), "reading_g": "5"}
    answer = client.post(f"/jars/{shelf_jar.id}/weigh/", data)
    assert answer.status_code == 422
    assert jar(shelf_jar.id).left_g == 0


def test_a_metal_dye_says_where_its_powder_goes(
    client: Client, shelf_jar: ShelfJar
) -> None:
    Dye.objects.update(is_metal_complex=True)
    assert "never rinsed away" in " ".join(text(client, shelf_jar).split())


@pytest.mark.parametrize("number", ["999", "9" * 40])
@pytest.mark.usefixtures("ines")
def test_a_jar_that_is_not_there_is_said_plainly(client: Client, number: str) -> None:
    answer = client.get(f"/jars/{number}/")
    assert answer.status_code == 404
    assert "There is no jar" in answer.content.decode()
