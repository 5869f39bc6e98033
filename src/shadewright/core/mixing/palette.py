"""A palette: what is known of some dyes on some bases, and what that rests on."""

from dataclasses import dataclass

from shadewright.core.mixing.arranging import Names
from shadewright.core.mixing.posterior.known import Known
from shadewright.core.mixing.swatches import Evidence, Swatch

METHOD = "joint Kubelka-Munk posterior 1"


@dataclass(frozen=True, kw_only=True)
class Suspect:
    """A swatch that the others do not believe.

    ``size`` is how odd it is, 1 being usual; ``distance`` CIEDE2000 to what the others
    foretell; ``dosed`` the factor on one dose that would explain it best.
    """

    swatch: Swatch
    size: float
    distance: float
    dosed: float


@dataclass(frozen=True, kw_only=True, eq=False)
class Palette:
    """A fitted palette.

    ``width`` is κ; ``evidence`` the best kind behind each dye; ``depths`` the least
    and the greatest depth dyed of each; ``left_out`` CIEDE2000 between swatches and
    what the others foretell, of those whose dyes stand in others too. ``repeats`` is
    what each number of Lab scatters by between lots of one recipe, 0 where not known.
    """

    names: Names
    known: Known
    width: float
    evidence: tuple[Evidence, ...]
    depths: tuple[tuple[float, float], ...]
    left_out: tuple[float, ...]
    method: str = METHOD
    repeats: float = 0.0


@dataclass(frozen=True, kw_only=True, eq=False)
class Learned:
    """A palette, the swatches that it rests on and those that were set aside.

    ``left_out`` is that of the palette by the swatch's number. ``is_other_light``
    tells that the colours look read under D50 and not D65.
    """

    palette: Palette
    used: tuple[Swatch, ...]
    suspects: tuple[Suspect, ...]
    left_out: tuple[tuple[int, float], ...]
    is_other_light: bool
