"""serve and demo: this machine alone, or with ``--lan`` phones at home as well."""

import http.client
import re
import socket
import subprocess
import sys
from collections.abc import Generator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlencode

import pytest

from shadewright.cli import serving
from shadewright.errors import ConflictError
from shadewright.settings import home_addresses
from tests.cli.typed import Terminal
from tests.clones import free_port as any_port
from tests.clones import plain_environment, wait_until_it_serves

pytestmark = pytest.mark.slow
DESK = "127.0.0.1"
SERVE = [sys.executable, "-m", "shadewright", "serve", "--no-browser"]
AT_HOME = home_addresses("1")


@dataclass(frozen=True)
class Answer:
    status: int
    headers: http.client.HTTPMessage
    text: str


@dataclass(frozen=True)
class Studio:
    """A studio that is served by a process of its own."""

    port: int
    said: list[str]

    def ask(
        self, host: str, path: str, *, cookie: str = "", form: str | None = None
    ) -> Answer:
        """Ask over a real socket: from this machine's own address, or loopback."""
        headers = {"Cookie": cookie} if cookie else {}
        if form is not None:
            headers["Content-Type"] = "application/x-www-form-urlencoded"
            headers["Origin"] = f"http://{host}:{self.port}"
        line = http.client.HTTPConnection(host, self.port, timeout=20)
        line.request("GET" if form is None else "POST", path, form, headers)
        answer = line.getresponse()
        text = answer.read().decode()
        line.close()
        return Answer(answer.status, answer.headers, text)

    def send(self, host: str, page: str, path: str, **fields: str) -> Answer:
        """Fill in the form of a page, token and cookie and all."""
        shown = self.ask(host, page)
        token = re.search(r'name="csrfmiddlewaretoken" value="(\w+)"', shown.text)
        assert token is not None
        form = urlencode({**fields, "csrfmiddlewaretoken": token[1]})
        cookie = str(shown.headers["Set-Cookie"]).partition(";")[0]
        return self.ask(host, path, cookie=cookie, form=form)


@contextmanager
def served(folder: Path, *words: str) -> Generator[Studio]:
    """Serve a new studio; what the terminal said is known at the end."""
    port, said = any_port(), list[str]()
    with subprocess.Popen(
        [*SERVE, "--port", str(port), "--data", str(folder), *words],
        env={**plain_environment(), "PYTHONUNBUFFERED": "1"},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    ) as process:
        try:
            wait_until_it_serves(f"http://{DESK}:{port}", process)
            yield Studio(port, said)
        finally:
            process.terminate()
        assert process.stdout is not None
        said += process.stdout.read().splitlines()


def can_reach(host: str, port: int) -> bool:
    try:
        socket.create_connection((host, port), timeout=5).close()
    except OSError:
        return False
    return True


def test_without_lan_no_other_address_is_even_listened_at(tmp_path: Path) -> None:
    with served(tmp_path) as studio:
        assert can_reach(DESK, studio.port)
        assert not any(can_reach(host, studio.port) for host in AT_HOME)
    assert studio.said[0].startswith(f"A new studio; its files are in {tmp_path}")
    assert studio.said[-1].startswith("Your studio is open at http://127.0.0.1:")


def test_with_lan_a_phone_comes_in_by_code_and_goes_when_removed(
    tmp_path: Path, typed: Terminal
) -> None:
    """This machine plays the phone: from its own address it is a guest."""
    if not AT_HOME:
        assert "no address in a network" in typed("serve --lan --port 1").refusal
        return
    with served(tmp_path, "--lan") as studio:
        phone = AT_HOME[0]
        assert studio.ask(phone, "/healthz").status == 403
        assert studio.ask(phone, "/").headers["Location"] == "/pair/"
        assert studio.ask(phone, "/pair/").status == 200
        studio.send(DESK, "/start/", "/start/", name="Fell Lane", person="Ines")
        shown = studio.send(DESK, "/phones/", "/phones/").text
        digits = re.search(r'"pairing-code">(\d{3}) (\d{3})<', shown)
        assert digits is not None
        answer = studio.send(
            phone, "/pair/", "/pair/", code=f"{digits[1]}{digits[2]}", name="Tam’s"
        )
        cookie = answer.headers["Set-Cookie"].partition(";")[0]
        assert "Fell Lane" in studio.ask(phone, "/", cookie=cookie).text
        assert studio.ask(phone, "/phones/", cookie=cookie).status == 403
        assert studio.ask(phone, "/").status == 302
        studio.send(DESK, "/phones/", "/phones/1/remove/")
        assert studio.ask(phone, "/", cookie=cookie).headers["Location"] == "/pair/"
    said = "\n".join(studio.said)
    assert f"On a phone in the same network, type http://{phone}:{studio.port}/" in said
    assert f"http://127.0.0.1:{studio.port}/phones/" in said
    assert "whoever is on the same network can read what passes" in said


@pytest.mark.parametrize("word", ["serve", "demo"])
def test_without_a_network_lan_is_refused(
    word: str,
    typed: Terminal,
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
) -> None:
    for name in ("SHADEWRIGHT_LAN", "SHADEWRIGHT_DEMO", "SHADEWRIGHT_DATA"):
        monkeypatch.setenv(name, "0")
    said = typed(f"{word} --lan --data '{tmp_path}'").refusal
    assert said.startswith("--lan: This computer has no address in a network at home.")


def test_a_port_that_is_taken_at_home_alone_is_refused_too(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(serving, "_is_free", lambda host, _port: host == DESK)
    assert serving.free_port(8123) == 8123
    with pytest.raises(ConflictError, match="Port 8123 is taken by another program"):
        serving.free_port(8123, ["192.168.1.5"])
