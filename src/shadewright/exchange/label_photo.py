"""A phone's photo of a bottle label to the bottle's code.

The square code reads any way up, so the photo's orientation does not matter.
Where the plain picture says nothing it is looked at again the way a person
would: tilted, and with the light evened out.
"""

import io
from collections.abc import Iterator

from PIL import Image, ImageChops, ImageFilter, ImageOps

from shadewright.errors import InputError, OutOfRangeError, UnreadableError
from shadewright.exchange.label_code import code_from_text

MOST_MEGABYTES = 25
MOST_MEGAPIXELS = 60
_FORMATS = ("JPEG", "PNG", "WEBP")
_WORKING_SIDE_PX = 2400
_DAMAGE = (OSError, ValueError, SyntaxError, EOFError)
_BOMBS = (Image.DecompressionBombError, Image.DecompressionBombWarning)


def code_in_photo(photo: bytes) -> str:
    """Return the code of the one bottle label that a photo shows."""
    _check_weight(photo)
    picture = _opened(photo)
    for view in _views(picture):
        texts = _texts_in(view)
        if texts:
            return _only_code(texts)
    raise UnreadableError(
        name="The photo",
        why="No label’s square code was found in it.",
        advice="Hold the phone closer, in even light, or type the short code.",
        argument="photo",
    )


def _check_weight(photo: bytes) -> None:
    megabytes = len(photo) / 1e6
    if megabytes > MOST_MEGABYTES:
        raise OutOfRangeError(
            name="The photo",
            given=f"{megabytes:.0f} MB",
            allowed=f"at most {MOST_MEGABYTES} MB",
            argument="photo",
        )


def _opened(photo: bytes) -> Image.Image:
    """Return the photo in greys, no larger than the reader needs."""
    try:
        with Image.open(io.BytesIO(photo), formats=_FORMATS) as image:
            _check_size(image.size)
            image.draft("L", (_WORKING_SIDE_PX, _WORKING_SIDE_PX))
            grey = _on_white(image).convert("L")
    except _BOMBS as bomb:
        raise _too_large(given="far more") from bomb
    except _DAMAGE as damage:
        raise UnreadableError(
            name="The photo",
            why="It is not a whole JPEG, PNG or WebP picture.",
            advice="Take it again, or type the short code.",
            argument="photo",
        ) from damage
    grey.thumbnail((_WORKING_SIDE_PX, _WORKING_SIDE_PX))
    return grey


def _check_size(size: tuple[int, int]) -> None:
    megapixels = size[0] * size[1] / 1e6
    if megapixels > MOST_MEGAPIXELS:
        raise _too_large(given=f"{megapixels:.0f} megapixels")


def _too_large(*, given: str) -> OutOfRangeError:
    return OutOfRangeError(
        name="The photo",
        given=given,
        allowed=f"at most {MOST_MEGAPIXELS} megapixels",
        advice="Set the phone’s camera to a smaller picture, or type the short code.",
        argument="photo",
    )


def _on_white(image: Image.Image) -> Image.Image:
    """Return the image with what is transparent as white."""
    if not image.has_transparency_data:
        return image
    over = image.convert("RGBA")
    return Image.alpha_composite(Image.new("RGBA", over.size, "white"), over)


def _views(picture: Image.Image) -> Iterator[Image.Image]:
    # The reader itself tries smaller and turned by a quarter; what helps beyond
    # that, tried on made photos, is a tilt, and an even light with sharper edges.
    yield picture
    yield _tilted(picture)
    even = _evenly_lit(picture)
    yield even
    yield _tilted(even)


def _tilted(picture: Image.Image) -> Image.Image:
    return picture.rotate(30, Image.Resampling.BICUBIC, expand=True, fillcolor=128)


def _evenly_lit(picture: Image.Image) -> Image.Image:
    """Return the picture with slow changes of light taken out and edges sharp."""
    light = picture.filter(ImageFilter.BoxBlur(max(picture.size) // 12))
    flat = ImageChops.subtract(picture, light, scale=1, offset=128)
    strong = ImageOps.autocontrast(flat, cutoff=1)
    return strong.filter(ImageFilter.UnsharpMask(radius=6, percent=300, threshold=0))


def _texts_in(view: Image.Image) -> set[str]:
    import zxingcpp

    formats = zxingcpp.BarcodeFormats(zxingcpp.BarcodeFormat.QRCode)
    return {found.text for found in zxingcpp.read_barcodes(view, formats=formats)}


def _only_code(texts: set[str]) -> str:
    codes = sorted(_bottle_codes(texts))
    if len(codes) == 1:
        return codes[0]
    if codes:
        why = f"It shows several labels: {', '.join(codes)}."
        advice = "Take it again with one label in the picture."
    else:
        why = "The square code in it is not from a bottle’s label."
        advice = "Take a photo of the label, or type the short code."
    raise UnreadableError(name="The photo", why=why, advice=advice, argument="photo")


def _bottle_codes(texts: set[str]) -> Iterator[str]:
    for text in texts:
        try:
            yield code_from_text(text)
        except InputError:
            continue
