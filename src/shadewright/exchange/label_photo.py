"""A phone's photo of a bottle's label or a bath's card to what it is of.

The square code reads any way up, so the photo's orientation does not matter.
Where the plain picture says nothing it is looked at again the way a person
would: tilted, and with the light evened out.
"""

from collections.abc import Iterator

from PIL import Image, ImageChops, ImageFilter, ImageOps

from shadewright.errors import InputError, UnreadableError
from shadewright.exchange.label_code import Scanned, scanned_from_text
from shadewright.exchange.photo import opened_photo

_WORKING_SIDE_PX = 2400
_OTHERWISE = ", or type the short code"


def code_in_photo(photo: bytes) -> str:
    """Return the code of the one bottle label that a photo shows."""
    found = scanned_in_photo(photo)
    if found.kind != "bottle":
        raise _not_ours(why="The square code in it is from a bath’s card.")
    return found.key


def scanned_in_photo(photo: bytes) -> Scanned:
    """Return the one bottle or bath whose square code a photo shows."""
    picture = opened_photo(
        photo, mode="L", side_px=_WORKING_SIDE_PX, otherwise=_OTHERWISE
    )
    for view in _views(picture):
        texts = _texts_in(view)
        if texts:
            return _only_one(texts)
    raise UnreadableError(
        name="The photo",
        why="No label’s square code was found in it.",
        advice="Hold the phone closer, in even light, or type the short code.",
        argument="photo",
    )


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


def _only_one(texts: set[str]) -> Scanned:
    found = sorted(_ours(texts), key=lambda one: one.key)
    if len(found) == 1:
        return found[0]
    if not found:
        raise _not_ours(why="The square code in it is not from a bottle’s label.")
    raise UnreadableError(
        name="The photo",
        why=f"It shows several labels: {', '.join(one.key for one in found)}.",
        advice="Take it again with one label in the picture.",
        argument="photo",
    )


def _ours(texts: set[str]) -> Iterator[Scanned]:
    for text in texts:
        try:
            yield scanned_from_text(text)
        except InputError:
            continue


def _not_ours(*, why: str) -> UnreadableError:
    return UnreadableError(
        name="The photo",
        why=why,
        advice="Take a photo of the label, or type the short code.",
        argument="photo",
    )
