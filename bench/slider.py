"""How long a slider's colour takes: from the move to the new colour painted.

Run with the project's own Python: ``.venv/bin/python bench/slider.py``. A studio of
twelve invented dyes on two yarns is founded, fitted and served; a real browser of a
phone's size moves one of three sliders, by arrow key and by finger. Each time is from
the input event to the frame that shows the answer to the newest of them. The baseline
is the same browser asking the same server for its shortest answer. What is promised is
the median, by key and by finger: a busy machine stretches the rest.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Generator, Sequence
from contextlib import contextmanager
from itertools import starmap
from pathlib import Path
from uuid import uuid4

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import django
import numpy as np
from playwright.sync_api import Locator, Page, sync_playwright
from worlds.dyed import Bench, ladder, ternaries, world

from shadewright.core.mixing import Evidence, Swatch
from tests.browser import PHONE, QUIET, find_program

PROMISED_MS = 100.0
DYES, KEYS, MOVES = 12, 60, 240
MIX = "1:0.6,9:0.2,3:0.1"
WATCH = """() => {
  window.waits = [];
  let moved = 0;
  document.addEventListener("input", (event) => {
    if (event.target.type === "range") moved = performance.now();
  }, { capture: true });
  new MutationObserver(() => {
    if (!moved) return;
    const since = moved;
    moved = 0;
    requestAnimationFrame(() => {
      const painted = new MessageChannel();
      painted.port1.onmessage = () => window.waits.push(performance.now() - since);
      painted.port2.postMessage(0);
    });
  }).observe(document.getElementById("told"), { childList: true, subtree: true });
}"""
SHORTEST = """async () => {
  const since = performance.now();
  await (await fetch("/healthz")).text();
  return performance.now() - since;
}"""


def main() -> int:
    """Print the figures; return 1 if a median is above what is promised."""
    with tempfile.TemporaryDirectory(prefix="shadewright-bench-") as folder:
        os.environ["SHADEWRIGHT_DATA"] = folder
        found()
        with served() as home, browser_page() as page:
            page.goto(f"{home}/shades/mix/?mix={MIX}")
            shortest = [page.evaluate(SHORTEST) for _ in range(KEYS)]
            page.evaluate(WATCH)
            slider = page.locator("#slide-1")
            kinds = {"by key": by_key(page, slider), "by finger": drag(page, slider)}
    print(f"shortest answer: median {statistics.median(shortest):.0f} ms")
    medians = list(starmap(said, kinds.items()))
    return int(max(medians) > PROMISED_MS)


def said(kind: str, times: Sequence[float]) -> float:
    """Print one line and return its median."""
    median = statistics.median(times)
    p95 = statistics.quantiles(times, n=20)[-1]
    print(
        f"{kind}: median {median:.0f} / {PROMISED_MS:.0f} ms, "
        f"95 of 100 within {p95:.0f} ms, {len(times)} colours"
    )
    return median


def by_key(page: Page, slider: Locator) -> list[float]:
    """Move a slider by its arrow keys, one press after another."""
    slider.focus()
    for press in range(KEYS):
        page.keyboard.press("ArrowRight" if press % 20 < 10 else "ArrowLeft")
        page.wait_for_timeout(150)
    return times_of(page)


def drag(page: Page, slider: Locator) -> list[float]:
    """Drag a slider up and down, a move every frame or so."""
    box = slider.bounding_box() or {"x": 0.0, "y": 0.0, "width": 0.0, "height": 0.0}
    y = box["y"] + box["height"] / 2
    page.mouse.move(box["x"] + 0.3 * box["width"], y)
    page.mouse.down()
    for move in range(MOVES):
        share = 0.3 + 0.5 * (move % 120) / 120
        page.mouse.move(box["x"] + share * box["width"], y)
        page.wait_for_timeout(12)
    page.mouse.up()
    return times_of(page)


def times_of(page: Page) -> list[float]:
    """Return the times that were written down since the last look."""
    page.wait_for_timeout(800)
    found: list[float] = page.evaluate("window.waits.splice(0)")
    return found


@contextmanager
def browser_page() -> Generator[Page]:
    """Open a browser of a phone's size.

    Yields
    ------
    Page
        A page that nobody has used. [-]
    """
    flags = [*QUIET, *(["--no-sandbox"] if os.geteuid() == 0 else [])]
    with sync_playwright() as player:
        browser = player.chromium.launch(executable_path=find_program(), args=flags)
        try:
            yield browser.new_context(
                viewport={"width": PHONE[0], "height": PHONE[1]}
            ).new_page()
        finally:
            browser.close()


@contextmanager
def served() -> Generator[str]:
    """Serve the studio as a dyer would.

    Yields
    ------
    str
        Its address. [-]
    """
    command = [sys.executable, "-m", "shadewright", "serve", "--no-browser"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as server:
        try:
            line = "" if server.stdout is None else server.stdout.readline()
            time.sleep(1)
            home = next(word for word in line.split() if word.startswith("http"))
            yield home.rstrip("/")
        finally:
            server.terminate()


def found() -> None:
    """Found a studio of twelve dyes on two yarns and fit it."""
    os.environ["DJANGO_SETTINGS_MODULE"] = "shadewright.settings"
    django.setup()
    from django.core.management import call_command

    from shadewright.records.models import Base, Dye
    from shadewright.workflows.shades.fits import fit_now
    from shadewright.workflows.studio import found_studio

    call_command("migrate", verbosity=0)
    found_studio(name="Bench", person="Ines", water="Tap")
    dyes = [Dye.objects.create(name=f"Dye {n:02d}").pk for n in range(DYES)]
    bench = Bench(world(4, dyes=DYES), np.random.default_rng(1))
    for base, rows in enumerate((
        np.vstack([ladder(DYES, (0.2, 0.6, 2.0)), ternaries(bench.draws, DYES, 14)]),
        ladder(DYES, (0.8,)),
    )):
        yarn = Base.objects.create(name=f"Yarn {base}", fibres="wool").pk
        for swatch in bench.read(rows, Evidence.LAB, 0.4, base=base):
            keep(swatch, yarn, dyes)
    fit_now(why="bench")


def keep(swatch: Swatch, yarn: int, dyes: Sequence[int]) -> None:
    """Keep one swatch with its reading."""
    from shadewright.records.models import ColourReading, SwatchDose
    from shadewright.records.models import Swatch as Row

    row = Row.objects.create(deed=uuid4(), label="swatch", base_id=yarn)
    for position, (name, depth) in enumerate(swatch.doses, start=1):
        SwatchDose.objects.create(
            swatch=row,
            position=position,
            dye_id=dyes[int(name[1:])],
            depth_percent=depth,
        )
    ColourReading.objects.create(
        deed=uuid4(),
        swatch=row,
        read_by="meter",
        labs={"D65": list(swatch.reading.values)},
        sd=0.4,
    )


if __name__ == "__main__":
    sys.exit(main())
