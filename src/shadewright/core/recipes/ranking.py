"""Which of many near recipes is the best: the one that will really come out nearest.

A recipe that is exact on paper misses in the pot: each dose is off by a little, and
the palette is not sure. Both make the covariance of its colour,

    V = V_palette + Σ_i u_i² g_i g_i'                               (5)

with u_i the relative standard error of dose i and g_i of equation 4; and no lot is
surer than the studio's own lots repeat (equation 6 of ``mixing``). Eight hundred
draws from it, each measured against the target, give the difference to expect and the
chance to come within tolerance. Two dyes that pull against each other, each at a high
dose, look good on paper and are found out here.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.colour.metamerism import additive_metamerism
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing.arranging import dyed_of
from shadewright.core.mixing.asking import lab_under, poorest
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.posterior.predicting import foretold
from shadewright.core.mixing.spreads import NINE_IN_TEN, as_lots_differ, drawn_colours
from shadewright.core.mixing.swatches import Doses, Evidence, Mix, seen_under_lights
from shadewright.core.recipes.colouring import slopes_by_log_dose
from shadewright.core.recipes.curves import Curves
from shadewright.core.recipes.targets import BULB, DAY, Target, steady_lab
from shadewright.core.recipes.wishes import Wishes

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

SAME_DE, SAME_EXPECTED = 0.001, 0.05
"""Differences closer than this count as the same when the next rule decides. [1]"""
_GRAMS_PER_KG_AND_PERCENT = 10.0


@dataclass(frozen=True, kw_only=True)
class Recipe:
    """A recipe as the palette foretells it, in % on weight of fibre.

    ``de`` is CIEDE2000 to the target in daylight, ``de_by_light`` under each light of
    the target; ``metamerism`` the index under the first light besides daylight, None
    where the target is known in daylight alone; ``unsteady`` how far the yarn leaves
    its own colour under the bulb; ``expected_de`` and ``chance`` count dosing and the
    palette's spread, and so do ``within_10`` and ``within_90``, the differences that
    one pot in ten and nine in ten stay under. ``cost_per_kg`` is that of dye for a
    kilogram of yarn.
    """

    doses: Doses
    lab: Lab
    de: float
    de_by_light: tuple[tuple[Light, float], ...]
    metamerism: float | None
    unsteady: float
    expected_de: float
    within_10: float
    within_90: float
    chance: float
    cost_per_kg: float | None
    evidence: Evidence

    @property
    def total_depth_percent(self) -> float:
        """Depth of all dyes together."""
        return sum(depth for _dye, depth in self.doses)


def ranked(
    doses: Sequence[Doses],
    *,
    palette: Palette,
    base: str,
    curves: Curves,
    dyes: tuple[str, ...],
    target: Target,
    wishes: Wishes,
    tolerance: float,
) -> tuple[Recipe, ...]:
    """Return recipes with all that is foretold of them, the best first.

    Parameters
    ----------
    doses : sequence of tuple
        Recipes. [%]
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    curves : Curves
        Dyes on it. [1]
    dyes : tuple of str
        Which, in the order of the curves. [-]
    target : Target
        What is wanted. [1]
    wishes : Wishes
        Errors of dosing and prices. [-]
    tolerance : float
        CIEDE2000 that still passes. [1]

    Returns
    -------
    tuple of Recipe
        By expected difference; where only daylight is known by difference, then by
        expected difference, by steadiness and by total depth. [1]
    """
    mixes = [Mix(base=base, doses=each, session=wishes.session) for each in doses]
    told = foretold(
        dyed_of(mixes, palette.names),
        palette.known,
        seen_under_lights(DAY),
        width=palette.width,
    )
    dosing = dosing_covariance(doses, curves, dyes, wishes)
    spread = as_lots_differ(
        told.covariance + dosing, told.lot + dosing, repeats=palette.repeats
    )
    away = ciede2000_arrays(_array(target.lab), drawn_colours(told.seen, spread))
    low, high = _one_and_nine_in_ten(away)
    under = {
        light: lab_under(told.reflectance, light=light) for light in _lights(target)
    }
    found = []
    for place, each in enumerate(doses):
        seen = {light: Lab(*labs[place].tolist()) for light, labs in under.items()}
        found.append(
            Recipe(
                doses=each,
                lab=seen[DAY],
                de=ciede2000(target.lab, seen[DAY]),
                de_by_light=tuple(
                    (light, ciede2000(lab, seen[light])) for light, lab in target.labs
                ),
                metamerism=_metamerism(target, seen),
                unsteady=ciede2000(steady_lab(seen[DAY]), seen[BULB]),
                expected_de=float(away[place].mean()),
                within_10=float(low[place]),
                within_90=float(high[place]),
                chance=float((away[place] <= tolerance).mean()),
                cost_per_kg=_cost(each, wishes),
                evidence=poorest(mixes[place], palette),
            )
        )
    return _in_order(found, target)


def dosing_covariance(
    doses: Sequence[Doses], curves: Curves, dyes: tuple[str, ...], wishes: Wishes
) -> "Floats":
    """Return what the errors of doses put into the covariance of each colour.

    Parameters
    ----------
    doses : sequence of tuple
        Recipes. [%]
    curves : Curves
        Dyes on a base. [1]
    dyes : tuple of str
        Which, in the order of the curves. [-]
    wishes : Wishes
        Relative standard errors. [1]

    Returns
    -------
    ndarray, shape (n, 3, 3)
        The sum in equation 5. [1]
    """
    import numpy as np

    sets, depths = arrays_of(doses, dyes)
    errors = np.array(
        [wishes.dose_errors.get(dye, wishes.dose_error) for dye in dyes] + [0.0]
    )
    moved = slopes_by_log_dose(curves, sets, depths) * errors[sets].T[:, :, None]
    found: Floats = np.einsum("mki,mkj->mij", moved, moved)
    return found


def arrays_of(doses: Sequence[Doses], dyes: tuple[str, ...]) -> "tuple[Whole, Floats]":
    """Return recipes as places of dyes and depths, filled up with no dye.

    Parameters
    ----------
    doses : sequence of tuple
        Recipes. [%]
    dyes : tuple of str
        Dyes in order. [-]

    Returns
    -------
    tuple of (ndarray, shape (dyes, n); ndarray, shape (dyes, n))
        Places, and depths. [%]
    """
    import numpy as np

    most = max([1, *map(len, doses)])
    sets = np.full((most, len(doses)), len(dyes))
    depths = np.zeros(sets.shape)
    for column, each in enumerate(doses):
        for row, (dye, depth) in enumerate(each):
            sets[row, column], depths[row, column] = dyes.index(dye), depth
    return sets, depths


def _one_and_nine_in_ten(away: "Floats") -> "Floats":
    import numpy as np

    found: Floats = np.percentile(away, (100.0 - NINE_IN_TEN, NINE_IN_TEN), axis=1)
    return found


def _in_order(found: Sequence[Recipe], target: Target) -> tuple[Recipe, ...]:
    """Return recipes in order, by the rule for what is known of the target."""
    nearest = min(each.de for each in found)

    def in_one_light(each: Recipe) -> tuple[float, ...]:
        return (
            (each.de - nearest) // SAME_DE,
            each.expected_de // SAME_EXPECTED,
            each.unsteady,
            each.total_depth_percent,
        )

    def in_many(each: Recipe) -> tuple[float, ...]:
        return (each.expected_de, each.total_depth_percent)

    rule = in_one_light if target.is_known_under_one else in_many
    return tuple(sorted(found, key=rule))


def _lights(target: Target) -> tuple[Light, ...]:
    return tuple(dict.fromkeys((DAY, BULB, *(light for light, _lab in target.labs))))


def _array(lab: Lab) -> "Floats":
    import numpy as np

    return np.array(lab, dtype=float)


def _metamerism(target: Target, seen: dict[Light, Lab]) -> float | None:
    if target.is_known_under_one:
        return None
    light, lab = target.labs[1]
    return additive_metamerism(
        standard_reference=target.lab,
        sample_reference=seen[DAY],
        standard_test=lab,
        sample_test=seen[light],
    )


def _cost(doses: Doses, wishes: Wishes) -> float | None:
    """Return the cost of dye for a kilogram of yarn, where every price is known."""
    if not all(dye in wishes.prices for dye, _depth in doses):
        return None
    grams = ((dye, _GRAMS_PER_KG_AND_PERCENT * depth) for dye, depth in doses)
    return sum(wishes.prices[dye] * mass_g for dye, mass_g in grams)
