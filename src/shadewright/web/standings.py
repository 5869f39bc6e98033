"""Whether a swatch or a lot teaches, in a word or two."""

from shadewright.web.parts import Chip
from shadewright.workflows.shades.swatches import Standing, SwatchNow

STANDINGS = {
    Standing.COUNTS: Chip(words="Teaches", kind="good"),
    Standing.TRUSTED: Chip(words="Trusted", kind="good"),
    Standing.SET_ASIDE: Chip(words="Set aside", kind="caution"),
    Standing.OFFERED: Chip(words="Could teach"),
    Standing.WET: Chip(words="Read wet only", kind="caution"),
    Standing.UNREAD: Chip(words="Not read yet", kind="guess"),
}

SUSPECT = Chip(words="Suspect", kind="problem")


def standing_chip(swatch: SwatchNow, *, is_suspect: bool) -> Chip:
    """Return whether a swatch teaches; a suspect is named so."""
    if is_suspect and swatch.standing is Standing.COUNTS:
        return SUSPECT
    return STANDINGS[swatch.standing]
