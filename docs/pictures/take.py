"""Take the README's pictures anew: `.venv/bin/python docs/pictures/take.py`.

Opens a demo studio in a temporary folder, looks at it through Chromium, and
writes the PNGs beside this file. Look at each one before it is committed.
"""

import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from contextlib import contextmanager
from datetime import datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from PIL import Image
from playwright.sync_api import Browser, ViewportSize, sync_playwright

if TYPE_CHECKING:
    from collections.abc import Generator

PORT = 8391
HOME = f"http://127.0.0.1:{PORT}"
HERE = Path(__file__).parent
DESK, PHONE = (1280, 860), (390, 844)
COLOURS = 256
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]


def main() -> None:
    """Take every picture."""
    chromium = shutil.which("chromium")
    with demo(), sync_playwright() as engines:
        browser = engines.chromium.launch(executable_path=chromium, args=FLAGS)
        take(browser, "shelf", "/shelf/", DESK, height=1020)
        take(browser, "making", first_link(browser, "/", "/stocks/making/"), PHONE)
        take(browser, "bench", first_link(browser, "/bench/", "/bench/"), PHONE)
        take(browser, "bottle", first_link(browser, "/shelf/", "/bottles/"), DESK)
        take(browser, "palette", "/shades/", DESK, height=1180)
        found = first_link(browser, "/shades/wanted/", "/shades/find/")
        take(browser, "find", found, PHONE, awaited=".answer")
        tomorrow = datetime.now().astimezone().date() + timedelta(days=1)
        take(browser, "day", f"/days/{tomorrow}/", DESK, height=1100)
        browser.close()


@contextmanager
def demo() -> "Generator[None]":
    """Keep a demo studio open in a folder of its own, while the body runs."""
    with tempfile.TemporaryDirectory() as folder:
        command = [sys.executable, "-m", "shadewright", "demo", "--no-browser"]
        command += ["--port", str(PORT), "--data", folder]
        running = subprocess.Popen(command, env=os.environ | {"LANG": "C.UTF-8"})
        try:
            wait()
            yield
        finally:
            running.terminate()
            running.wait()


def wait() -> None:
    """Wait until the demo answers."""
    for _ in range(300):
        try:
            with urllib.request.urlopen(f"{HOME}/healthz", timeout=2) as answer:
                if json.load(answer)["status"] == "ok":
                    return
        except (urllib.error.URLError, OSError):
            time.sleep(0.2)
    sys.exit("The demo did not open.")


def first_link(browser: Browser, address: str, start: str) -> str:
    """Return the first address on a page that starts so."""
    page = browser.new_page()
    page.goto(HOME + address)
    links = page.locator(f"main a[href^='{start}']")
    found = [each.get_attribute("href") or "" for each in links.all()]
    page.close()
    return next(each for each in found if len(each) > len(start))


def take(
    browser: Browser,
    name: str,
    address: str,
    size: tuple[int, int],
    height: int | None = None,
    awaited: str = "",
) -> None:
    """Write one picture, from what is awaited on; few colours keep it small."""
    view = ViewportSize(width=size[0], height=height or size[1])
    page = browser.new_page(viewport=view, reduced_motion="reduce")
    page.goto(HOME + address)
    if awaited:
        page.locator(awaited).first.evaluate("part => part.scrollIntoView()")
    path = HERE / f"{name}.png"
    page.screenshot(path=path)
    page.close()
    with Image.open(path) as whole:
        whole.convert("RGB").quantize(COLOURS, kmeans=2).save(path, optimize=True)


if __name__ == "__main__":
    main()
