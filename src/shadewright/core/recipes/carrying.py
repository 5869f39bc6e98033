"""A recipe carried to another base: the doses there that come out like it here.

The spectrum that the palette foretells on the first base is the target on the second;
the dyes stay the same, so that both skeins look alike under any light as nearly as two
yarns can.
"""

from dataclasses import replace

from shadewright.core.mixing.asking import require_known
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Doses, Mix
from shadewright.core.recipes.colouring import reflectances_of
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.matching import bench_of
from shadewright.core.recipes.polishing import polished
from shadewright.core.recipes.ranking import Recipe, arrays_of, ranked
from shadewright.core.recipes.sifting import distinct
from shadewright.core.recipes.targets import target_of_spectrum
from shadewright.core.recipes.wishes import Wishes

_PLAIN = Wishes()


def carried(
    palette: Palette,
    *,
    doses: Doses,
    from_base: str,
    to_base: str,
    wishes: Wishes = _PLAIN,
    tolerance: float = 1.0,
) -> Recipe:
    """Return the recipe on another base whose colour is nearest to this one's.

    Parameters
    ----------
    palette : Palette
        What was learned, of both bases. [-]
    doses : tuple of (str, float)
        The recipe. [%]
    from_base : str
        The yarn that it was made for. [-]
    to_base : str
        The other yarn. [-]
    wishes : Wishes
        Limits, errors of dosing, prices. [-]
    tolerance : float
        CIEDE2000 that still passes. [1]

    Returns
    -------
    Recipe
        Doses of the same dyes; ``de`` is what the other yarn cannot follow, and
        ``expected_de`` counts what is not known of the dyes on it. [1]

    Raises
    ------
    NotFoundError
        If a base or a dye is not in the palette.

    Notes
    -----
    What is not known of the dyes on the first base is left out: the target is the
    colour foretold there. Give the colour that was read as a target to ``matches``
    where there is one.
    """
    import numpy as np

    require_known([Mix(base=from_base, doses=doses)], palette)
    require_known([Mix(base=to_base, doses=doses)], palette)
    dyes = tuple(dye for dye, _depth in doses)
    here = curves_of(palette, from_base, dyes)
    depths = np.array([[depth for _dye, depth in doses]])
    spectrum = reflectances_of(here, depths)[0]
    target = target_of_spectrum(tuple(spectrum.tolist()))
    there = curves_of(palette, to_base, dyes)
    kept = replace(wishes, wanted=(), unwanted=())
    bench = bench_of(palette, there, dyes, target, kept)
    found = polished(bench, *arrays_of([doses], dyes))
    (recipe,) = ranked(
        distinct(found, dyes),
        palette=palette,
        base=to_base,
        curves=there,
        dyes=dyes,
        target=target,
        wishes=kept,
        tolerance=tolerance,
    )
    return recipe
