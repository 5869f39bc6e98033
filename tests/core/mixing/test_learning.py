"""What is learned in worlds whose truth is known, and the swatch that lies."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing import Evidence, Mix, Palette, Swatch, learn, told_mixes
from shadewright.errors import MissingError
from tests.core.mixing.worlds import (
    LAWS,
    Lab,
    World,
    doses_of,
    ladder,
    ternaries,
    world,
)


def _held_out(
    truth: World, palette: Palette, draws: np.random.Generator
) -> tuple[float, float]:
    """Return the mean error of held-out mixes and how often the bound held."""
    depths = ternaries(draws, truth.dyes, 40)
    mixes = [Mix(base="wool", doses=doses_of(row), session="day") for row in depths]
    told = told_mixes(mixes, palette=palette)
    off = ciede2000_arrays(told.lab, truth.lab(depths))
    return float(off.mean()), float((off <= told.de_90).mean())


def over_worlds(
    evidence: Evidence,
    noise: float,
    depths: tuple[float, ...] = (0.1, 0.3, 1.0, 2.5),
    mixes: int = 0,
) -> tuple[float, float]:
    """Return mean error and coverage over three laws and three surfaces."""
    found = []
    for seed, (law, surface) in enumerate(
        zip(LAWS, (0.0, 0.005, 0.012), strict=True), start=11
    ):
        truth = world(seed, law, surface)
        bench = Lab(truth, np.random.default_rng(seed))
        swatches = bench.read(ladder(9, depths), evidence, noise, session="day")
        if mixes:
            more = ternaries(bench.draws, 9, mixes)
            swatches += bench.read(more, evidence, 0.5, session="day")
        found.append(_held_out(truth, learn(swatches).palette, bench.draws))
    error, held = np.array(found).mean(0)
    return float(error), float(held)


@pytest.mark.parametrize(
    ("evidence", "noise", "depths", "mixes", "most"),
    [
        (Evidence.SPECTRUM, 0.1, (0.1, 0.3, 1.0, 2.5), 0, 0.25),
        (Evidence.LAB, 0.3, (0.1, 0.3, 1.0, 2.5), 0, 0.75),
        (Evidence.THREE_LIGHTS, 0.3, (0.1, 0.3, 1.0, 2.5), 0, 0.35),
        (Evidence.LAB, 2.0, (0.1, 0.3, 1.0, 2.5), 0, 1.6),
        (Evidence.LAB, 0.3, (1.0,), 0, 2.8),
        (Evidence.LAB, 0.3, (1.0,), 30, 0.5),
    ],
)
def test_mixes_are_foretold(
    evidence: Evidence,
    noise: float,
    depths: tuple[float, ...],
    mixes: int,
    most: float,
) -> None:
    error, held = over_worlds(evidence, noise, depths, mixes)
    assert error <= most
    assert held >= 0.8  # three worlds are few; bench/ asks many


def wrong(swatches: Sequence[Swatch], place: int, factor: float) -> list[Swatch]:
    """Return swatches of which one was dyed at another depth than was written."""
    found = list(swatches)
    dye, depth = found[place].doses[0]
    found[place] = replace(found[place], doses=((dye, depth * factor),))
    return found


@pytest.mark.parametrize(
    ("evidence", "noise"), [(Evidence.LAB, 0.3), (Evidence.SPECTRUM, 0.1)]
)
@pytest.mark.parametrize("factor", [3.0, 0.4])
def test_a_wrong_dose_is_the_first_suspect(
    evidence: Evidence, noise: float, factor: float
) -> None:
    bench = Lab(world(21, "flags", 0.006), np.random.default_rng(3))
    swatches = bench.read(ladder(9), evidence, noise)
    found = learn(wrong(swatches, 15, factor))
    assert found.suspects[0].swatch.number == 16
    assert len(found.used) == len(swatches) - len(found.suspects)
    assert len(found.suspects) <= 2


def test_the_same_swatches_give_the_same_palette_to_the_last_bit() -> None:
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    swatches = bench.read(ladder(3), Evidence.LAB, 0.3)
    first, second = (learn(swatches).palette.known for _ in range(2))
    assert first.parameters.tobytes() == second.parameters.tobytes()


def test_bare_yarn_alone_teaches_no_dye() -> None:
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    with pytest.raises(MissingError, match="dyed swatch"):
        learn(bench.read(np.zeros((2, 3)), Evidence.LAB, 0.3))
