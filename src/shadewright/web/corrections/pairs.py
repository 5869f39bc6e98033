"""The colours of a correction: read, and foretold."""

from shadewright.web.colours import ColourShown, foretold_colour, read_colour
from shadewright.workflows.correcting.correcting import Foretold
from shadewright.workflows.correcting.off_shade import OffShade
from shadewright.workflows.shades.kinds import ReadBy


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
