"""Palettes of invented studios, each learned once."""

from functools import cache

import numpy as np
from numpy.typing import NDArray

from shadewright.core.colour.cielab import Lab
from shadewright.core.mixing import Evidence, Palette, learn
from tests.core.mixing.worlds import Lab as Bench
from tests.core.mixing.worlds import World, ladder, world

Floats = NDArray[np.float64]


@cache
def truth(law: str = "flags", seed: int = 3, dyes: int = 7) -> World:
    """Return an invented studio."""
    return world(seed, law, 0.005, dyes=dyes)


@cache
def palette(law: str = "flags", seed: int = 3, dyes: int = 7) -> Palette:
    """Return what its ladders teach, read as Lab under three lights."""
    bench = Bench(truth(law, seed, dyes), np.random.default_rng(seed + 1))
    return learn(bench.read(ladder(dyes), Evidence.THREE_LIGHTS, 0.3)).palette


def named(row: Floats) -> tuple[tuple[str, float], ...]:
    """Return one row of depths by name."""
    return tuple((f"d{dye:02d}", float(row[dye])) for dye in np.flatnonzero(row))


def lab(row: Floats) -> Lab:
    """Return an array of three as a colour."""
    return Lab(*row.tolist())
