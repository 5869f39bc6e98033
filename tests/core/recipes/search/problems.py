"""Searches over invented dyes in proportion."""

from importlib import import_module
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing.asking import lab_under
from shadewright.core.mixing.model.kubelka_munk import (
    ks_of_reflectance,
    reflectance_of_ks,
)
from shadewright.core.mixing.swatches import seen_under_lights
from shadewright.core.recipes.search.descending import Sought
from shadewright.core.recipes.search.evaluating import jacobian_of
from shadewright.core.recipes.search.problem import Aim, Dyes
from tests.core.mixing.worlds import world

Floats = NDArray[np.float64]

minimize: Any = import_module("scipy.optimize").minimize

LIGHTS = (Light.D65, Light.A)
SURFACE = 0.004


def sought(
    dyes: int, *, seed: int, total: float = 6.0, in_reach: bool = True
) -> Sought:
    """Return a search for a mix of three dyes, or for a colour out of reach."""
    draws = np.random.default_rng(seed)
    truth = world(seed % 5, "flags", 0.0, dyes=dyes)
    unit = truth.shapes * truth.gains[:, None]
    amounts = np.zeros(dyes)
    amounts[draws.choice(dyes, 3, replace=False)] = np.exp(draws.uniform(-3, 0.2, 3))
    inside = reflectance_of_ks(truth.ground + amounts @ unit)
    bend = np.exp(0.1 * np.sin(np.linspace(0, draws.uniform(3, 12), 31)))
    whole = SURFACE + (1 - SURFACE) * inside * bend
    if not in_reach:
        nm = np.linspace(400, 700, 31)
        whole = 0.01 + 0.9 / (1 + np.exp((draws.uniform(430, 650) - nm) / 8))
    weights = seen_under_lights(*LIGHTS).weights
    assert weights is not None
    aim = Aim(
        weights=(1 - SURFACE) * weights.transpose(0, 2, 1).reshape(-1, 31),
        surface=SURFACE,
        ground=truth.ground,
        lab=np.array([lab_under(whole[None], light=light)[0] for light in LIGHTS]),
        shares=np.array([[1.0], [0.5]]),
        start=ks_of_reflectance((whole - SURFACE) / (1 - SURFACE)),
    )
    each = np.append(np.full(dyes, 6.0), 0.0)
    return Sought(dyes=Dyes(unit=unit), aim=aim, each=each, total=total)


def by_slsqp(search: Sought, dyes: tuple[int, ...], start: float) -> float:
    """Return f of the best recipe of one set, as scipy finds it from a start."""
    mixed = search.dyes.of(np.array(dyes)[:, None])

    def asked(amounts: Floats) -> tuple[float, Floats]:
        here = np.maximum(amounts, 0.0)[:, None]
        found, slopes = jacobian_of(search.aim, mixed, here)
        return float(found.value[0]), 2.0 * np.einsum("km,kim->i", found.rows, slopes)

    total = {"type": "ineq", "fun": lambda x: search.total - x.sum()}
    found = minimize(
        asked,
        np.full(len(dyes), start),
        jac=True,
        method="SLSQP",
        bounds=[(0.0, 6.0)] * len(dyes),
        constraints=[total],
        options={"maxiter": 80, "ftol": 1e-9},
    )
    return float(found.fun)


def exhaustive(search: Sought, start: float) -> float:
    """Return f of the best recipe of all sets up to four dyes."""
    return min(
        by_slsqp(search, dyes, start)
        for size in range(1, 5)
        for dyes in combinations(range(search.dyes.count), size)
    )
