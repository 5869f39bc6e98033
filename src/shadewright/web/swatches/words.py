"""Words for a swatch: whether it teaches, and how good its reading is."""

from shadewright.web.pages import Link
from shadewright.web.parts import Chip
from shadewright.workflows.shades.entering_swatches import doses_label
from shadewright.workflows.shades.kinds import ReadBy
from shadewright.workflows.shades.swatches import SwatchNow

SHADES = Link(words="Shades", address="/shades/")
CRUMBS = (SHADES, Link(words="Swatches", address="/shades/swatches/"))

KINDS = {
    ReadBy.CHART: "Chart",
    ReadBy.EYE: "By eye",
    ReadBy.PHOTO: "Photo",
    ReadBy.PHOTO_CARD: "Photo, grey card",
    ReadBy.METER: "Meter",
    ReadBy.LIGHTS: "Meter, three lights",
    ReadBy.SPECTRUM: "Spectrum",
}

POOR = {ReadBy.CHART, ReadBy.EYE, ReadBy.PHOTO, ReadBy.PHOTO_CARD}

WHY_NOT_WET = (
    "Wet yarn is darker than the same yarn dry, so a wet colour is kept but teaches "
    "nothing."
)


def kind_chip(read_by: ReadBy) -> Chip:
    """Return how a colour was come by in a word or two."""
    return Chip(words=KINDS[read_by], kind="guess" if read_by in POOR else "")


def dose_words(swatch: SwatchNow) -> str:
    """Return what a swatch was dyed with: “Gorse 0.6 % + Slate 0.2 %”."""
    return doses_label(swatch.doses)


def title_of(swatch: SwatchNow) -> str:
    """Return its label, or “Swatch 261125-A1” where that is a bath’s number."""
    if swatch.label != swatch.bath_number:
        return f"{swatch.label[:1].upper()}{swatch.label[1:]}"
    return f"{'Lot' if swatch.is_lot else 'Swatch'} {swatch.label}"
