"""How long a trace takes in a studio of 100 000 lots, on SQLite.

Run with the project's own Python: ``.venv/bin/python bench/trace.py``, or with a
number of lots. The world is a benchmark's, written straight into the tables in
bulk; it is no demo. One jar stands behind a fifth of all lots, as no jar of a small
studio ever will; the others are behind some 800 each.

Baselines, measured in the same run: SQLite finding one lot by its number (for a
lot's trace), and SQLite reading every dose of the same jar in one plain query (for
a jar's trace). The goal is under 0.2 s for each. It is judged by the time of the
processor, all of which is this process's own: a busy machine stretches the time on
the wall, which stands beside it.
SQLite is given no statistics (ANALYZE), as no studio has any. A jar's trace counts
all of its baths and shows a page of 100, so the first page and the last are timed.
"""

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from worlds.many_lots import build, number_of

GOAL_S = 0.2
LOTS = 100_000
ROUNDS = 15


def main() -> int:
    """Build the world, time the traces, say whether the goal is met."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else LOTS
    with tempfile.TemporaryDirectory(prefix="shadewright-bench-") as folder:
        open_studio_in(folder)
        began = time.perf_counter()
        build(count)
        print(f"{count} lots written in {time.perf_counter() - began:.0f} s")
        return report(count)


def open_studio_in(folder: str) -> None:
    """Open an empty studio there."""
    os.environ["SHADEWRIGHT_DATA"] = folder
    os.environ["SHADEWRIGHT_DATABASE"] = ""
    os.environ["SHADEWRIGHT_DEMO"] = "0"
    os.environ["DJANGO_SETTINGS_MODULE"] = "shadewright.settings"
    import django

    django.setup()
    from django.core.management import call_command

    call_command("migrate", verbosity=0)


def report(count: int) -> int:
    """Print each figure beside its baseline."""
    from shadewright.workflows.trace import trace_lot
    from shadewright.workflows.trace_onwards import onwards_from_jar

    number = number_of(count // 2)
    found = onwards_from_jar(1)
    plain_lot = took(lambda: plain_lot_row(number))
    plain_jar = took(plain_doses)
    print(f"baseline, one lot by its number:      {plain_lot}")
    print(f"baseline, all doses of the heavy jar: {plain_jar}")
    traces: dict[str, Callable[[], object]] = {
        "a lot": lambda: trace_lot(number),
        "the newest lot": lambda: trace_lot(number_of(count - 1)),
        f"a jar behind {found.baths} baths": lambda: onwards_from_jar(1),
        f"the same, page {found.pages}": lambda: onwards_from_jar(1, page=found.pages),
        "an ordinary jar": lambda: onwards_from_jar(2),
    }
    times = {name: took(act) for name, act in traces.items()}
    for name, time_ in times.items():
        plain = plain_lot if "lot" in name else plain_jar
        ratio = time_.processor_s / plain.processor_s
        print(f"{name:<37} {time_}, {ratio:.1f} times its baseline")
    print(f"goal: under {1000 * GOAL_S:.0f} ms each")
    return 0 if max(each.processor_s for each in times.values()) < GOAL_S else 1


@dataclass(frozen=True, kw_only=True)
class Took:
    """How long something took: by the clock on the wall, and of the processor."""

    wall_s: float
    processor_s: float

    def __str__(self) -> str:
        """Return both in milliseconds."""
        return (
            f"{1000 * self.processor_s:7.2f} ms ({1000 * self.wall_s:.2f} on the wall)"
        )


def took(act: Callable[[], object]) -> Took:
    """Return the median time of an act, the first run left out."""
    act()
    walls, processors = [], []
    for _round in range(ROUNDS):
        wall, processor = time.perf_counter(), time.process_time()
        act()
        processors.append(time.process_time() - processor)
        walls.append(time.perf_counter() - wall)
    return Took(
        wall_s=statistics.median(walls), processor_s=statistics.median(processors)
    )


def plain_lot_row(number: str) -> object:
    """Find one lot by its number, with bare SQLite."""
    from django.db import connection

    with connection.cursor() as cursor:
        cursor.execute("SELECT * FROM records_lot WHERE number = %s", [number])
        return cursor.fetchall()


def plain_doses() -> Sequence[object]:
    """Read every dose from a bottle of the heavy jar, with bare SQLite."""
    from django.db import connection

    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT l.id, l.bath_id FROM records_bathline l "
            "JOIN records_stockbottle b ON b.id = l.bottle_id WHERE b.jar_id = 1"
        )
        return list(cursor.fetchall())


if __name__ == "__main__":
    sys.exit(main())
