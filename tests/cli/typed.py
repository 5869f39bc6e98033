"""A command as it is typed, with what the terminal then shows."""

import json
import shlex
from dataclasses import dataclass
from typing import Any

import pytest

from shadewright.cli import run


@dataclass(frozen=True, kw_only=True)
class Typed:
    """What came of a command."""

    status: int
    out: str
    err: str

    @property
    def answer(self) -> dict[str, Any]:
        """The one JSON object on standard output."""
        assert self.status == 0, self.err
        assert not self.err
        answer = json.loads(self.out)
        assert isinstance(answer, dict)
        return answer

    @property
    def refusal(self) -> str:
        """The one line on standard error, with status 2 and nothing else."""
        assert self.status == 2
        assert not self.out
        assert self.err.count("\n") == 1
        assert "Traceback" not in self.err
        return self.err.strip().replace("\u00a0", " ")


class Terminal:
    """A terminal that takes one line at a time."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        """Look at what pytest catches."""
        self.capsys = capsys

    def __call__(self, line: str) -> Typed:
        """Type ``shadewright`` and the line."""
        status = run(shlex.split(line))
        shown = self.capsys.readouterr()
        return Typed(status=status, out=shown.out, err=shown.err)
