"""Published numbers: they live once, as data, and are never retyped.

A file in ``tests/published`` is a list of ``[[case]]`` tables::

    [[case]]
    id = "a short name"
    asks = "which question of the test file is answered"
    inputs = { volume_ml = 500.0 }
    printed = "2.36"            # as printed, as a string
    source = "bibliography key, or the work's name"
    where = "page, table, problem"
    from_memory = true          # the value was recalled, the text not read again
    why_wider = ""              # with `tolerance`: why half a digit is not enough

The tolerance is half of the last digit printed.
"""

import tomllib
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

FOLDER = Path(__file__).parent / "published"


@dataclass(frozen=True, kw_only=True)
class PublishedCase:
    """One printed value with the inputs that lead to it and its source."""

    id: str
    asks: str
    inputs: dict[str, Any]
    printed: str
    source: str
    where: str
    from_memory: bool = False
    tolerance: float | None = None
    why_wider: str = ""
    note: str = field(default="", compare=False)

    def __post_init__(self) -> None:
        """Keep the rules of the house: a source, a place, a reason."""
        assert self.source, f"{self.id} names no source"
        assert self.where, f"{self.id} does not say where"
        assert (self.tolerance is None) == (not self.why_wider), self.id

    @property
    def half_a_digit(self) -> float:
        """Half of the last digit printed, or the wider tolerance with a reason."""
        if self.tolerance is not None:
            return self.tolerance
        exponent = Decimal(self.printed).as_tuple().exponent
        assert isinstance(exponent, int)
        return 0.5 * 10.0**exponent

    def agrees(self, value: float) -> bool:
        """Whether a reckoned value would print as the published one."""
        slack = 1e-12 * abs(value)
        return abs(value - float(self.printed)) <= self.half_a_digit + slack


def published(name: str, *, asks: str | None = None) -> list[Any]:
    """Return the cases of one file as marked parameters for a test."""
    text = (FOLDER / f"{name}.toml").read_text(encoding="utf-8")
    cases = [PublishedCase(**case) for case in tomllib.loads(text)["case"]]
    return [
        pytest.param(case, id=case.id, marks=pytest.mark.published)
        for case in cases
        if asks in {None, case.asks}
    ]
