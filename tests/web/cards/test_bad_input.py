"""Bad input on a card: one sentence by its line, all kept, nothing written."""

import pytest
from django.test import Client

from shadewright.records.models import BathLine
from tests.web.cards.sheets import opened
from tests.web.pages_read import read
from tests.web.sample import HOSTILE
from tests.workflows.pots import Ready

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("dose-1-amount", "some", "Line 2, Slate: the amount is written as"),
        ("dose-1-amount", "-5", "Line 2, Slate: the amount must be above 0"),
        ("dose-1-amount", "0", "Line 2, Slate: the amount must be above 0"),
        ("dose-1-amount", "1e9", "Line 2, Slate: the amount is written as"),
        ("dose-1-amount", "9" * 30, "Line 2, Slate: the amount must be"),
        ("dose-1-amount", "60 °C", "Line 2, Slate: the amount is written as"),
        ("dose-1-amount", HOSTILE, "Line 2, Slate: the amount is written as"),
        ("dose-1-bottle", "S5B", "Line 2, Slate: the other bottle: A bottle’s code"),
        ("dose-1-bottle", "K7RR", "There is no bottle “K7RR”."),
        ("dose-1-time", "25:00", "the time is written as hours and minutes"),
        ("dose-1-time", "9:75", "the time is written as hours and minutes"),
        ("dose-1-time", "noon", "such as 14:05; got “noon”."),
        ("dose-1-time", "23:59", "not later than now, 18:30 on 25 November"),
        ("fill-amount", "-1", "Line 1, Fill the pot with water: the amount must be"),
        ("add-1-amount", "x", "Line 5, Citric acid: the amount is written as"),
        ("add-1-ph", "15", "Line 5, Citric acid: the pH must be"),
        ("add-1-ph", "4 g", "such as 4.5"),
        ("top-temperature", "200", "Line 8, At temperature: the temperature must be"),
        ("look-looked", "x" * 201, "what it looked like may have up to 200 characters"),
        ("notes", "x" * 281, "Notes may have up to 280 characters"),
    ],
)
def test_one_sentence_by_its_line(
    client: Client, pot: Ready, field: str, typed: str, sentence: str
) -> None:
    sent = {field.replace("-", "_"): typed, "dose_2_amount": "31", "hold_ph": "4,2"}
    page = read(opened(client, pot.number).send(**sent))
    assert page.status == 422
    assert sentence in page.fault(field)
    assert page.value(field) == typed
    assert page.value("dose-2-amount") == "31"
    assert page.value("hold-ph") == "4,2"
    assert HOSTILE not in page.source
    assert BathLine.objects.count() == 0


def test_each_faulty_line_gets_its_own(client: Client, pot: Ready) -> None:
    page = read(
        opened(client, pot.number).send(dose_1_amount="x", hold_time="99", add_1_ph="x")
    )
    for field in ("dose-1-amount", "hold-time", "add-1-ph"):
        assert page.fault(field)
    assert "Not written down yet" in page.text


def test_left_out_and_yet_in(client: Client, pot: Ready) -> None:
    sheet = opened(client, pot.number)
    page = read(sheet.send(dose_1_missed="on", dose_1_amount="60"))
    assert "Line 2, Slate: it is ticked as left out, yet" in page.fault("dose-1-missed")
    assert 'id="id_dose-1-missed" checked' in page.source


def test_an_empty_card_is_not_written(client: Client, pot: Ready) -> None:
    sheet = opened(client, pot.number)
    ticks = {name: "" for name in sheet.shown if name.endswith("-planned")}
    page = read(sheet.send(**ticks))
    assert page.status == 422
    assert "Nothing on this card is ticked." in page.text


@pytest.mark.parametrize("number", ["261125-B99", "%3Cb%3E"])
def test_no_such_bath(client: Client, pot: Ready, number: str) -> None:
    del pot
    assert client.get(f"/baths/{number}/card/").status_code == 404
    assert client.post(f"/baths/{number}/card/", {"go": "all"}).status_code == 404
