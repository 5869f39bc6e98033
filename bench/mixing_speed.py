"""How long a palette takes to be learned, by kind of reading and number of dyes.

Run with the project's own Python: ``.venv/bin/python bench/mixing_speed.py``. Four
depths a dye, on one thread, everything counted: the prior, the search for suspects,
the sizes learned twice, the spread. Processor time is counted, which a busy machine
does not stretch; the baseline is numpy inverting one matrix of as many rows as the
palette has parameters. Memory is the greatest that numpy held at once.
"""

import os
import sys
import time
import tracemalloc

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

import numpy as np
from worlds.dyed import Bench, ladder, ternaries, world

from shadewright.core.mixing import Evidence, Swatch, learn

GOAL_SECONDS, GOAL_WITH_MIXES = 4.0, 5.0
KINDS = {
    "spectra": (Evidence.SPECTRUM, 0.1),
    "three lights": (Evidence.THREE_LIGHTS, 0.3),
    "one Lab": (Evidence.LAB, 0.3),
    "camera": (Evidence.LAB, 2.0),
}


def dyed(
    kind: str, dyes: int, mixes: int = 0, **depths: tuple[float, ...]
) -> list[Swatch]:
    """Return ladders and mixes."""
    bench = Bench(world(4, dyes=dyes), np.random.default_rng(1))
    rows = ladder(dyes, **depths)
    return bench.read(rows, *KINDS[kind]) + bench.read(
        ternaries(bench.draws, dyes, mixes), *KINDS[kind]
    )


def seconds(swatches: list[Swatch]) -> tuple[float, float]:
    """Return processor time of a fit, and of inverting a matrix as large."""
    start = time.process_time()
    known = learn(swatches).palette.known
    ours = time.process_time() - start
    matrix = np.eye(known.structure.total) + known.covariance
    start = time.process_time()
    np.linalg.inv(matrix)
    return ours, time.process_time() - start


def main() -> int:
    """Print times and memory; the exit status says whether the goals are met."""
    learn(dyed("one Lab", 2))  # what is drawn once and kept
    met = []
    print("40 dyes, 4 depths: s / goal = ratio; one inverse of that size")
    for kind in KINDS:
        for mixes, goal in ((0, GOAL_SECONDS), (30, GOAL_WITH_MIXES)):
            ours, inverse = seconds(dyed(kind, 40, mixes))
            met.append(ours <= goal)
            against = f"{ours:.2f} / {goal:g} = {ours / goal:.2f}"
            print(f"{kind}, {mixes} mixes: {against}; {inverse:.2f}")
    lone = seconds(dyed("one Lab", 40, depths=(1.0,)))[0]
    print(f"one Lab, one depth: {lone:.2f}")
    for dyes in (20, 40, 80, 120):
        swatches = dyed("one Lab", dyes)
        ours, inverse = seconds(swatches)
        tracemalloc.start()
        learn(swatches)
        most = tracemalloc.get_traced_memory()[1] / 1e6
        tracemalloc.stop()
        print(f"one Lab, {dyes} dyes: {ours:.2f} s; {inverse:.2f}; {most:.0f} MB")
    return 0 if all(met) else 1


if __name__ == "__main__":
    sys.exit(main())
