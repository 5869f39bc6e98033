"""A studio with six swatches, two bottles and a recipe, its palette fitted."""

from dataclasses import dataclass

from shadewright.records.models import Base, Dye
from shadewright.workflows.shades.fits import fit_now
from tests.workflows.pots import Ready, ready
from tests.workflows.shades.swatch_rows import kept_singles


@dataclass(frozen=True)
class Fitted:
    """The bath that stands ready, the base of the swatches, the dyes by name."""

    pot: Ready
    base: Base
    dyes: dict[str, int]

    def mix(self, **depths: float) -> tuple[tuple[int, float], ...]:
        """Return dyes by number with their depths."""
        return tuple((self.dyes[dye], depth) for dye, depth in depths.items())


def fitted() -> Fitted:
    """Fit six dyes on the base of a bath that stands ready; Gorse has a bottle."""
    pot = ready()
    base = Base.objects.get(pk=pot.base)
    kept_singles(base)
    fit_now(why="six swatches")
    dyes = {row.name: row.pk for row in Dye.objects.all()}
    return Fitted(pot=pot, base=base, dyes=dyes)
