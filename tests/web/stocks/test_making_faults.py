"""What cannot be while a stock is made: one sentence by the field, nothing lost."""

import pytest
from django.test import Client

from shadewright.workflows.makings import Making, making
from shadewright.workflows.shelf import shelf, shelf_bottle
from tests.web.benches import small_bench
from tests.web.pages_read import read
from tests.web.sample import HOSTILE
from tests.web.stocks.stepping import at, made_up, send, slate_begun, weighed

pytestmark = pytest.mark.django_db


@pytest.fixture
def begun() -> Making:
    return slate_begun(small_bench())


def test_no_step_is_jumped_whose_number_is_wanted(
    client: Client, begun: Making
) -> None:
    page = send(client, begun, "lay_out", go="label")
    assert "Step 1 of 8" in page.text
    page = send(client, begun, "cool")
    assert page.status == 422
    assert "The weight of the powder is missing." in page.text


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("", "What the scale really shows is missing."),
        ("-5", "What the scale really shows must be"),
        ("0", "What the scale really shows must be above 0"),
        ("five", "What the scale really shows is written as a weight"),
        ("5 ml", "What the scale really shows is written as a weight"),
        ("1 tsp", "never by the spoon"),
        ("99999999", "What the scale really shows must be"),
        ("100.1", "at most the 100 g that jar J-1 holds"),
        (HOSTILE, "What the scale really shows is written as"),
    ],
)
def test_a_weight_that_cannot_be(
    client: Client, begun: Making, typed: str, sentence: str
) -> None:
    page = weighed(client, begun, typed)
    assert page.status == 422
    assert sentence in page.fault("powder_g")
    assert page.value("powder_g") == typed
    assert HOSTILE not in page.source
    assert making(begun.id).powder_g is None


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"final_ml": ""}, "final_ml", "What it really came to is missing."),
        ({"final_ml": "0"}, "final_ml", "What it really came to must be above 0"),
        ({"final_ml": "-1"}, "final_ml", "What it really came to must be"),
        ({"final_ml": "full"}, "final_ml", "is written as a volume"),
        ({"final_ml": "2"}, "final_ml", "at most 50 %"),
        ({"is_cold": ""}, "is_cold", "2.7 % too strong once it is cool"),
        ({"water": "x" * 81}, "water", "up to 80 characters"),
    ],
)
def test_a_volume_that_cannot_be(
    client: Client,
    begun: Making,
    typed: dict[str, str],
    field: str,
    sentence: str,
) -> None:
    weighed(client, begun)
    send(client, begun, "paste", go="cool")
    sent = {"final_ml": "520", "is_cold": "on", "water": HOSTILE, **typed}
    page = send(client, begun, "make_up", **{k: v for k, v in sent.items() if v})
    assert page.status == 422
    assert sentence in page.fault(field)
    assert page.value("final_ml") == sent["final_ml"]
    assert page.value("water") == sent["water"]
    assert HOSTILE not in page.source
    assert making(begun.id).final_ml is None


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("discard_by", "2020-01-01", "The discard-by day must be today or later"),
        ("discard_by", "soon", "Discard by cannot be read as it was typed."),
        ("place", "x" * 41, "up to 40 characters"),
        ("notes", "x" * 2001, "up to 2000 characters"),
    ],
)
def test_a_label_that_cannot_be(
    client: Client, begun: Making, field: str, typed: str, sentence: str
) -> None:
    made_up(client, begun)
    page = send(client, begun, "label", **{"place": "door", field: typed})
    assert page.status == 422
    assert sentence in page.fault(field)
    assert typed in page.source
    assert shelf() == ()


@pytest.mark.parametrize("step", ["", "fly", HOSTILE])
def test_an_unknown_step_changes_nothing(
    client: Client, begun: Making, step: str
) -> None:
    page = send(client, begun, step)
    assert "Step 1 of 8" in page.text


@pytest.mark.parametrize("number", ["999", "99999999999999999999999"])
def test_a_making_that_is_not_there(client: Client, begun: Making, number: str) -> None:
    assert client.get(f"/stocks/making/{number}/").status_code == 404
    assert client.get(f"/stocks/making/{begun.id + 1}/give-up/").status_code == 404


def test_the_bottle_remembers_the_rest(client: Client, begun: Making) -> None:
    made_up(client, begun)
    send(client, begun, "label", place=HOSTILE[:40], notes=HOSTILE)
    (bottle,) = shelf()
    assert shelf_bottle(bottle.code).place == HOSTILE[:40]
    assert HOSTILE not in read(client.get(at(begun))).source
