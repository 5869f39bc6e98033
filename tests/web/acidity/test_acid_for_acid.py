"""One acid for another, on the page."""

import pytest
from django.test import Client

pytestmark = pytest.mark.usefixtures("ines")


def read(client: Client, **asked: str) -> str:
    page = client.get("/acid-for-acid/", asked)
    return page.content.decode().replace("\u00a0", " ")


@pytest.mark.by_hand
def test_vinegar_for_citric_acid(client: Client) -> None:
    page = read(client)
    assert "For 100 ml of vinegar" in page
    assert '<th scope="row">by pH 4.5</th>' in page
    assert "<strong>4.3 g</strong>" in page  # 29.70 mmol / 1.3255 x 192.12
    assert "5.3 g" in page  # all of it: 83.26 / 3 x 192.12
    assert "Commonly said: 5 g to 30 g of citric acid" in page
    assert "never water to acid" in page


@pytest.mark.by_hand
def test_citric_acid_for_vinegar(client: Client) -> None:
    page = read(client, have="citric", amount="5.332", strength="5", basis="None")
    assert '<th scope="row">all of it</th>' in page
    assert "<strong>100 ml</strong>" in page
    assert "Commonly said: 18 ml to 107 ml of vinegar" in page  # 5.332 / 30, / 5


def test_crystals_are_not_spoken_of(client: Client) -> None:
    page = read(client, have="citric-mono", amount="5 g", strength="5", basis="4.5")
    assert "For 5 g of citric acid, monohydrate" in page
    assert "Commonly said" not in page


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"amount": ""}, "Amount is missing."),
        ({"amount": "0"}, "Amount must be above 0"),
        ({"amount": "a glug"}, "Amount is written as a volume"),
        ({"amount": "5 g"}, "Amount is written as a volume"),
        ({"strength": ""}, "Strength of the vinegar is missing."),
        ({"strength": "300"}, "must be above 0 and at most 200"),
        ({"have": "lemon"}, "Instead of must be one of those offered."),
        ({"basis": "9"}, "What counts must be one of those offered."),
    ],
)
def test_what_cannot_be_is_said_by_the_field(
    client: Client, asked: dict[str, str], sentence: str
) -> None:
    full = {"have": "vinegar", "amount": "100", "strength": "5", "basis": "4.5"}
    page = client.get("/acid-for-acid/", {**full, **asked})
    assert page.status_code == 422
    assert sentence in page.content.decode().replace("\u00a0", " ")
