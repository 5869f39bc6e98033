import io
from collections.abc import Callable

import pytest
import segno
from PIL import Image, ImageChops, ImageFilter

from shadewright.errors import OutOfRangeError, UnreadableError
from shadewright.exchange import label_text
from shadewright.exchange.label_photo import code_in_photo
from shadewright.exchange.photo import MOST_MEGABYTES

Change = Callable[[Image.Image], Image.Image]


def square(text: str, scale: int = 6) -> Image.Image:
    file = io.BytesIO()
    segno.make_qr(text, error="m").save(file, "png", scale=scale, border=4)
    return Image.open(file).convert("L")


def photo(picture: Image.Image, kind: str = "JPEG", **how: object) -> bytes:
    file = io.BytesIO()
    picture.save(file, kind, **how)
    return file.getvalue()


def on_table(*pictures: Image.Image, ground: int = 120) -> Image.Image:
    width = sum(picture.width + 60 for picture in pictures) + 60
    table = Image.new("L", (width, pictures[0].height + 120), ground)
    left = 60
    for picture in pictures:
        table.paste(picture, (left, 60))
        left += picture.width + 60
    return table


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_each_kind_of_picture_is_read(kind: str) -> None:
    assert code_in_photo(photo(square(label_text("T7K")), kind)) == "T7K"


def shadowed(picture: Image.Image) -> Image.Image:
    shade = Image.radial_gradient("L").resize(picture.size)
    dim = shade.point([25 + value * 2 // 3 for value in range(256)])
    return ImageChops.multiply(picture, dim)


@pytest.mark.parametrize(
    "change",
    [
        lambda picture: picture.rotate(33, expand=True, fillcolor=120),
        lambda picture: picture.rotate(180),
        lambda picture: picture.filter(ImageFilter.GaussianBlur(3)),
        lambda picture: picture.point([105 + value // 12 for value in range(256)]),
        lambda picture: picture.resize((picture.width * 8, picture.height * 8)),
        shadowed,
    ],
    ids=["tilted", "upside-down", "blurred", "pale", "huge", "shadowed"],
)
def test_a_poor_photo_is_read(change: Change) -> None:
    picture = change(on_table(square(label_text("T7K"))))
    assert code_in_photo(photo(picture, quality=60)) == "T7K"


def test_a_phone_held_sideways_is_read() -> None:
    turned = Image.Exif()
    turned[0x0112] = 6
    assert code_in_photo(photo(square(label_text("T7K")), exif=turned)) == "T7K"


def test_a_see_through_picture_is_read() -> None:
    picture = square(label_text("T7K"))
    ink = Image.new("LA", picture.size, (0, 0))
    ink.putalpha(ImageChops.invert(picture))
    assert code_in_photo(photo(ink, "PNG")) == "T7K"


def test_two_photos_of_one_bottle_are_one_bottle() -> None:
    picture = square(label_text("T7K"))
    assert code_in_photo(photo(on_table(picture, picture))) == "T7K"


def test_other_codes_beside_the_label_do_not_matter() -> None:
    pictures = square(label_text("T7K")), square("https://example.org")
    assert code_in_photo(photo(on_table(*pictures))) == "T7K"


def test_two_bottles_are_named() -> None:
    pictures = square(label_text("T7K")), square(label_text("A3C"))
    with pytest.raises(UnreadableError) as refusal:
        code_in_photo(photo(on_table(*pictures)))
    assert refusal.value.argument == "photo"
    assert refusal.value.sentence == (
        "The photo cannot be read. It shows several labels: A3C, T7K. "
        "Take it again with one label in the picture."
    )


def test_another_code_is_not_taken_for_a_bottle() -> None:
    with pytest.raises(UnreadableError, match="not from a bottle’s label"):
        code_in_photo(photo(square("https://example.org")))


def test_a_photo_without_a_code_says_what_to_do() -> None:
    with pytest.raises(UnreadableError, match="Hold the phone closer"):
        code_in_photo(photo(Image.new("L", (800, 600), 128)))


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"not a picture",
        b"<svg xmlns='x'/>",
        b"GIF89a" + bytes(40),
        b"\x89PNG\r\n\x1a\n" + bytes(60),
        photo(square(label_text("T7K")))[:900],
        photo(square(label_text("T7K")), "PNG")[:-300],
    ],
    ids=["empty", "text", "svg", "gif", "false-png", "half-jpeg", "half-png"],
)
def test_what_is_no_whole_picture_is_refused(data: bytes) -> None:
    with pytest.raises(UnreadableError, match="not a whole JPEG, PNG or WebP"):
        code_in_photo(data)


def test_a_heavy_file_is_refused_unread() -> None:
    with pytest.raises(OutOfRangeError, match="at most 25 MB"):
        code_in_photo(bytes(MOST_MEGABYTES * 1_000_000 + 600_000))


@pytest.mark.parametrize("side", [8_000, 9_600, 14_000])
def test_a_picture_that_would_fill_the_memory_is_refused(side: int) -> None:
    bomb = photo(Image.new("1", (side, side)), "PNG")
    assert len(bomb) < 100_000
    with pytest.raises(OutOfRangeError, match="at most 60 megapixels"):
        code_in_photo(bomb)
