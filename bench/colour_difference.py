"""How long CIEDE2000 takes for a hundred thousand pairs, against colour-science.

Run with the project's own Python: ``.venv/bin/python bench/colour_difference.py``. The
baseline is colour-science's own function on the same pairs in the same run. The goal is
half of its time or less; a recipe search asks for millions of such distances.
Processor time is compared, which a busy machine does not stretch; the answers must
agree within a millionth.
"""

import statistics
import sys
import time
import warnings
from collections.abc import Callable
from importlib import import_module
from typing import Any

import numpy as np

from shadewright.core.colour import ciede2000_arrays

GOAL = 0.5
PAIRS = 100_000
ROUNDS = 15
AGREES_WITHIN = 1e-6


def main() -> int:
    """Print both times and their ratio; the exit status says whether it is met."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of parts that it could use besides
        oracle: Any = import_module("colour").difference.delta_E_CIE2000
    draw = np.random.default_rng(2000)
    ones, others = draw.uniform((0, -100, -100), (100, 100, 100), (2, PAIRS, 3))
    apart = np.abs(ciede2000_arrays(ones, others) - oracle(ones, others)).max()
    ours = seconds(lambda: ciede2000_arrays(ones, others))
    theirs = seconds(lambda: oracle(ones, others))
    print(f"{PAIRS} pairs: {1000 * ours:.1f} ms, {1e9 * ours / PAIRS:.0f} ns a pair")
    print(f"colour-science: {1000 * theirs:.1f} ms; ratio {ours / theirs:.2f}")
    print(f"furthest apart: {apart:.1e}; goal: at most {GOAL:g} of its time")
    return 0 if ours <= GOAL * theirs and apart < AGREES_WITHIN else 1


def seconds(act: Callable[[], object]) -> float:
    """Return the median processor time of an act, the first run left out."""
    act()
    times = []
    for _round in range(ROUNDS):
        start = time.process_time()
        act()
        times.append(time.process_time() - start)
    return statistics.median(times)


if __name__ == "__main__":
    sys.exit(main())
