"""How long a recipe search takes, and how right it is, against scipy's SLSQP.

Run with the project's own Python: ``.venv/bin/python bench/recipe_search.py``. The
baseline is SLSQP for each set of dyes from a start of non-negative least squares, with
the same objective and exact slopes, measured on a sample of sets in the same run and
multiplied by their number. The goal is 1 000 times its speed. ``--targets 300`` asks
of that many targets, two in three in reach, whether the best recipe of an exhaustive
SLSQP over ten dyes is nearer than ours; it takes minutes.
"""

import os

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

import argparse
import statistics
import sys
import time
import tracemalloc
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from importlib import import_module
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray

from shadewright.core.colour import Light
from shadewright.core.mixing.asking import lab_under
from shadewright.core.mixing.model.kubelka_munk import (
    ks_of_reflectance,
    reflectance_of_ks,
    with_surface,
)
from shadewright.core.mixing.model.shapes import shape_library
from shadewright.core.mixing.swatches import seen_under_lights
from shadewright.core.recipes.search.descending import Sought
from shadewright.core.recipes.search.evaluating import jacobian_of
from shadewright.core.recipes.search.problem import Aim, Dyes
from shadewright.core.recipes.search.sets import ranks_of
from shadewright.core.recipes.search.widening import searched

Floats = NDArray[np.float64]

SURFACE, TOTAL = 0.005, 6.0
GOAL, SAME = 1000.0, 1e-3
LIGHTS = (Light.D65, Light.A)
GROWTH = (20, 40, 80, 120)


@dataclass(frozen=True)
class Palette:
    """Invented dyes on a pale ground."""

    unit: Floats
    ground: Floats

    def search(self, draws: np.random.Generator, *, in_reach: bool) -> Sought:
        """Return a search for a mix of three dyes, or for a colour out of reach."""
        nm = np.linspace(400, 700, 31)
        count = len(self.unit)
        amounts = np.zeros(count)
        dyes = draws.choice(count, 3, replace=False)
        amounts[dyes] = np.exp(draws.uniform(-3.0, 0.4, 3))
        inside = reflectance_of_ks(self.ground + amounts @ self.unit)
        inside *= np.exp(0.05 * np.sin(nm / draws.uniform(20, 60)))
        if not in_reach:
            step = 1.0 / (1.0 + np.exp((draws.uniform(430, 650) - nm) / 10.0))
            inside = 0.005 + 0.85 * (step if draws.random() < 0.5 else 1.0 - step)
        whole = with_surface(inside, surface=SURFACE)[None]
        weights = seen_under_lights(*LIGHTS).weights
        if weights is None:
            raise TypeError
        aim = Aim(
            weights=(1 - SURFACE) * weights.transpose(0, 2, 1).reshape(-1, 31),
            surface=SURFACE,
            ground=self.ground,
            lab=np.array([lab_under(whole, light=light)[0] for light in LIGHTS]),
            shares=np.array([[1.0], [0.5]]),
            start=ks_of_reflectance(inside),
        )
        each = np.append(np.full(count, TOTAL), 0.0)
        return Sought(dyes=Dyes(unit=self.unit), aim=aim, each=each, total=TOTAL)


def palette(count: int) -> Palette:
    """Return so many dyes of the library of invented shapes."""
    draws = np.random.default_rng(40)
    shapes = shape_library()[draws.choice(3000, count, replace=False)]
    gains = np.exp(draws.normal(np.log(8.0), 0.35, count))
    nm = np.linspace(400, 700, 31)
    ground = 0.064 * np.exp(0.6 * np.exp(-(nm - 400) / 60))
    return Palette(unit=shapes * gains[:, None], ground=ground)


