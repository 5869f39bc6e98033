"""A photo as bytes to a picture, with all that can be wrong with it said plainly.

The size is looked at before the picture is unpacked, so that a small file which
unfolds into a vast picture does no harm.
"""

import io
from typing import Literal

from PIL import Image, ImageOps

from shadewright.errors import OutOfRangeError, UnreadableError

MOST_MEGABYTES = 25
MOST_MEGAPIXELS = 60
KEPT_SIDE_PX = 1600
_FORMATS = ("JPEG", "PNG", "WEBP")
_DAMAGE = (OSError, ValueError, SyntaxError, EOFError)
_BOMBS = (Image.DecompressionBombError, Image.DecompressionBombWarning)


def opened_photo(
    photo: bytes, *, mode: Literal["L", "RGB"], side_px: int, otherwise: str = ""
) -> Image.Image:
    """Return a photo upright, no larger than wanted; ``otherwise`` is another way on.

    What is transparent comes out white.
    """
    _check_weight(photo)
    try:
        with Image.open(io.BytesIO(photo), formats=_FORMATS) as image:
            _check_size(image.size, otherwise)
            image.draft(mode, (side_px, side_px))
            picture = ImageOps.exif_transpose(_on_white(image)).convert(mode)
    except _BOMBS as bomb:
        raise _too_large(given="far more", otherwise=otherwise) from bomb
    except _DAMAGE as damage:
        raise UnreadableError(
            name="The photo",
            why="It is not a whole JPEG, PNG or WebP picture.",
            advice=f"Take it again{otherwise}.",
            argument="photo",
        ) from damage
    picture.thumbnail((side_px, side_px))
    return picture


def kept_photo(photo: bytes) -> bytes:
    """Return a photo as a JPEG of its own, without place, date or any other note.

    It is drawn anew, so nothing of the file that came is kept but what is seen.
    """
    picture = opened_photo(photo, mode="RGB", side_px=KEPT_SIDE_PX)
    bare = Image.new("RGB", picture.size)
    bare.paste(picture)
    out = io.BytesIO()
    bare.save(out, format="JPEG", quality=85, optimize=True)
    return out.getvalue()


def _check_weight(photo: bytes) -> None:
    megabytes = len(photo) / 1e6
    if megabytes > MOST_MEGABYTES:
        raise OutOfRangeError(
            name="The photo",
            given=f"{megabytes:.0f} MB",
            allowed=f"at most {MOST_MEGABYTES} MB",
            argument="photo",
        )


def _check_size(size: tuple[int, int], otherwise: str) -> None:
    megapixels = size[0] * size[1] / 1e6
    if megapixels > MOST_MEGAPIXELS:
        raise _too_large(given=f"{megapixels:.0f} megapixels", otherwise=otherwise)


def _too_large(*, given: str, otherwise: str) -> OutOfRangeError:
    return OutOfRangeError(
        name="The photo",
        given=given,
        allowed=f"at most {MOST_MEGAPIXELS} megapixels",
        advice=f"Set the phone’s camera to a smaller picture{otherwise}.",
        argument="photo",
    )


def _on_white(image: Image.Image) -> Image.Image:
    """Return the image with what is transparent as white."""
    if not image.has_transparency_data:
        return image
    over = image.convert("RGBA")
    return Image.alpha_composite(Image.new("RGBA", over.size, "white"), over)
