"""The water that a bath takes from soaking to the last rinse, as an estimate.

A rinse and a soak are never measured, so that both are reckoned from the yarn: what a
bowl holds that yarn lies loosely in. A meter on the tap knows better.
"""

from dataclasses import dataclass

from shadewright.core.quantities import require_between, require_mass

SOAK_ML_PER_G, RINSE_ML_PER_G = 10.0, 25.0
"""Water to a gram of yarn, in a soak and in one rinse (common practice: 20 to 30 to
rinse). [mL/g]"""
USUAL_RINSES = 3
"""Where nobody counted (common practice). [1]"""
_MOST_RINSES = 100


@dataclass(frozen=True, kw_only=True)
class WaterUse:
    """Where the water of one bath went, in mL."""

    soak_ml: float
    bath_ml: float
    rinse_ml: float

    @property
    def whole_ml(self) -> float:
        """All of it."""
        return self.soak_ml + self.bath_ml + self.rinse_ml


def water_use(*, fibre_mass_g: float, fresh_water_ml: float, rinses: int) -> WaterUse:
    """Return the water that a bath took, with its soak and its rinses.

    w = 10 W + V + 25 n W

    Parameters
    ----------
    fibre_mass_g : float
        Weight of the yarn, W; above zero. [g]
    fresh_water_ml : float
        Water that was filled into the pot, V; zero or more. [mL]
    rinses : int
        How often it was rinsed, n; zero or more. [1]

    Returns
    -------
    WaterUse
        Soak, bath and rinses. [mL]

    Raises
    ------
    OutOfRangeError
        If a number is out of range.

    Notes
    -----
    The two ratios are common practice, no published source: a soak of 10 and a rinse of
    20 to 30 mL to a gram. Rinsing under a running tap takes far more.

    Examples
    --------
    >>> use = water_use(fibre_mass_g=100.0, fresh_water_ml=2900.0, rinses=3)
    >>> use.soak_ml, use.rinse_ml, use.whole_ml
    (1000.0, 7500.0, 11400.0)
    """
    fibre_g = require_mass(fibre_mass_g, name="Yarn", argument="fibre_mass_g")
    fresh_ml = require_between(
        fresh_water_ml,
        least=0.0,
        most=1e7,
        unit="ml",
        name="Water in the pot",
        argument="fresh_water_ml",
    )
    count = require_between(
        rinses, least=0, most=_MOST_RINSES, unit="", name="Rinses", argument="rinses"
    )
    return WaterUse(
        soak_ml=SOAK_ML_PER_G * fibre_g,
        bath_ml=fresh_ml,
        rinse_ml=RINSE_ML_PER_G * count * fibre_g,
    )
