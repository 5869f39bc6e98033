"""What doses will really give here: with the errors of these bottles and tools."""

from shadewright.core.mixing import Palette
from shadewright.core.recipes import Recipe, Target, Wishes
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.ranking import ranked
from shadewright.workflows.shades.find_wishes import AtShelf
from shadewright.workflows.shades.swatches import Doses


def in_the_pot(
    doses: Doses,
    *,
    palette: Palette,
    base: str,
    target: Target,
    at: AtShelf,
    tolerance: float,
) -> Recipe:
    """Return doses by name with all that is foretold of them against a target."""
    dyes = tuple(name for name, _depth in doses)
    errors = {name: at.dose_error(name, depth) for name, depth in doses}
    (found,) = ranked(
        [doses],
        palette=palette,
        base=base,
        curves=curves_of(palette, base, dyes),
        dyes=dyes,
        target=target,
        wishes=Wishes(dose_errors=errors),
        tolerance=tolerance,
    )
    return found