def by_slsqp(search: Sought, dyes: tuple[int, ...]) -> float:
    """Return f of the best recipe of one set as SLSQP finds it."""
    optimize: Any = import_module("scipy.optimize")
    mixed = search.dyes.of(np.array(dyes)[:, None])
    unit = search.dyes.unit[list(dyes)].T
    start, _rest = optimize.nnls(unit, search.aim.start - search.aim.ground)
    start *= min(1.0, search.total / max(start.sum(), 1e-9))

    def asked(amounts: Floats) -> tuple[float, Floats]:
        here = np.maximum(amounts, 0.0)[:, None]
        found, slopes = jacobian_of(search.aim, mixed, here)
        return float(found.value[0]), 2.0 * np.einsum("km,kim->i", found.rows, slopes)

    down = np.full(len(dyes), -1.0)
    total = {
        "type": "ineq",
        "fun": lambda x: search.total - x.sum(),
        "jac": lambda _x: down,
    }
    found = optimize.minimize(
        asked,
        start,
        jac=True,
        method="SLSQP",
        bounds=[(0.0, search.total)] * len(dyes),
        constraints=[total],
    )
    over = found.x.sum() > search.total * (1.0 + 1e-6)
    return float("inf") if over else float(found.fun)


def seconds(act: Callable[[], object]) -> float:
    """Return the processor time of an act."""
    start = time.process_time()
    act()
    return time.process_time() - start


def against_slsqp(sample: int) -> float:
    """Print the time of 40 dyes up to four beside the baseline; return the ratio."""
    dyes, draws = palette(40), np.random.default_rng(1)
    ranks = ranks_of(40)
    searches = [dyes.search(draws, in_reach=place % 3 < 2) for place in range(15)]
    ours = [seconds(partial(searched, each, ranks, top=20)) for each in searches]
    sets = ranks[3].sets.T[draws.choice(ranks[3].count, sample, replace=False)]
    one = seconds(lambda: [by_slsqp(searches[0], tuple(s)) for s in sets]) / sample
    whole = one * sum(rank.count for rank in ranks)
    median = statistics.median(ours)
    print(f"40 dyes up to 4: {1000 * median:.0f} ms, worst {1000 * max(ours):.0f}")
    print(f"SLSQP: {1000 * one:.1f} ms a set, {whole:.0f} s for all (from {sample})")
    print(f"ratio {whole / median:.0f}; goal: at least {GOAL:.0f}")
    return whole / median


def growth() -> None:
    """Print time and memory for more dyes."""
    for count in GROWTH:
        dyes, draws = palette(count), np.random.default_rng(2)
        searches = [dyes.search(draws, in_reach=place < 3) for place in range(5)]
        ranks = ranks_of(count)
        times = [seconds(partial(searched, each, ranks, top=20)) for each in searches]
        tracemalloc.start()
        searched(searches[0], ranks_of(count), top=20)
        peak = tracemalloc.get_traced_memory()[1] / 1e6
        tracemalloc.stop()
        sets = sum(rank.count for rank in ranks)
        print(
            f"{count} dyes, {sets} sets: {1000 * statistics.median(times):.0f} ms, "
            f"worst {1000 * max(times):.0f}; {peak:.0f} MB at most"
        )


def correctness(targets: int) -> int:
    """Print how often an exhaustive SLSQP over ten dyes is nearer; return that."""
    dyes, draws, worse, worst = palette(10), np.random.default_rng(3), 0, 0.0
    ranks = ranks_of(10)
    for place in range(targets):
        search = dyes.search(draws, in_reach=place % 3 < 2)
        ours = float(searched(search, ranks, top=20).values[0])
        plain = min(
            by_slsqp(search, each)
            for size in range(1, 5)
            for each in combinations(range(10), size)
        )
        away = ours**0.5 - plain**0.5
        worst = max(worst, away)
        worse += away > SAME
    print(f"{targets} targets, all 385 sets of 10 dyes: {worse} worse by over {SAME:g}")
    print(f"furthest behind: {worst:.5f}")
    return worse


def main() -> int:
    """Print everything; the exit status says whether the goals are met."""
    asked = argparse.ArgumentParser(description="Time the recipe search.")
    asked.add_argument("--targets", type=int, default=6)
    asked.add_argument("--sample", type=int, default=300)
    given = asked.parse_args()
    ratio = against_slsqp(given.sample)
    growth()
    worse = correctness(given.targets)
    return 0 if ratio >= GOAL and not worse else 1


if __name__ == "__main__":
    sys.exit(main())
