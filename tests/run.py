"""Run the checks and the tests: what ``python3 start.py test`` and ``check`` do.

``check`` runs the checks and the house tests. ``test`` runs the checks, every test
on SQLite, and those that touch the store, but for pages, on PostgreSQL too;
the Chromium and the PostgreSQL that they need are installed where that can be.
What follows ``test`` is handed to pytest. The last line is the sum of it all.
"""

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import IO, NamedTuple, Self
from xml.etree import ElementTree as ET

import start
from tests import browser, postgres

ROOT = Path(__file__).resolve().parents[1]
BIN = Path(sys.executable).parent
CHECKS = {
    "ruff check": ("ruff", "check", "."),
    "ruff format": ("ruff", "format", "--check", "."),
    "mypy": ("mypy",),
    "import contracts": ("lint-imports",),
    "codespell": ("codespell",),
    "deptry": ("deptry", "."),
}
PARTS = {
    "Pages in a browser": ("-m", "browser and not core"),
    "What asks no store": ("-m", "not store and not browser and not core"),
    "The store, on SQLite": ("-m", "store and not core"),
    "The store, on PostgreSQL": ("--postgres", "-m", "store and not core and not page"),
    "Core": ("-m", "core"),
}
"""Every test stands in one part, and those of the store in two; the longest first.

Pages are asked on SQLite alone: what they ask of the store, they ask through
workflows, which are tested on both.
"""
HOUSE = {
    "house tests": (
        *("pytest", "-q", "tests/house"),
        *("-m", "not browser and not store and not slow"),
    )
}


class Counts(NamedTuple):
    """How many passed, failed and were skipped."""

    passed: int
    failed: int
    skipped: int

    def plus(self, other: Self) -> "Counts":
        """Return the sum of two."""
        return Counts(*(a + b for a, b in zip(self, other, strict=True)))

    def __str__(self) -> str:
        """Write the line that ends a run."""
        return f"{self.passed} passed, {self.failed} failed, {self.skipped} skipped"


def main(verb: str, *words: str) -> int:
    """Run what the verb names; return the exit status."""
    began = time.monotonic()
    # mypy's plugin loads Django's settings, which make a studio's folder.
    with tempfile.TemporaryDirectory(prefix="shadewright-check-") as folder:
        os.environ["SHADEWRIGHT_DATA"] = folder
        counts = check() if verb == "check" else test(words)
    print(f"\nThis took {time.monotonic() - began:.0f} s.")
    print(f"Shadewright: {counts}")
    return 1 if counts.failed else 0


def check() -> Counts:
    """Run the checks and the house tests."""
    return run_checks(CHECKS | HOUSE)


def test(words: Sequence[str]) -> Counts:
    """Run the checks and beside them every part, one more at once than there are cores.

    A browser lets its core wait, so one part more keeps all of them busy.
    """
    if missing := missing_programs():
        start.install(*missing, "fonts-dejavu-core")
    at_once = (os.cpu_count() or 1) + 1
    with ThreadPoolExecutor(at_once) as beside:
        parts = [beside.submit(run_part, t, *words, *PARTS[t]) for t in PARTS]
        counts = run_checks(CHECKS)
        for part in parts:
            counts = counts.plus(part.result())
    return counts


def run_part(title: str, *options: str) -> Counts:
    """Run one part; say all of it at once when it has ended."""
    with tempfile.TemporaryFile("w+", encoding="utf-8") as said:
        counts = run_pytest(*options, out=said)
        said.seek(0)
        print(f"\n{title}\n{said.read()}", flush=True)
    return counts


def missing_programs() -> list[str]:
    """Return Debian's names of the programs that the tests need and lack."""
    missing = [] if browser.find_program() else ["chromium"]
    missing += [] if browser.has_driver_library() else ["libatomic1"]
    try:
        postgres.find_programs()
    except postgres.NoServerError:
        missing.append("postgresql")
    return missing


def run_checks(checks: dict[str, tuple[str, ...]]) -> Counts:
    """Run each check; show what it says only where it fails."""
    faults = sum(not run_check(title, command) for title, command in checks.items())
    return Counts(len(checks) - faults, faults, 0)


def run_check(title: str, command: tuple[str, ...]) -> bool:
    """Run one check and say in a line how it went."""
    began = time.monotonic()
    print(f"{title:17}", end="", flush=True)
    done = subprocess.run(
        [BIN / command[0], *command[1:]],
        cwd=ROOT,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        check=False,
    )
    verdict = "FAILED" if done.returncode else "ok"
    print(f"{verdict:7}{time.monotonic() - began:4.0f} s", flush=True)
    if done.returncode:
        print(done.stdout, flush=True)
    return done.returncode == 0


def run_pytest(*options: str, out: IO[str]) -> Counts:
    """Run pytest, which speaks into a file, and count from its record."""
    with tempfile.TemporaryDirectory() as folder:
        record = Path(folder) / "record.xml"
        words = ["-q", f"--junitxml={record}", *options]
        code = subprocess.call(
            [BIN / "pytest", *words], cwd=ROOT, stdout=out, stderr=subprocess.STDOUT
        )
        counts = read_record(record)
    # Not one test, or a run that broke off, is a failure too.
    broke = int(bool(code) and not counts.failed)
    return counts.plus(Counts(0, broke, 0))


def read_record(path: Path) -> Counts:
    """Read the counts from a JUnit record; none where pytest wrote none."""
    if not path.exists():
        return Counts(0, 0, 0)
    suites = ET.parse(path).getroot().iter("testsuite")
    counts = Counts(0, 0, 0)
    for suite in suites:
        ran, skipped = int(suite.get("tests", 0)), int(suite.get("skipped", 0))
        failed = int(suite.get("failures", 0)) + int(suite.get("errors", 0))
        counts = counts.plus(Counts(ran - failed - skipped, failed, skipped))
    return counts


if __name__ == "__main__":
    try:
        sys.exit(main(*sys.argv[1:]))
    except start.StopError as stop:
        sys.exit(f"\n{stop}")
