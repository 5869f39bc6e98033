"""A bath that came out beside its target: what to add.

Dye can be added to a bath and never taken out. What was measured first says something
of the bath itself: it came out otherwise than foretold, because doses, stocks or the
day were a little off. With g_i of equation 4 and V what the palette did not know,

    ln e = τ² G' (V + σ² I)⁻¹ (measured − foretold)                  (8)

is each dye's factor e; what no factor explains is kept as a shift of the colour. An
addition carries half of a factor (its root): if the first pour was short the
addition is not, if the stock is weak it is, and nobody knows which.

The dyes that are in the bath come first. Only where they do not get there is one more
dye looked for. All of it at once may overshoot, and there is no way back: a share of
70 to 80 % goes in first, the less the more unsure the bath is.
"""

from dataclasses import dataclass, replace
from math import sqrt
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.colour.differences.words import difference_words
from shadewright.core.mixing.asking import require_known, told_mixes
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import DOSE_ERROR, LEAST_LAB_SD, Doses, Mix
from shadewright.core.recipes.colouring import labs_of, slopes_by_log_dose
from shadewright.core.recipes.curves import Curves, curves_of
from shadewright.core.recipes.search.descending import Patience, descended
from shadewright.core.recipes.search.stepping import Box
from shadewright.core.recipes.targets import DAY, aim_of, in_daylight, target_of_labs
from shadewright.core.recipes.wishes import Wishes, most_of_each, require_wishes
from shadewright.errors import MissingError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

LEAST_SHARE, MOST_SHARE = 0.7, 0.8
"""Share of an addition that goes in first (common practice). [1]"""
GOOD_ENOUGH, WORTH_ANOTHER_DYE = 0.5, 0.3
"""CIEDE2000 that the bath's own dyes may leave; and what one more must gain. [1]"""
_NINE_IN_TEN = 1.28
_MOST_LOG = 0.7
_FINE = Patience(steps=25, gain=1e-7, enough=1e-8)
_PLAIN = Wishes()


@dataclass(frozen=True, kw_only=True)
class Correction:
    """What to add to a bath, in % on weight of fibre, and where that leads.

    ``first`` is the share of it to add before looking again; ``words`` how the colour
    then still differs from the target.
    """

    additions: Doses
    share: float
    de_before: float
    de_after: float
    lab_after: Lab
    is_reachable: bool
    words: str

    @property
    def first(self) -> Doses:
        """What goes in first."""
        return tuple((dye, self.share * depth) for dye, depth in self.additions)


@dataclass(frozen=True, kw_only=True, eq=False)
class _Bath:
    """What is thought to be in the bath: depths, factors, shift, how unsure."""

    depths: "Floats"
    factors: "Floats"
    shift: "Floats"
    unsure: float


def correction(
    palette: Palette,
    *,
    base: str,
    doses: Doses,
    measured: Lab,
    target: Lab,
    wishes: Wishes = _PLAIN,
    tolerance: float = 1.0,
) -> Correction:
    """Return what to add to a bath whose yarn was measured.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    doses : tuple of (str, float)
        What went into the bath. [%]
    measured : Lab
        The yarn now, rinsed and dry (D65/10°). [1]
    target : Lab
        What is wanted. [1]
    wishes : Wishes
        Dyes that may not be added, most of all together, the day. [%]
    tolerance : float
        CIEDE2000 that passes. [1]

    Returns
    -------
    Correction
        Additions, never negative; none where none would help. [%]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    MissingError
        If nothing went into the bath.
    OutOfRangeError
        If a wish cannot be.
    """
    require_known([Mix(base=base, doses=doses)], palette)
    require_wishes(wishes, palette)
    if not doses:
        raise MissingError(
            name="Dose", advice="Say what went into the bath.", argument="doses"
        )
    own = tuple(dye for dye, _depth in doses)
    others = tuple(
        dye for dye in palette.names.dyes if dye not in {*own, *wishes.unwanted}
    )
    curves = curves_of(palette, base, (*own, *others))
    bath = _bath(palette, base, doses, measured, curves, wishes)
    plan = _Plan(palette=palette, curves=curves, bath=bath, target=target, own=own)
    best = _best_additions(plan, others, wishes)
    return _answer(plan, best, (*own, *others), measured, tolerance)


@dataclass(frozen=True, kw_only=True, eq=False)
class _Plan:
    """Where a bath stands and where it should go."""

    palette: Palette
    curves: Curves
    bath: _Bath
    target: Lab
    own: tuple[str, ...]


