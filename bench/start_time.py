"""How long a sum on the command line takes, against bare Python.

Run with the project's own Python: ``.venv/bin/python bench/start_time.py``. The
goal is at most 8 times ``python -c pass``. Bytecode is compiled first, as an
installer does; without it every start compiles the sources again.
"""

import compileall
import statistics
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path

import click

import shadewright

GOAL = 8.0
ROUNDS = 21
BARE = ("-c", "pass")
SUMS: dict[str, tuple[str, ...]] = {
    "stock make": ("stock", "make", "--volume", "500ml", "--strength", "1%"),
    "stock merge": ("stock", "merge", "180ml@1%", "320ml@0.5%"),
    "stock rescue": (
        *("stock", "rescue", "--powder", "10g", "--strength", "1%"),
        *("--volume", "1040ml"),
    ),
    "bath": ("bath", "--fibre", "100g", "--dose", "Gorse=0.6%@1%"),
    "acid": ("acid", "--acid", "citric:2g", "--water", "3l"),
    "heat": (
        *("heat", "--water", "4l", "--fibre", "100g", "--vessel", "2kg:stainless"),
        *("--from", "20C", "--to", "95C", "--power", "1.8kW", "--source", "induction"),
    ),
    "stock make --json": (
        *("stock", "make", "--volume", "500ml", "--strength", "1%"),
        "--json",
    ),
}


def seconds(arguments: Sequence[str]) -> float:
    """Return the median time of a fresh Python with these arguments."""
    times = []
    for _round in range(ROUNDS):
        start = time.perf_counter()
        subprocess.run(
            [sys.executable, *arguments], check=True, stdout=subprocess.DEVNULL
        )
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def main() -> int:
    """Print each ratio; the exit status says whether all meet the goal."""
    for package in (click, shadewright):
        compileall.compile_dir(str(Path(package.__file__).parent), quiet=2)
    bare = seconds(BARE)
    print(f"bare Python: {1000 * bare:.1f} ms")
    ratios = []
    for name, arguments in SUMS.items():
        took = seconds(("-m", "shadewright", *arguments))
        ratios.append(took / bare)
        print(f"{name}: {1000 * took:.1f} ms, {took / bare:.1f} times bare Python")
    print(f"goal: at most {GOAL:g} times")
    return 0 if max(ratios) <= GOAL else 1


if __name__ == "__main__":
    sys.exit(main())
