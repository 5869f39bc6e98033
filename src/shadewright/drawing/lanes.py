"""A dye day as lanes, wide and tall, and the boxes of its legend."""

from typing import Literal

from shadewright.drawing import svg
from shadewright.drawing.lanes_shown import BarKind, LanesShown
from shadewright.drawing.lanes_tall import lanes_tall
from shadewright.drawing.lanes_wide import lanes_wide

LanesWidth = Literal["wide", "narrow"]


def day_lanes(shown: LanesShown, *, width: LanesWidth) -> str:
    """Draw a day as lanes for the desk, or turned by a quarter for a phone."""
    return lanes_wide(shown) if width == "wide" else lanes_tall(shown)


def lane_sample(kind: BarKind) -> str:
    """Draw one box of the legend."""
    return svg.drawing("lanes sample", svg.Box(18, 14), svg.rect(0, 0, 18, 14, kind))
