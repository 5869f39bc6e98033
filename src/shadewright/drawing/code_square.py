"""A QR code that a phone reads from the screen: always black on white."""

from collections.abc import Iterable
from itertools import starmap

from shadewright.drawing import svg

_BORDER = 4  # modules of white all round, which ISO/IEC 18004 asks for


def code_square(text: str, *, name: str) -> str:
    """Draw a text as a QR code; the same words must stand beside it."""
    import segno

    rows = list(segno.make_qr(text, error="m").matrix_iter(border=_BORDER))
    side = len(rows)
    dark = "".join(starmap(_runs, enumerate(rows)))
    body = (
        f'<rect width="{side}" height="{side}" fill="#fff"/>'
        f'<path d="{dark}" fill="#000"/>'
    )
    return svg.drawing("code-square", svg.Box(side, side), body, name=name)


def _runs(y: int, row: Iterable[int]) -> str:
    """Draw the dark modules of a row, those that touch as one bar."""
    bars: list[tuple[int, int]] = []
    for x, is_dark in enumerate(row):
        if is_dark and bars and sum(bars[-1]) == x:
            bars[-1] = (bars[-1][0], bars[-1][1] + 1)
        elif is_dark:
            bars.append((x, 1))
    return "".join(f"M{x} {y}h{width}v1h-{width}z" for x, width in bars)
