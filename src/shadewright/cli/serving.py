"""Serve a studio's pages on this machine: find a port, open, wait, close."""

import json
import socket
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
import webbrowser
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import click

from shadewright.errors import ConflictError

HOST = "127.0.0.1"
FIRST_PORT = 8000
_PORTS_TRIED = 40
_START_SECONDS = 40.0
# Twice what a page takes, so that one a little too large still gets its sentence;
# what is larger yet is not even read.
_LARGEST_BODY = 24_000_000


def free_port(wanted: int | None, at_home: Sequence[str] = ()) -> int:
    """Return the wanted port, or the first free one; refuse one that is taken."""
    tried = [wanted] if wanted else range(FIRST_PORT, FIRST_PORT + _PORTS_TRIED)
    for port in tried:
        if all(_is_free(host, port) for host in (HOST, *at_home)):
            return port
    raise ConflictError(
        why=f"Port {wanted or FIRST_PORT} is taken by another program.",
        advice="Choose another one: --port 8100.",
        argument="port",
    )


def serve_pages(
    *, port: int, is_browser_opened: bool, what: str, at_home: Sequence[str] = ()
) -> None:
    """Serve the chosen studio until Ctrl+C, here and at its addresses at home."""
    from django.core.wsgi import get_wsgi_application
    from waitress.server import create_server

    listen = " ".join(f"{host}:{port}" for host in (HOST, *at_home))
    server = create_server(
        get_wsgi_application(),
        listen=listen,
        threads=6,
        max_request_body_size=_LARGEST_BODY,
    )
    address = f"http://{HOST}:{port}/"
    click.echo(f"{what} is open at {address}  (Ctrl+C closes it.)")
    _say_phones(at_home, port)
    if is_browser_opened:
        threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
    try:
        server.run()
    finally:
        server.close()


def _is_free(host: str, port: int) -> bool:
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((host, port))
        except OSError:
            return False
    return True


def _say_phones(at_home: Sequence[str], port: int) -> None:
    if not at_home:
        return
    first, *others = (f"http://{host}:{port}/" for host in at_home)
    click.echo(f"On a phone in the same network, type {first}")
    for other in others:
        click.echo(f"  or, if that does not answer, {other}")
    click.echo(f"Pair each phone first, on this computer: http://{HOST}:{port}/phones/")
    click.echo(
        "This is plain http, for a network of your own: whoever is on the same "
        "network can read what passes."
    )


@dataclass
class OwnStudio:
    """The person's own studio, opened beside the demo when they ask for it."""

    child: subprocess.Popen[bytes] | None = None
    address: str = ""

    def open(self, **_signal: object) -> str:
        """Start it once and return its address; the receiver of the signal."""
        if self.child is None or self.child.poll() is not None:
            port = free_port(None)
            self.address = f"http://{HOST}:{port}/"
            command = [sys.executable, "-m", "shadewright", "serve", "--no-browser"]
            self.child = subprocess.Popen([*command, "--port", str(port)])
            wait_until_open(self.address, is_gone=self._is_gone)
        return self.address

    def close(self) -> None:
        """Close it with the demo."""
        if self.child is not None and self.child.poll() is None:
            self.child.terminate()
            self.child.wait()

    def _is_gone(self) -> bool:
        return self.child is None or self.child.poll() is not None


def wait_until_open(address: str, *, is_gone: Callable[[], bool]) -> None:
    """Wait until a studio that was just started answers."""
    until = time.monotonic() + _START_SECONDS
    while time.monotonic() < until and not is_gone():
        if _is_answering(address):
            return
        time.sleep(0.1)
    raise ConflictError(
        why="Your own studio did not open.",
        advice="Type “python3 start.py serve” and read what it says.",
    )


def _is_answering(address: str) -> bool:
    try:
        with urllib.request.urlopen(f"{address}healthz", timeout=2) as answer:  # ruff: ignore[suspicious-url-open-usage]
            return bool(json.load(answer).get("status") == "ok")
    except (urllib.error.URLError, OSError, ValueError):
        return False
