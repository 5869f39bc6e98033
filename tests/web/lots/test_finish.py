"""The last step at the pot: one key where all went as planned."""

from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Bath, Lot, Studio
from shadewright.workflows.lot_pages import lot_now
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE
from tests.workflows.pots import Ready

AS_OFFERED = {"grade": "first", "skeins": "", "grams": "", "place": "", "note": ""}


def send(client: Client, number: str, **typed: object) -> Answer:
    data = AS_OFFERED | {"deed": uuid4()} | typed
    return read(client.post(f"/baths/{number}/finish/", data))


def test_it_asks_what_came_out_and_guesses_nothing(client: Client, pot: Ready) -> None:
    page = read(client.get(f"/baths/{pot.number}/finish/"))
    assert f"Finish {pot.number}" in page.text
    assert "Low Tide, 100 g of Fell DK." in page.text
    assert not page.value("grams")
    assert not page.value("skeins")
    assert "Empty while it is not weighed yet." in page.text
    assert 'value="first" ' in page.source
    assert "Minutes of your hands" not in page.text
    assert "all the same" not in page.text


def test_one_key_writes_the_lot(client: Client, pot: Ready) -> None:
    data = AS_OFFERED | {"deed": uuid4()}
    answer = client.post(f"/baths/{pot.number}/finish/", data, follow=True)
    page = read(answer)
    assert answer.redirect_chain == [(f"/lots/{pot.number}/", 302)]
    assert f"Lot {pot.number} is written" in page.text
    assert "not weighed yet" in page.text
    client.post(f"/baths/{pot.number}/finish/", data)
    assert Lot.objects.count() == 1


def test_the_note_after_it_takes_it_back(client: Client, pot: Ready) -> None:
    deed = uuid4()
    send(client, pot.number, deed=deed)
    client.post(f"/undo/{deed}/")
    assert lot_now(pot.number).is_void
    page = read(client.get(f"/lots/{pot.number}/"))
    assert "was taken back the day it was written" in page.text
    assert f"/baths/{pot.number}/finish/" in page.links


def test_everything_may_be_said_at_once(client: Client, pot: Ready) -> None:
    send(client, pot.number, grade="second", skeins="2", grams="3.5 oz", place="Rack 4")
    held = lot_now(pot.number).held
    assert (held.skeins, held.place) == (2, "Rack 4")
    assert held.grams == pytest.approx(99.22, abs=0.01)


def test_a_swatch_is_graded_as_one_and_skeins_as_planned(
    client: Client, pot: Ready
) -> None:
    Bath.objects.update(is_swatch=True, skeins=3)
    page = read(client.get(f"/baths/{pot.number}/finish/"))
    assert page.value("skeins") == "3"
    assert 'value="swatch" ' in page.source.partition("checked")[0][-80:] + "checked"


def test_a_bath_not_begun_asks_once(client: Client, pot: Ready) -> None:
    number = pot.another()
    page = read(client.get(f"/baths/{number}/finish/"))
    assert "Did yarn come out of it?" in page.text
    refused = send(client, number, place="Attic")
    assert refused.status == 422
    assert "was not begun" in refused.fault("is_sure")
    assert refused.value("place") == "Attic"
    assert send(client, number, is_sure="on").status == 302


def test_minutes_are_asked_for_where_an_hour_has_a_rate(
    client: Client, pot: Ready
) -> None:
    Studio.objects.update(rate_per_hour=18)
    assert (
        "Minutes of your hands" in read(client.get(f"/baths/{pot.number}/finish/")).text
    )
    send(client, pot.number, minutes="25")
    assert lot_now(pot.number).held.minutes == 25


def test_a_bath_that_has_its_lot_leads_to_it(client: Client, lot: str) -> None:
    answer = client.get(f"/baths/{lot}/finish/")
    assert answer.headers["Location"] == f"/lots/{lot}/"
    refused = send(client, lot, note="again")
    assert refused.status == 422
    assert "one bath gives one lot" in refused.text
    assert refused.value("note") == "again"


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("grade", "", "Grade is missing."),
        ("grade", "best", "Grade must be one of those offered."),
        ("grams", "0", "Dry weight must be above 0 and"),
        ("grams", "heavy", "Dry weight is written as a weight"),
        ("grams", "5 ml", "Dry weight is written as a weight"),
        ("skeins", "1.5", "Skeins is written as a whole number"),
        ("skeins", "-1", "Skeins must be from 0 skeins"),
        ("skeins", "99999", "to 10000 skeins"),
        ("place", "x" * 81, "Place may have up to 80 characters; this has 81."),
        ("note", "x" * 301, "Note may have up to 300 characters; this has 301."),
    ],
)
def test_bad_input_is_said_by_its_field_and_kept(
    client: Client, pot: Ready, field: str, typed: str, sentence: str
) -> None:
    page = send(client, pot.number, **({"place": "Rack"} | {field: typed}))
    assert page.status == 422
    assert sentence in page.fault(field).replace("\u00a0", " ")
    if field not in {"grade", "place"}:
        assert page.value(field) == typed
        assert page.value("place") == "Rack"
    assert not Lot.objects.exists()


def test_hostile_words_stay_words(client: Client, pot: Ready) -> None:
    send(client, pot.number, place=HOSTILE, note=HOSTILE)
    page = read(client.get(f"/lots/{pot.number}/"))
    assert HOSTILE not in page.source
    assert HOSTILE in page.text


def test_a_deed_that_is_none_is_refused(client: Client, pot: Ready) -> None:
    assert send(client, pot.number, deed="x").status == 422
    assert not Lot.objects.exists()


def test_a_bath_that_is_not_there(client: Client, pot: Ready) -> None:
    del pot
    page = read(client.get("/baths/000000-B1/finish/"))
    assert page.status == 404
    assert "There is no bath “000000-B1”." in page.text
