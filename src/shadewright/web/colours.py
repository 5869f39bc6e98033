"""A colour on a page: never alone, but with its source, its spread and a warning.

A page holds a ``ColourShown``; its template says ``{% colour page.seen "large" %}``:

``small``   22 px, in a line of words; all of it in its name
``square``  48 px, alone; all of it in its name
``row``     48 px with the words beside it
``large``   to be judged by eye: in its own booth, the words below
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from shadewright.core.colour import Lab, Light
from shadewright.core.mixing import Evidence
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.exchange.colour_text import ScreenColour, on_screen
from shadewright.workflows.shades.kinds import ReadBy
from shadewright.workflows.shades.reading_spreads import usually_off
from shadewright.workflows.shades.swatches import ReadColour

ColourSize = Literal["small", "square", "row", "large"]

LIGHT_NAMES = {Light.D65: "Daylight", Light.A: "Lamp", Light.LED_B3: "Shop LED"}

TOO_VIVID = "more vivid than this screen shows"

RESTS_ON = {
    Evidence.SCREEN: "colours picked on a screen or off a photo",
    Evidence.LAB: "colours read by a meter",
    Evidence.THREE_LIGHTS: "colours read under three lights",
    Evidence.SPECTRUM: "spectra",
}
"""What a kind of evidence is, after “rests on” or “foretold from”."""


@dataclass(frozen=True, kw_only=True)
class ColourShown:
    """A colour with all that must be said of it.

    ``hex_code`` is the nearest that a screen can show; ``is_true`` unless the colour
    lies beyond. ``source`` says how it was come by, ``spread`` how far it may be off.
    """

    name: str
    lab: Lab
    hex_code: str
    is_true: bool
    source: str
    spread: str
    is_foretold: bool = False

    @property
    def lab_words(self) -> str:
        """L, a, b in one digit more than a meter is worth."""
        light, a, b = (_one_digit(part) for part in self.lab)
        return f"L{NO_BREAK}{light}, a{NO_BREAK}{a}, b{NO_BREAK}{b}"

    @property
    def words(self) -> str:
        """Where it comes from, how far it may be off, and whether it is shown true."""
        mark = "" if self.is_true else f"; {TOO_VIVID}"
        return f"{self.source}, {self.spread}{mark}"

    @property
    def title(self) -> str:
        """All of it in one line, for the name of a picture."""
        named = f"{self.name}: " if self.name else ""
        return f"{named}{self.lab_words}; {self.words}"


def read_colour(
    lab: Lab,
    read_by: ReadBy,
    *,
    sd: float | None = None,
    repeat: int = 1,
    name: str = "",
) -> ColourShown:
    """Return a colour that somebody read, picked or typed."""
    off = usually_off(lab, read_by, sd=sd, repeat=repeat)
    return _shown(lab, name=name, source=str(read_by.label), spread=_spread(off))


def colour_of_reading(reading: ReadColour, *, name: str = "") -> ColourShown:
    """Return a reading of a swatch as a page shows it."""
    return read_colour(
        reading.lab,
        reading.read_by,
        sd=reading.sd,
        repeat=reading.repeat,
        name=name,
    )


def foretold_colour(
    lab: Lab, *, expected: float, within_90: float, evidence: Evidence, name: str = ""
) -> ColourShown:
    """Return a colour that the palette foretells, with its spread in CIEDE2000."""
    spread = (
        f"usually ΔE{NO_BREAK}{expected:.1f} off, 9 in 10 times at most {within_90:.1f}"
    )
    source = f"foretold from {RESTS_ON[evidence]}"
    return _shown(lab, name=name, source=source, spread=spread, is_foretold=True)


def _shown(
    lab: Lab, *, name: str, source: str, spread: str, is_foretold: bool = False
) -> ColourShown:
    nearest = _nearest(*lab)
    return ColourShown(
        name=name,
        lab=lab,
        hex_code=nearest.hex_code,
        is_true=nearest.is_true,
        source=source,
        spread=spread,
        is_foretold=is_foretold,
    )


def _spread(off: float | None) -> str:
    if off is None:
        return "nobody knows how far off"
    return f"usually ΔE{NO_BREAK}{off:.1f} off"


@lru_cache(maxsize=4096)
def _nearest(light: float, a: float, b: float) -> ScreenColour:
    return on_screen((light, a, b))


def _one_digit(value: float) -> str:
    text = f"{value:.1f}".replace("-", "−")
    return "0.0" if text == "−0.0" else text