def _bath(
    palette: Palette,
    base: str,
    doses: Doses,
    measured: Lab,
    curves: Curves,
    wishes: Wishes,
) -> _Bath:
    """Return what the measurement says of the bath (equation 8)."""
    import numpy as np

    mix = Mix(base=base, doses=doses, session=wishes.session)
    # Why this lot is off is what is asked: the dyes and their doses, not chance.
    told = told_mixes([mix], palette=replace(palette, repeats=0.0))
    depths = np.array([depth for _dye, depth in doses])
    places = np.arange(len(depths))[:, None]
    by_log = slopes_by_log_dose(curves, places, depths[:, None])[0].T
    day, dose = palette.known.sizes.session, max(wishes.dose_error, DOSE_ERROR)
    known = told.covariance[0] + dose**2 * by_log @ by_log.T
    away = np.array(measured) - told.lab[0]
    logs = _logs(by_log, known, away, size=day**2 + dose**2)
    found = depths * np.exp(logs)
    full = np.zeros((1, curves.count))
    full[0, : len(found)] = found
    return _Bath(
        depths=found,
        factors=np.exp(logs),
        shift=np.array(measured) - labs_of(curves, full)[0],
        unsure=sqrt(day**2 + dose**2 + (0.5 * float(np.abs(logs).max())) ** 2),
    )


def _logs(
    by_log: "Floats", known: "Floats", away: "Floats", *, size: float
) -> "Floats":
    """Return the logarithms of the factors (equation 8).

    Where the colour is off by more than was to be expected, so are the factors.
    """
    import numpy as np

    whole = known + LEAST_LAB_SD**2 / 3.0 * np.eye(3)
    wild = max(1.0, float(away @ np.linalg.solve(whole, away)) / 3.0)
    whole += (wild - 1.0) * size * by_log @ by_log.T
    found = wild * size * by_log.T @ np.linalg.solve(whole, away)
    return np.clip(found, -_MOST_LOG, _MOST_LOG)


def _best_additions(plan: _Plan, others: tuple[str, ...], wishes: Wishes) -> "Floats":
    """Return what to add of each dye, with at most one that is not in the bath."""
    import numpy as np

    own = len(plan.own)
    alone = np.arange(own)[:, None]
    additions, value = _added(plan, alone, wishes)
    found = np.zeros(plan.curves.count)
    found[:own] = additions[:, 0]
    left = sqrt(float(value[0]))
    if left <= GOOD_ENOUGH or not others:
        return found
    every = np.arange(own, own + len(others))
    sets = np.concatenate([np.repeat(alone, len(others), axis=1), every[None]])
    additions, value = _added(plan, sets, wishes)
    best = int(np.argmin(value))
    if sqrt(float(value[best])) < left - WORTH_ANOTHER_DYE:
        found[sets[:, best]] = additions[:, best]
    return found


def _added(
    plan: _Plan, sets: "NDArray[np.intp]", wishes: Wishes
) -> "tuple[Floats, Floats]":
    """Return the best additions of each set of dyes, and f there."""
    import numpy as np

    curves, bath, own = plan.curves, plan.bath, len(plan.own)
    least = np.zeros(sets.shape)
    least[:own] = bath.depths[:, None]
    most = _most(plan, wishes)[sets]
    box = Box(
        least=least,
        most=np.maximum(most, least),
        total=max(wishes.most_depth_percent, float(bath.depths.sum())),
    )
    wanted = Lab(*(np.array(plan.target) - bath.shift).tolist())
    aim = aim_of(
        target_of_labs({DAY: wanted}), ground=curves.ground, surface=curves.surface
    )
    depths, value = descended(in_daylight(aim), curves.of(sets), least, box, _FINE)
    more = depths - least
    more[:own] /= np.sqrt(bath.factors)[:, None]
    return np.where(more < wishes.least_depth_percent, 0.0, more), value


def _most(plan: _Plan, wishes: Wishes) -> "Floats":
    """Return the most of each dye; none of those that may not be added."""
    import numpy as np

    names = plan.palette.names.dyes
    dyes = (*plan.own, *(d for d in names if d not in {*plan.own, *wishes.unwanted}))
    most = most_of_each(replace(wishes, wanted=()), plan.palette, dyes)
    return np.where([dye in wishes.unwanted for dye in dyes], 0.0, most)


def _answer(
    plan: _Plan,
    additions: "Floats",
    dyes: tuple[str, ...],
    measured: Lab,
    tolerance: float,
) -> Correction:
    """Return the answer; nothing is added where that would not help."""
    import numpy as np

    bath, own = plan.bath, len(plan.own)
    carried = additions.copy()
    carried[:own] *= np.sqrt(bath.factors)
    carried[:own] += bath.depths
    after = Lab(*(labs_of(plan.curves, carried[None])[0] + bath.shift).tolist())
    before, left = ciede2000(plan.target, measured), ciede2000(plan.target, after)
    if left >= before:
        additions, after, left = np.zeros_like(additions), measured, before
    share = 1.0 / (1.0 + _NINE_IN_TEN * bath.unsure)
    return Correction(
        additions=tuple(
            (dye, float(depth))
            for dye, depth in zip(dyes, additions, strict=True)
            if depth > 0.0
        ),
        share=min(MOST_SHARE, max(LEAST_SHARE, share)),
        de_before=before,
        de_after=left,
        lab_after=after,
        is_reachable=left <= tolerance,
        words=difference_words(plan.target, after),
    )
