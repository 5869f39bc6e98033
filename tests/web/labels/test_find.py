"""Opening a bottle by its code or by a photo of its label."""

import io
from collections.abc import Callable

import pytest
import segno
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from shadewright.exchange import label_text
from shadewright.workflows.bottles import enter_bottle
from shadewright.workflows.cards import bath_cards
from shadewright.workflows.filling import Particulars
from shadewright.workflows.labels import label_sheet
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.stamps import stamp_now
from tests.paper.pictures import thermal_print
from tests.web.benches import small_bench
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE
from tests.workflows.bench import founded
from tests.workflows.pots import ready

pytestmark = pytest.mark.django_db


@pytest.fixture
def bottle() -> ShelfBottle:
    return enter_bottle(
        dye_id=small_bench().dye,
        strength_percent=1.0,
        volume_ml=500.0,
        stamp=stamp_now(by=None),
        about=Particulars(),
    )


def png(picture: Image.Image) -> bytes:
    held = io.BytesIO()
    picture.save(held, "PNG")
    return held.getvalue()


def send_photo(client: Client, photo: bytes, name: str = "label.png") -> Answer:
    sent = {"by": "photo", "photo": SimpleUploadedFile(name, photo)}
    return read(client.post("/find/", sent))


@pytest.mark.usefixtures("bottle")
def test_the_page_takes_a_code_or_a_photo(client: Client) -> None:
    page = read(client.get("/find/"))
    assert 'capture="environment"' in page.source
    assert 'accept="image/*"' in page.source
    assert "A bottle’s code is letter, digit, letter, like K7R" in page.text


@pytest.mark.parametrize("write", [str, str.lower, " ".join, "-".join])
def test_a_code_opens_its_bottle_however_it_is_written(
    client: Client, bottle: ShelfBottle, write: Callable[[str], str]
) -> None:
    answer = client.post("/find/", {"code": write(bottle.code)})
    assert answer.status_code == 302
    assert answer.headers["Location"] == f"/bottles/{bottle.code}/"


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("", "Code or number is missing."),
        ("S5B", "must be letter, digit, letter"),
        ("T0K", "must be letter, digit, letter"),
        ("12345", "must be letter, digit, letter"),
        ("x" * 61, "up to 60 characters"),
        ("A:B", "It is not from a bottle’s label."),
        (HOSTILE, "must be letter, digit, letter"),
    ],
)
@pytest.mark.usefixtures("bottle")
def test_a_wrong_code_gets_one_sentence_and_stays(
    client: Client, typed: str, sentence: str
) -> None:
    page = read(client.post("/find/", {"code": typed}))
    assert page.status == 422
    assert sentence in page.fault("code")
    assert page.value("code") == typed
    assert HOSTILE not in page.source


def test_a_code_that_no_bottle_carries(client: Client) -> None:
    other = "K7RR"
    page = read(client.post("/find/", {"code": other}))
    assert f"There is no bottle “{other}”." in page.fault("code")
    assert "Read the code on its label again." in page.fault("code")


def test_a_photo_of_the_label_opens_the_bottle(
    client: Client, bottle: ShelfBottle
) -> None:
    sheet = label_sheet(codes=[bottle.code], format_key="single-89x36")
    photo = SimpleUploadedFile("IMG 1.png", png(thermal_print(sheet)))
    answer = client.post("/find/", {"photo": photo})
    assert answer.headers["Location"] == f"/bottles/{bottle.code}/"


@pytest.mark.parametrize(
    ("photo", "name", "sentence"),
    [
        (png(Image.new("L", (200, 200), 255)), "a.png", "No label’s square code"),
        (b"<script>alert(1)</script>", HOSTILE, "not a whole JPEG, PNG or WebP"),
        (b"not a picture", "../../etc/passwd", "not a whole JPEG, PNG or WebP"),
        (b"", "empty.jpg", "The photo is an empty file"),
    ],
)
@pytest.mark.usefixtures("bottle")
def test_a_photo_without_a_code_gets_one_sentence(
    client: Client, photo: bytes, name: str, sentence: str
) -> None:
    page = send_photo(client, photo, name)
    assert page.status == 422
    assert sentence in page.fault("photo")
    assert HOSTILE not in page.source


@pytest.mark.usefixtures("bottle")
def test_no_photo_at_all(client: Client) -> None:
    page = read(client.post("/find/", {"by": "photo"}))
    assert "Photo of the label or card is missing." in page.fault("photo")


@pytest.mark.parametrize("typed", ["{}", " {} ", "shadewright:bath:{}"])
def test_a_baths_number_opens_the_bath(client: Client, typed: str) -> None:
    founded()
    number = ready().number
    answer = client.post("/find/", {"code": typed.format(number.lower())})
    assert answer.status_code == 302
    assert answer.headers["Location"] == f"/baths/{number}/"


def test_a_photo_of_a_card_opens_the_bath(client: Client) -> None:
    founded()
    number = ready().number
    sheet = thermal_print(bath_cards([number], paper="a5"))
    answer = client.post("/find/", {"photo": SimpleUploadedFile("c.png", png(sheet))})
    assert answer.headers["Location"] == f"/baths/{number}/"


def test_a_bath_that_is_not_there(client: Client) -> None:
    page = read(client.post("/find/", {"code": "261125-B9"}))
    assert page.status == 422
    assert "There is no bath “261125-B9”." in page.fault("code")


def test_a_photo_of_a_bottle_that_is_not_there(client: Client) -> None:
    square = io.BytesIO()
    segno.make_qr(label_text("K7RR")).save(square, "png", scale=6)
    page = send_photo(client, square.getvalue())
    assert "There is no bottle “K7RR”." in page.fault("photo")
