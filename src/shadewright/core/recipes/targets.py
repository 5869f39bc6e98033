"""What is wanted: a colour known as a spectrum, under several lights, or under one.

A spectrum says how a colour looks under any light; a recipe can then be asked to look
like it by the window and in the shop. Lab under one light, or a screen's colour, says
nothing of the shop. Of the many recipes that give it, one that stays as it is from
light to light is then the better one: as a second aim of small weight stands what an
eye that has grown used to the bulb would call the same colour.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from shadewright.core.colour.adaptation import adapted_lab
from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.colour.spectra.weights import weight_table
from shadewright.core.mixing.asking import lab_under
from shadewright.core.mixing.model.kubelka_munk import (
    ks_of_reflectance,
    reflectance_of_ks,
    slope_of_reflectance,
)
from shadewright.core.mixing.model.seeing import Seen, as_seen, as_seen_slope
from shadewright.core.mixing.swatches import seen_under_lights
from shadewright.core.recipes.search.problem import Aim
from shadewright.errors import MissingError, OutOfRangeError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

DAY, BULB = Light.D65, Light.A
OTHER_LIGHTS_SHARE = 0.5
"""How much a difference counts under every light but daylight, w. [1]"""
STEADY_SHARE = 0.1
"""How much steadiness counts where only daylight is known. [1]"""
_BANDS = 31
_DARKEST, _PALEST = 0.0005, 0.995


@dataclass(frozen=True, kw_only=True)
class Target:
    """A colour that is wanted: Lab under each light, daylight first.

    ``reflectance`` is its spectrum from 400 to 700 nm, where that is known.
    """

    labs: tuple[tuple[Light, Lab], ...]
    reflectance: tuple[float, ...] | None = None

    @property
    def lab(self) -> Lab:
        """The colour in daylight (D65/10°)."""
        return self.labs[0][1]

    @property
    def is_known_under_one(self) -> bool:
        """Whether only daylight is known."""
        return len(self.labs) == 1


def target_of_labs(labs: Mapping[Light, Lab]) -> Target:
    """Return a target known by its Lab under one light or several.

    Parameters
    ----------
    labs : mapping of Light to Lab
        L*, a*, b* for the 10° observer; D65 must be among them. [1]

    Returns
    -------
    Target
        Daylight first. [1]

    Raises
    ------
    MissingError
        If daylight is not among the lights.
    """
    if DAY not in labs:
        raise MissingError(
            name="The target under D65",
            advice="Give its Lab in daylight, D65 and 10°.",
            argument="target",
        )
    others = [(light, Lab(*lab)) for light, lab in labs.items() if light != DAY]
    return Target(labs=((DAY, Lab(*labs[DAY])), *others))


def target_of_spectrum(
    reflectance: tuple[float, ...], *, lights: tuple[Light, ...] = (BULB,)
) -> Target:
    """Return a target known by its spectrum.

    Parameters
    ----------
    reflectance : tuple of float
        31 reflectances from 400 to 700 nm, above 0 to 1.2. [1]
    lights : tuple of Light
        Lights under which it is to be met, besides daylight. [-]

    Returns
    -------
    Target
        Its Lab under each light, and the spectrum. [1]

    Raises
    ------
    OutOfRangeError
        If it is no such spectrum.
    """
    import numpy as np

    if len(reflectance) != _BANDS or not all(0.0 < r <= 1.2 for r in reflectance):
        raise OutOfRangeError(
            name="The spectrum",
            given=f"{len(reflectance)} numbers from {min(reflectance, default=0):g}",
            allowed="31 reflectances from 400 to 700 nm, as fractions above 0",
            argument="target",
        )
    under = (DAY, *(light for light in dict.fromkeys(lights) if light != DAY))
    row = np.array([reflectance])
    labs = [(light, Lab(*lab_under(row, light=light)[0].tolist())) for light in under]
    return Target(labs=tuple(labs), reflectance=reflectance)


def steady_lab(lab: Lab, light: Light = BULB) -> Lab:
    """Return what a colour would read under a light if it looked as in daylight.

    Parameters
    ----------
    lab : Lab
        The colour under D65, 10°. [1]
    light : Light
        The other light. [-]

    Returns
    -------
    Lab
        The colour there, by Bradford's adaptation. [1]
    """
    return adapted_lab(
        lab,
        from_white=weight_table(light=DAY).white,
        to_white=weight_table(light=light).white,
    )


def aim_of(target: Target, *, ground: "Floats", surface: float) -> Aim:
    """Return a target on a base, as the search takes it.

    Parameters
    ----------
    target : Target
        What is wanted. [1]
    ground : ndarray, shape (31,)
        K/S of the bare yarn. [1]
    surface : float
        Surface term. [1]

    Returns
    -------
    Aim
        Under daylight and every other light of the target, or the bulb. [-]
    """
    import numpy as np

    labs, share = list(target.labs), OTHER_LIGHTS_SHARE
    if target.is_known_under_one:
        labs, share = [*labs, (BULB, steady_lab(target.lab))], STEADY_SHARE
    lights = tuple(light for light, _lab in labs)
    wanted = np.array([lab for _light, lab in labs], dtype=float)
    shares = np.array([[1.0], *([share] for _light in lights[1:])])
    weights = _weights(lights).transpose(0, 2, 1).reshape(-1, _BANDS)
    return Aim(
        weights=(1.0 - surface) * weights,
        surface=surface,
        ground=ground,
        lab=wanted,
        shares=shares,
        start=_start(target, wanted, lights, surface),
    )


def in_daylight(aim: Aim) -> Aim:
    """Return the same aim with all lights but daylight left out.

    Parameters
    ----------
    aim : Aim
        What is wanted. [-]

    Returns
    -------
    Aim
        In daylight alone. [-]
    """
    return Aim(
        weights=aim.weights[:3],
        surface=aim.surface,
        ground=aim.ground,
        lab=aim.lab[:1],
        shares=aim.shares[:1],
        start=aim.start,
    )


@cache
def _weights(lights: tuple[Light, ...]) -> "Floats":
    """Return weights to XYZ over the white, (lights, 31, 3)."""
    found = seen_under_lights(*lights).weights
    assert found is not None  # ruff: ignore[assert] - only a spectrum has none
    return found


def _start(
    target: Target, wanted: "Floats", lights: tuple[Light, ...], surface: float
) -> "Floats":
    """Return K/S of the target, or of a smooth spectrum of its colour."""
    import numpy as np

    if target.reflectance is None:
        return smooth_ks(wanted, seen_under_lights(*lights), surface=surface)
    inside = (np.array(target.reflectance) - surface) / (1.0 - surface)
    return ks_of_reflectance(np.clip(inside, _DARKEST, _PALEST))


def smooth_ks(lab: "Floats", seen: Seen, *, surface: float) -> "Floats":
    """Return K/S of a smooth spectrum that comes near a colour.

    |10 (Lab − wanted)|² + |D ln K/S|² → least                       (3)

    Parameters
    ----------
    lab : ndarray, shape (lights, 3)
        The colour under each light. [1]
    seen : Seen
        Those lights. [-]
    surface : float
        Surface term. [1]

    Returns
    -------
    ndarray, shape (31,)
        K/S. [1]

    Notes
    -----
    D are the differences of neighbours. Twenty steps of Gauss and Newton from a grey,
    each band by at most a factor e: a start need be no better.
    """
    import numpy as np

    logs = np.zeros(_BANDS)
    rough = np.diff(np.eye(_BANDS), axis=0)
    for _step in range(20):
        ks = np.exp(logs)
        inside = reflectance_of_ks(ks)
        outside = surface + (1.0 - surface) * inside[None]
        away = 10.0 * (as_seen(outside, seen)[0] - lab.ravel())
        by_log = (1.0 - surface) * slope_of_reflectance(ks) * ks
        slope = 10.0 * as_seen_slope(outside, seen)[0] * by_log
        normal = slope.T @ slope + rough.T @ rough + 1e-3 * np.eye(_BANDS)
        right = slope.T @ away + rough.T @ (rough @ logs)
        logs = np.clip(logs - np.clip(np.linalg.solve(normal, right), -1, 1), -9, 7)
    return np.exp(logs)
