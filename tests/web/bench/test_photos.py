"""Photos at the pot: kept with a line, two cups read, what is no photo refused."""

from io import BytesIO
from uuid import uuid4

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from shadewright.exchange.cup_photo import cups_in
from shadewright.records.models import BathLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo
from tests.web.pages_read import Answer, read
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready

pytestmark = pytest.mark.django_db
FIRST = (0.1, 0.3, 0.6)
"""Light from the first cup; thinned to a share it is each to that power."""


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def stored(light: float) -> int:
    """Return light as a screen stores it (IEC 61966-2-1)."""
    small = 12.92 * light
    return round(
        255 * (small if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055)
    )


def cups(*, share: float, white: float = 0.9) -> bytes:
    """Return a photo of two cups on paper, the right one thinned to a share."""
    picture = Image.new("RGB", (400, 300), (stored(white),) * 3)
    for left, power in ((40, 1.0), (240, share)):
        colour = tuple(stored(white * each**power) for each in FIRST)
        picture.paste(colour, (left, 80, left + 120, 220))
    out = BytesIO()
    picture.save(out, format="PNG")
    return out.getvalue()


def sent(client: Client, pot: Ready, photo: bytes, **said: str) -> Answer:
    form = {
        "key": str(uuid4()),
        "step": "hold",
        "photo": SimpleUploadedFile("cup.png", photo),
        **said,
    }
    return read(client.post(f"/bench/{pot.number}/photo/", form, follow=True))


@pytest.mark.by_hand
def test_two_cups_say_how_much_is_left(client: Client, pot: Ready) -> None:
    answer = sent(client, pot, cups(share=0.25), cups="yes")
    line = BathLine.objects.get(act=BathAct.LEFTOVER)
    assert line.value == pytest.approx(25.0, abs=0.5)  # thinned to a quarter
    assert line.unit == "%"
    assert "left in the bath" in answer.text
    assert "by a photo, rough" in answer.text
    assert "Read the temperature" in answer.text


def test_a_photo_is_kept_once_with_its_words_and_shown(
    client: Client, pot: Ready
) -> None:
    key = str(uuid4())
    for _ in "12":
        sent(client, pot, cups(share=0.5), key=key, note="blotchy at the ties")
    line = BathLine.objects.get(act=BathAct.PHOTO)
    assert line.note == "blotchy at the ties"
    address = f"/bench/{pot.number}/photos/{line.deed}.jpg"
    page = read(client.get(f"/bench/{pot.number}/?view=round"))
    assert address in page.source
    assert client.get(address).headers["Content-Type"] == "image/jpeg"
    undo(deed=line.deed, stamp=stamp_now(by=None))
    assert client.get(address).status_code == 404


@pytest.mark.parametrize(
    ("photo", "words"),
    [
        (b"no picture", "It is not a whole JPEG, PNG or WebP picture."),
        (cups(share=1.0, white=0.02), "It is too dark."),
    ],
)
def test_what_cannot_be_read_is_said_and_nothing_kept(
    client: Client, pot: Ready, photo: bytes, words: str
) -> None:
    answer = sent(client, pot, photo, cups="yes")
    assert answer.status == 422
    assert words in answer.text
    assert not BathLine.objects.exists()


def test_without_a_photo_it_is_asked_for(client: Client, pot: Ready) -> None:
    address = f"/bench/{pot.number}/photo/"
    answer = read(client.post(address, {"key": str(uuid4()), "step": "hold"}))
    assert answer.status == 422
    assert "Take one, or choose one." in answer.text
    assert client.post(address, {"key": "none"}).status_code == 404


def test_paper_is_the_brighter_of_above_and_below() -> None:
    picture = Image.new("RGB", (400, 300), (250, 250, 250))
    picture.paste((90, 90, 90), (0, 200, 400, 300))  # a shadow below
    out = BytesIO()
    picture.save(out, format="PNG")
    assert min(cups_in(out.getvalue()).white) > 0.9
