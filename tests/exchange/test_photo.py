"""A photo that is kept: drawn anew, small, and with nothing told of where it was."""

import io

import pytest
from PIL import Image

from shadewright.errors import InputError
from shadewright.exchange.photo import KEPT_SIDE_PX, kept_photo

PLACE, ORIENTATION, COMMENT = 0x8825, 0x0112, 0x9286


def photo(
    kind: str = "JPEG", size: tuple[int, int] = (40, 20), *, turned: bool = False
) -> bytes:
    """Return a made photo, with a place and a comment in its notes."""
    picture = Image.new("RGB", size, "#a0522d")
    exif = Image.Exif()
    exif[COMMENT] = "secret kitchen"
    exif.get_ifd(PLACE)[1] = "N"
    if turned:
        exif[ORIENTATION] = 6
    out = io.BytesIO()
    picture.save(out, format=kind, exif=exif)
    return out.getvalue()


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_it_becomes_a_jpeg_without_notes(kind: str) -> None:
    sent = photo(kind)
    assert b"secret kitchen" in sent
    kept = kept_photo(sent)
    picture = Image.open(io.BytesIO(kept))
    assert picture.format == "JPEG"
    assert not dict(picture.getexif())
    assert b"secret kitchen" not in kept


def test_it_stands_upright_and_is_small() -> None:
    kept = kept_photo(photo(size=(4000, 2000), turned=True))
    width, height = Image.open(io.BytesIO(kept)).size
    assert (width, height) == (KEPT_SIDE_PX // 2, KEPT_SIDE_PX)


def test_words_hidden_behind_the_picture_are_left_behind() -> None:
    kept = kept_photo(photo() + b"<script>alert(1)</script>")
    assert b"<script>" not in kept


@pytest.mark.parametrize(
    "content",
    [b"", b"<svg xmlns='http://www.w3.org/2000/svg'/>", b"<html>", photo()[:300]],
)
def test_what_is_no_whole_picture_is_refused(content: bytes) -> None:
    with pytest.raises(InputError, match="not a whole JPEG, PNG or WebP") as caught:
        kept_photo(content)
    assert caught.value.argument == "photo"


def test_a_vast_picture_is_refused_before_it_is_unpacked() -> None:
    out = io.BytesIO()
    Image.new("1", (9000, 9000)).save(out, format="PNG")
    with pytest.raises(InputError, match="at most 60 megapixels"):
        kept_photo(out.getvalue())


def test_a_file_far_too_heavy_is_refused() -> None:
    with pytest.raises(InputError, match="at most 25 MB"):
        kept_photo(bytes(26_000_001))
