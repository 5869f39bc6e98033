"""A text as a square code, drawn as one path."""

import segno


def square_svg(text: str) -> str:
    """Return the square code with its quiet zone as SVG, one path for the dark."""
    code = segno.make_qr(text, error="m")
    dark = [
        f"M{x} {y}h1v1h-1z"
        for y, row in enumerate(code.matrix_iter(border=4))
        for x, is_dark in enumerate(row)
        if is_dark
    ]
    side = code.symbol_size(border=4)[0]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}">'
        f'<path d="{"".join(dark)}"/></svg>'
    )
