"""Fresh clones of the project, and studios that are started from them."""

import json
import os
import shutil
import socket
import subprocess
import time
import urllib.request
from collections.abc import Generator, Sequence
from contextlib import contextmanager
from pathlib import Path
from urllib.error import URLError

from tests.house.reading import ROOT, project_files

# What a person's terminal has not: the studio and the settings of these tests.
OURS = ("SHADEWRIGHT_", "DJANGO_", "PYTHONPATH", "VIRTUAL_ENV")


def fresh_clone(folder: Path) -> Path:
    """Copy every file that git keeps, as it stands now, and nothing else."""
    for path in project_files():
        copy = folder / path.relative_to(ROOT)
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(path, copy)
    return folder


def plain_environment() -> dict[str, str]:
    """Return the environment without what these tests put there."""
    return {k: v for k, v in os.environ.items() if not k.startswith(OURS)}


def free_port() -> int:
    """Return a port of 127.0.0.1 that nobody listens on."""
    with socket.create_server(("127.0.0.1", 0)) as taken:
        return int(taken.getsockname()[1])


def fetch(url: str) -> str:
    """Return what a page of this machine says."""
    with urllib.request.urlopen(url, timeout=10) as answer:  # ruff: ignore[suspicious-url-open-usage]
        return str(answer.read().decode())


@contextmanager
def running_studio(command: Sequence[str | Path], data: Path) -> Generator[str]:
    """Start a studio, wait until it serves pages, and stop it at the end."""
    port = free_port()
    options = ["--no-browser", "--port", str(port), "--data", str(data)]
    with subprocess.Popen(
        [*command, *options],
        env=plain_environment(),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    ) as process:
        try:
            wait_until_it_serves(f"http://127.0.0.1:{port}", process)
            yield f"http://127.0.0.1:{port}"
        finally:
            process.terminate()
            process.wait(timeout=20)


def wait_until_it_serves(
    url: str, process: subprocess.Popen[str], *, seconds: float = 90
) -> None:
    """Ask until the studio says that it is well; fail with what it said if not."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if process.poll() is not None:
            break
        try:
            assert json.loads(fetch(f"{url}/healthz")) == {"status": "ok"}
        except (URLError, ConnectionError, TimeoutError):
            time.sleep(0.05)
        else:
            return
    process.kill()
    said = process.stdout.read() if process.stdout else ""
    message = f"No page within {seconds} s; it said:\n{said}"
    raise AssertionError(message)
