"""One lot: what it is, how it looks, what it cost, its ledger."""

import io
from re import fullmatch
from uuid import uuid4

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from shadewright.records.models import Base, LotLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.lot_pages import lot_now
from tests.exchange.test_photo import photo
from tests.web.pages_read import Answer, read
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, tapped

AS_IT_IS = {
    "grade": "first",
    "skeins": "1",
    "grams": "98.5",
    "place": "Shelf C2",
    "note": "",
}


def send(client: Client, number: str, act: str, **typed: object) -> Answer:
    data = {"deed": uuid4()} | typed
    return read(client.post(f"/lots/{number}/{act}/", data, follow=True))


def shown(client: Client, number: str) -> Answer:
    return read(client.get(f"/lots/{number}/"))


def test_it_says_what_it_is_and_leads_on(client: Client, lot: str) -> None:
    page = shown(client, lot)
    for words in ("98.5 g", "Shelf C2", "Low Tide, version 1", "Fell DK", "First"):
        assert words in page.text
    assert {
        f"/lots/{lot}/trace/",
        f"/lots/compare/?a={lot}",
        f"/baths/{lot}/",
    } <= set(page.links)
    assert "Nothing, as far as it was ticked" in page.text


def test_what_is_not_written_down_is_said(client: Client, lot: str) -> None:
    page = shown(client, lot)
    assert "Mill lot not written down" in page.text
    assert "Colour not noted" in page.text
    assert "Not known. Slate: jar not known of bottle" in page.text


def test_its_cost_is_one_line_with_what_is_missing(client: Client, lot: str) -> None:
    Base.objects.update(price_per_kg=40)
    assert "4.00, without Slate: jar not known" in shown(client, lot).text


def test_where_the_bath_went_differently(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.PROBLEM, "hold")
    page = shown(client, finished(pot.number))
    assert "Problem: not said which." in page.text


def test_it_is_written_anew_and_taken_back(client: Client, lot: str) -> None:
    deed = uuid4()
    typed = AS_IT_IS | {"grade": "second", "note": "A pale tie", "deed": deed}
    page = send(client, lot, "change", **typed)
    assert f"Lot {lot} is written anew" in page.text
    assert "Graded: Second" in page.text
    assert page.text.count("A pale tie") >= 2
    client.post(f"/undo/{deed}/")
    page = shown(client, lot)
    assert lot_now(lot).held.grade_words == "First"
    assert "Undone: Graded: Second" in page.text


def test_nothing_different_writes_nothing(client: Client, lot: str) -> None:
    before = LotLine.objects.count()
    page = send(client, lot, "change", **AS_IT_IS)
    assert "Nothing was different, so nothing was written" in page.text
    assert LotLine.objects.count() == before


def test_bad_input_keeps_what_was_typed(client: Client, lot: str) -> None:
    typed = AS_IT_IS | {"grams": "lots", "place": "Attic"}
    page = send(client, lot, "change", **typed)
    assert page.status == 422
    assert "Dry weight is written as a weight" in page.fault("grams")
    assert page.value("grams") == "lots"
    assert page.value("place") == "Attic"


@pytest.mark.parametrize(
    ("colour", "evidence", "said"),
    [
        ("#a0522d", "hex", "#a0522d, picked on a screen"),
        ("45, 25.5, −3", "meter", "L 45, a 25.5, b −3, read by a meter"),
    ],
)
def test_a_colour_stands_in_the_booth_with_its_evidence(
    client: Client, lot: str, colour: str, evidence: str, said: str
) -> None:
    page = send(client, lot, "colour", colour=colour, evidence=evidence)
    assert said in page.text
    booth = page.source.partition('class="booth')[2]
    assert '<rect width="10" height="10" fill="#' in booth
    assert "More vivid" not in page.text


def test_a_colour_beyond_the_screen_is_marked(client: Client, lot: str) -> None:
    page = send(client, lot, "colour", colour="50, -90, 0", evidence="meter")
    assert "More vivid than a screen can show: this is the nearest" in page.text


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"colour": "reddish", "evidence": "hex"}, "colour", "neither Lab nor"),
        ({"colour": "", "evidence": "hex"}, "colour", "Colour is missing."),
        ({"colour": "#fff"}, "evidence", "How it was found is missing."),
        ({"colour": "#fff", "evidence": "eye"}, "evidence", "one of those offered"),
        ({"colour": "120,0,0", "evidence": "meter"}, "colour", "L from 0 to 100"),
    ],
)
def test_a_colour_that_is_none(
    client: Client, lot: str, typed: dict[str, str], field: str, sentence: str
) -> None:
    page = send(client, lot, "colour", **typed)
    assert page.status == 422
    assert sentence in page.fault(field)
    assert page.value("colour") == typed["colour"]


def test_a_photo_is_kept_and_sent_as_a_bare_jpeg(client: Client, lot: str) -> None:
    sent = SimpleUploadedFile("../../evil.html", photo("PNG"), "text/html")
    page = send(client, lot, "photo", photo=sent)
    assert f"The photo of {lot} is kept" in page.text
    line = LotLine.objects.get(act="photo")
    assert fullmatch(rf"lots/{lot}-[0-9a-f]{{32}}\.jpg", str(line.photo))
    address = f"/lots/{lot}/photos/{line.pk}.jpg"
    assert f'src="{address}"' in page.source
    answer = client.get(address)
    assert answer.headers["Content-Type"] == "image/jpeg"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    picture = Image.open(io.BytesIO(answer.content))
    assert picture.format == "JPEG"
    assert not dict(picture.getexif())


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"<html><script>alert(1)</script>", "not a whole JPEG, PNG or WebP"),
        (b"", "The photo is empty; take it again."),
        (photo()[:200], "not a whole JPEG, PNG or WebP"),
    ],
)
def test_what_is_no_photo_is_refused(
    client: Client, lot: str, content: bytes, sentence: str
) -> None:
    sent = SimpleUploadedFile("lot.jpg", content, "image/jpeg")
    page = send(client, lot, "photo", photo=sent)
    assert page.status == 422
    assert sentence in page.fault("photo")
    assert not LotLine.objects.filter(act="photo").exists()


def test_no_photo_at_all(client: Client, lot: str) -> None:
    page = send(client, lot, "photo")
    assert page.fault("photo") == "Photo is missing."


def test_a_photo_of_another_lot_is_not_sent(
    client: Client, lot: str, pot: Ready
) -> None:
    del pot
    assert client.get(f"/lots/{lot}/photos/999.jpg").status_code == 404
    note = LotLine.objects.first()
    assert note is not None
    assert client.get(f"/lots/{lot}/photos/{note.pk}.jpg").status_code == 404


def test_a_lot_that_is_not_there(client: Client, lot: str) -> None:
    del lot
    page = shown(client, "999999-B9")
    assert page.status == 404
    assert "Read the number on its tag again." in page.text


@pytest.mark.parametrize("act", ["change", "colour", "photo"])
def test_acts_take_a_post_alone(client: Client, lot: str, act: str) -> None:
    assert client.get(f"/lots/{lot}/{act}/").status_code == 405
