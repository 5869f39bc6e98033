"""A phone's queue of taps, as the script keeps and sends it, on a rough network.

The queue is a file, so that it outlives a reload. The network fails in three
ways: nothing leaves, the answer is lost, or the server is gone.
"""

import http.client
import json
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from uuid import UUID

AT_ONCE = 50
PATIENCE_S = 10
MOST_TRIES = 200


class CutError(OSError):
    """The connection was cut."""


@dataclass
class Phone:
    """One phone: what waits on it, what was acknowledged, and its luck."""

    file: Path
    port: int
    bath: str
    bottle: str
    luck: Random
    sent: Callable[[], None]
    acknowledged: set[str] = field(default_factory=set)
    made: list[str] = field(default_factory=list)
    taken_back: set[str] = field(default_factory=set)
    cuts: int = 0
    last: str = ""
    cookie: str = ""
    token: str = ""

    def tick(self) -> None:
        """Tap Done for a millilitre, or take the last one back; keep it at once."""
        key = str(UUID(int=self.luck.getrandbits(128), version=4))
        if self.last and self.luck.random() < 0.1:
            tap: dict[str, object] = {
                "key": key,
                "bath": self.bath,
                "undoes": self.last,
            }
            self.taken_back.add(self.last)
            self.last = ""
        else:
            self.last = key
            tap = {
                "key": key,
                "bath": self.bath,
                "act": "dosed",
                "step": "dose-1",
                "value": 1.0,
                "unit": "ml",
                "bottle": self.bottle,
            }
        self.made.append(key)
        self._store([*self.waiting(), tap])

    def waiting(self) -> list[dict[str, object]]:
        """Return what waits, read anew as after a reload."""
        text = self.file.read_text("utf-8") if self.file.exists() else "[]"
        return list(json.loads(text))

    def send(self) -> None:
        """Send what waits, oldest first; drop what is acknowledged."""
        batch = self.waiting()[:AT_ONCE]
        if not batch:
            return
        try:
            kept = self._post(batch)
        except (OSError, http.client.HTTPException, ValueError):
            self.cuts += 1
            return
        self.acknowledged |= kept
        self._store([tap for tap in self.waiting() if tap["key"] not in kept])

    def flush(self) -> None:
        """Send until nothing waits, however often the network fails."""
        for _ in range(MOST_TRIES):
            if not self.waiting():
                return
            self.send()

    def _store(self, taps: list[dict[str, object]]) -> None:
        part = self.file.with_suffix(".part")
        part.write_text(json.dumps(taps), "utf-8")
        part.replace(self.file)

    def _post(self, batch: list[dict[str, object]]) -> set[str]:
        fate = self.luck.random()
        if fate < 0.15:
            raise CutError
        if not self.token:
            self._open_page()
        body = json.dumps({"taps": [{**tap, "age_ms": 5} for tap in batch]})
        wire = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE_S)
        try:
            wire.request("POST", "/bench/taps/", body, self._headers())
            self.sent()
            if fate < 0.3:
                raise CutError
            answer = wire.getresponse()
            said = json.loads(answer.read())
        finally:
            wire.close()
        if answer.status != 200 or said["refused"]:
            raise ValueError(said)
        return set(said["kept"])

    def _headers(self) -> dict[str, str]:
        return {
            "Content-Type": "application/json",
            "Cookie": self.cookie,
            "X-CSRFToken": self.token,
        }

    def _open_page(self) -> None:
        wire = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE_S)
        try:
            wire.request("GET", f"/bench/{self.bath}/")
            answer = wire.getresponse()
            page = answer.read().decode()
        finally:
            wire.close()
        token = re.search(r'name="csrfmiddlewaretoken" value="([^"]+)"', page)
        cookie = re.search(r"shadewright_studio_form=[^;]+", str(answer.headers))
        if token and cookie:
            self.token, self.cookie = token[1], cookie[0]
