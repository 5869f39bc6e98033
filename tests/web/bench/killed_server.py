"""The studio in processes of its own: a server to kill, and a look at its store."""

import json
import os
import signal
import subprocess
import sys
from contextlib import suppress
from typing import Any

from tests.clones import free_port, wait_until_it_serves
from tests.house.reading import ROOT


def asked(home: dict[str, str], verb: str) -> dict[str, Any]:
    """Ask the studio, in a process of its own."""
    command = [sys.executable, "-m", "tests.web.bench.killed_studio", verb]
    done = subprocess.run(
        command, env=home, cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return dict(json.loads(done.stdout))


class Server:
    """The studio's server, killed and started at will."""

    def __init__(self, home: dict[str, str]) -> None:
        self.home = home
        self.port = free_port()
        self.process: subprocess.Popen[str] | None = None

    def start(self) -> None:
        """Start it, on its own port, and wait until it serves."""
        command = [sys.executable, "-m", "shadewright", "serve", "--no-browser"]
        self.process = subprocess.Popen(
            [*command, "--port", str(self.port), "--data", self.data],
            env=self.home,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        wait_until_it_serves(self.url, self.process)

    @property
    def url(self) -> str:
        """Where it serves."""
        return f"http://127.0.0.1:{self.port}"

    @property
    def data(self) -> str:
        """The folder of its studio."""
        return self.home["SHADEWRIGHT_DATA"]

    @property
    def is_up(self) -> bool:
        """Whether it was started and not killed since."""
        return self.process is not None

    def kill(self) -> None:
        """Kill it without a word."""
        if self.process is None:
            return
        with suppress(ProcessLookupError):
            os.kill(self.process.pid, signal.SIGKILL)
        self.process.communicate()
        self.process = None
