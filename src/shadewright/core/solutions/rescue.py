"""Rescue: a stock that went wrong in the making or in the keeping."""

from dataclasses import dataclass

from shadewright.core.quantities import (
    is_more,
    require_above_zero,
    require_between,
    require_mass,
    require_powder_strength,
    require_strength,
    require_volume,
)
from shadewright.core.solutions.strength import true_strength_percent


@dataclass(frozen=True, kw_only=True)
class WeighedRescue:
    """Too much or too little was weighed: make up to another volume instead.

    ``add_water_ml`` is None where nobody said what is in the vessel.
    """

    make_up_to_ml: float
    add_water_ml: float | None


@dataclass(frozen=True, kw_only=True)
class FilledRescue:
    """The stock was made up to another volume than planned.

    A weak stock wants powder (``add_powder_g``), a strong one wants water
    (``make_up_to_ml``, ``add_water_ml``); what it does not want is None.
    """

    true_strength_percent: float
    add_powder_g: float | None
    make_up_to_ml: float | None
    add_water_ml: float | None


@dataclass(frozen=True, kw_only=True)
class DriedRescue:
    """Water left the bottle: how strong it is now, and the water to give back."""

    true_strength_percent: float
    add_water_ml: float


def make_up_to_ml(
    *,
    powder_g: float,
    strength_percent: float,
    powder_strength_percent: float = 100.0,
) -> float:
    """Return the volume at which a weighed powder gives the strength wanted.

    V = m s / c                                                  (5)

    Parameters
    ----------
    powder_g : float
        Powder weighed, m; above zero. [g]
    strength_percent : float
        Strength wanted, c, in g per 100 ml; above 0 to 50. [%]
    powder_strength_percent : float
        Strength of the powder against the dye's standard, s; above 0 to 400. [%]

    Returns
    -------
    float
        Volume to make up to, V. [mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the volume would be above 1000 l.

    Notes
    -----
    Powder is never put back into the jar: the water is fitted to the powder.

    Examples
    --------
    >>> make_up_to_ml(powder_g=5.37, strength_percent=1.0)
    537.0
    """
    mass = require_mass(powder_g, name="Powder", argument="powder_g")
    powder_strength = require_powder_strength(powder_strength_percent)
    return require_volume(
        mass * powder_strength / require_strength(strength_percent),
        name="Volume to make up to",
        argument="powder_g",
    )


def rescue_weighed(
    *,
    powder_g: float,
    strength_percent: float,
    in_vessel_ml: float | None = None,
    powder_strength_percent: float = 100.0,
) -> WeighedRescue:
    """Return what to do when too much or too little powder was weighed.

    Parameters
    ----------
    powder_g : float
        Powder weighed; above zero. [g]
    strength_percent : float
        Strength wanted, in g per 100 ml; above 0 to 50. [%]
    in_vessel_ml : float or None
        What stands in the vessel already, where known. [mL]
    powder_strength_percent : float
        Strength of the powder against the dye's standard; above 0 to 400. [%]

    Returns
    -------
    WeighedRescue
        Volume to make up to, and water still to add. [mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or more stands in the vessel
        already than the powder is good for.

    Notes
    -----
    See ``make_up_to_ml``.

    Examples
    --------
    >>> rescue_weighed(powder_g=5.37, strength_percent=1.0, in_vessel_ml=500.0)
    WeighedRescue(make_up_to_ml=537.0, add_water_ml=37.0)
    """
    target = make_up_to_ml(
        powder_g=powder_g,
        strength_percent=strength_percent,
        powder_strength_percent=powder_strength_percent,
    )
    if in_vessel_ml is None:
        return WeighedRescue(make_up_to_ml=target, add_water_ml=None)
    inside = require_between(
        in_vessel_ml,
        least=0.0,
        most=target
        if is_more(in_vessel_ml, than=target)
        else max(target, in_vessel_ml),
        unit="ml",
        name="Liquid in the vessel",
        argument="in_vessel_ml",
        advice="With more it is past the mark: rescue it by the volume it came to.",
    )
    return WeighedRescue(
        make_up_to_ml=target,
        add_water_ml=target - inside if is_more(target, than=inside) else 0.0,
    )


def rescue_filled(
    *,
    powder_g: float,
    strength_percent: float,
    volume_ml: float,
    powder_strength_percent: float = 100.0,
) -> FilledRescue:
    """Return what to do when a stock was made up past the mark, or short of it.

    c' = m s/V;   dm = V (c − c')/s  if weak;   V' = m s/c  if strong   (6)

    Parameters
    ----------
    powder_g : float
        Powder weighed, m; above zero. [g]
    strength_percent : float
        Strength wanted, c, in g per 100 ml; above 0 to 50. [%]
    volume_ml : float
        Volume that it came to, V; above zero. [mL]
    powder_strength_percent : float
        Strength of the powder against the dye's standard, s; above 0 to 400. [%]

    Returns
    -------
    FilledRescue
        True strength, and powder or water to add. [%, g, mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    The room that the added powder takes is left out. A third way is to keep
    the stock and write its true strength on the label.

    Examples
    --------
    >>> weak = rescue_filled(powder_g=10.0, strength_percent=1.0, volume_ml=1040.0)
    >>> round(weak.true_strength_percent, 4), round(weak.add_powder_g, 4)
    (0.9615, 0.4)
    """
    found = true_strength_percent(
        powder_g=powder_g,
        volume_ml=volume_ml,
        powder_strength_percent=powder_strength_percent,
    )
    want = require_strength(strength_percent)
    is_weak = is_more(want, than=found)
    is_strong = is_more(found, than=want)
    target = make_up_to_ml(
        powder_g=powder_g,
        strength_percent=want,
        powder_strength_percent=powder_strength_percent,
    )
    missing = volume_ml * (want - found) / powder_strength_percent
    return FilledRescue(
        true_strength_percent=found,
        add_powder_g=missing if is_weak else None,
        make_up_to_ml=target if is_strong else None,
        add_water_ml=target - volume_ml if is_strong else None,
    )


def rescue_dried(
    *, strength_percent: float, volume_before_ml: float, volume_now_ml: float
) -> DriedRescue:
    """Return the strength of a stock that lost water, and the water to give back.

    c' = c V/V'                                                  (7)

    Parameters
    ----------
    strength_percent : float
        Strength before, c, in g per 100 ml; above 0 to 50. [%]
    volume_before_ml : float
        Volume before, V; above zero. [mL]
    volume_now_ml : float
        Volume now, V'; above zero and at most V. [mL]

    Returns
    -------
    DriedRescue
        Strength now and water to add. [%, mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the stock grew.

    Notes
    -----
    Only water leaves; the dye stays, though some may have dried on the walls:
    shake, and look for it.

    Examples
    --------
    >>> rescue_dried(strength_percent=1.0, volume_before_ml=600.0, volume_now_ml=480.0)
    DriedRescue(true_strength_percent=1.25, add_water_ml=120.0)
    """
    strength = require_strength(strength_percent)
    before = require_volume(
        volume_before_ml, name="Volume before", argument="volume_before_ml"
    )
    now = require_above_zero(
        volume_now_ml,
        most=before,
        unit="ml",
        name="Volume now",
        argument="volume_now_ml",
        advice="A bottle that dried out holds less than before.",
    )
    return DriedRescue(
        true_strength_percent=require_strength(
            strength * before / now, name="Strength now", argument="volume_now_ml"
        ),
        add_water_ml=before - now,
    )
