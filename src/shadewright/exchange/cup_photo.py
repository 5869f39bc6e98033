"""A photo of two cups to the light that comes back from them and from the white beside.

The first cup stands left, the cup of now right, on white paper. The middle of either
half is read, and the paper between them, above or below, whichever is brighter. Light
is in proportion to its amount, not as a screen stores it (IEC 61966-2-1, from memory).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from PIL import Image, ImageStat

from shadewright.exchange.photo import opened_photo

_SIDE_PX = 400
_PATCH = 0.06
"""Half the side of what is read, in the photo's width or height."""
_FIRST, _NOW = (0.25, 0.5), (0.75, 0.5)
_PAPER = ((0.5, 0.08), (0.5, 0.92))


@dataclass(frozen=True, kw_only=True)
class CupsSeen:
    """Light from both cups and from the paper: red, green, blue, 0 to 1 each."""

    first: tuple[float, ...]
    now: tuple[float, ...]
    white: tuple[float, ...]


def cups_in(photo: bytes) -> CupsSeen:
    """Return what a photo shows of two cups; refused where it is no picture."""
    picture = opened_photo(photo, mode="RGB", side_px=_SIDE_PX)
    papers = [_light(picture, place) for place in _PAPER]
    return CupsSeen(
        first=_light(picture, _FIRST),
        now=_light(picture, _NOW),
        white=max(papers, key=sum),
    )


def _light(picture: Image.Image, place: tuple[float, float]) -> tuple[float, ...]:
    """Return the light of a patch: the middle one of its pixels, channel by channel."""
    width, height = picture.size
    x, y = place
    box = (x - _PATCH, y - _PATCH, x + _PATCH, y + _PATCH)
    sides = (width, height, width, height)
    patch = picture.crop(_whole(box, sides))
    return tuple(_linear(each / 255) for each in ImageStat.Stat(patch).median)


def _whole(box: Sequence[float], sides: Sequence[int]) -> tuple[int, int, int, int]:
    left, upper, right, lower = (
        round(min(max(share, 0.0), 1.0) * side)
        for share, side in zip(box, sides, strict=True)
    )
    return left, upper, max(right, left + 1), max(lower, upper + 1)


def _linear(stored: float) -> float:
    if stored <= 0.04045:
        return stored / 12.92
    return float(((stored + 0.055) / 1.055) ** 2.4)
