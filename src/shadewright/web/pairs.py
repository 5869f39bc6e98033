"""Two colours touching in the booth, with the words and the number for it."""

from dataclasses import dataclass

from shadewright.core.colour import ciede2000, difference_words
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.colours import ColourShown


@dataclass(frozen=True, kw_only=True)
class Pair:
    """Two colours that touch in the booth, and how they differ, in words."""

    hexes: tuple[str, ...]
    names: tuple[str, ...]
    said: str
    words: str
    difference: str
    shown: tuple[ColourShown, ...]


def pair_of(target: ColourShown, sample: ColourShown) -> Pair:
    """Return a target at the left and a sample at the right."""
    words = difference_words(target.lab, sample.lab)
    number = f"CIEDE2000{NO_BREAK}{ciede2000(target.lab, sample.lab):.1f}"
    return Pair(
        hexes=(target.hex_code, sample.hex_code),
        names=(target.name, sample.name),
        said=f"{target.name} beside {sample.name}: {words}, {number}",
        words=words,
        difference=number,
        shown=(target, sample),
    )
