"""Two colours touching in the booth, with the words and the number for it."""

from shadewright.core.colour import ciede2000, difference_words
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.colours import ColourShown, foretold_colour, read_colour
from shadewright.web.corrections.pages import Pair
from shadewright.workflows.correcting.correcting import Foretold
from shadewright.workflows.correcting.off_shade import OffShade
from shadewright.workflows.shades.kinds import ReadBy


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


def measured_of(off: OffShade) -> ColourShown:
    """Return a lot’s colour as it was read."""
    read_by = ReadBy(off.measured.read_by)
    return read_colour(off.measured.lab, read_by, name=f"Lot {off.number}")


def shown_foretold(told: Foretold, *, name: str) -> ColourShown:
    """Return a colour that the palette foretells."""
    return foretold_colour(
        told.lab,
        expected=told.expected,
        within_90=told.within_90,
        evidence=told.evidence,
        name=name,
    )
