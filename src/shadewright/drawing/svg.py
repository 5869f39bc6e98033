"""The frame of every drawing: its name, its lengths, its escaped text."""

import math
from dataclasses import dataclass
from html import escape


@dataclass(frozen=True)
class Box:
    """The drawing's own coordinates; a stretched one fills whatever room it gets."""

    width: float
    height: float
    is_stretched: bool = False


def length(value: float) -> str:
    """Write a coordinate with at most two decimals and no trailing noughts."""
    if not math.isfinite(value):
        return "0"
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def text(words: str) -> str:
    """Escape words for use between tags or inside a quoted attribute."""
    return escape(words, quote=True)


def fraction(value: float) -> float:
    """Keep a share within 0 and 1; what is not a number counts as nothing."""
    return min(max(value, 0.0), 1.0) if math.isfinite(value) else 0.0


def rect(x: float, y: float, width: float, height: float, css: str) -> str:
    """Draw a rectangle that takes its colour from a class."""
    return (
        f'<rect x="{length(x)}" y="{length(y)}" width="{length(width)}" '
        f'height="{length(height)}" class="{css}"/>'
    )


def line(x1: float, y1: float, x2: float, y2: float, css: str) -> str:
    """Draw a line that takes its stroke from a class."""
    return (
        f'<line x1="{length(x1)}" y1="{length(y1)}" x2="{length(x2)}" '
        f'y2="{length(y2)}" class="{css}"/>'
    )


def words(x: float, y: float, said: str, css: str) -> str:
    """Write words that stand on y and begin at x."""
    return f'<text x="{length(x)}" y="{length(y)}" class="{css}">{text(said)}</text>'


def drawing(css: str, box: Box, body: str, *, name: str = "", more: str = "") -> str:
    """Wrap a body as one SVG picture, named for a screen reader or hidden.

    ``more`` tells at length what a named picture shows.
    """
    said = f'role="img" aria-label="{text(name)}"' if name else 'aria-hidden="true"'
    told = f"<desc>{text(more)}</desc>" if name and more else ""
    stretch = ' preserveAspectRatio="none"' if box.is_stretched else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{css}" '
        f'viewBox="0 0 {length(box.width)} {length(box.height)}"{stretch} '
        f"{said}>{told}{body}</svg>"
    )
