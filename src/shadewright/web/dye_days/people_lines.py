"""Who is in, as typed: a line each, a name and two times."""

import re
from collections.abc import Iterable
from datetime import time

from shadewright.errors import UnreadableError
from shadewright.web.dye_days.words import clock
from shadewright.workflows.days.day_now import PersonIn

_CLOCK = r"(\d{1,2})[:.](\d{2})"
_LINE = re.compile(rf"(.+?)[\s,]+{_CLOCK}\s*(?:to|-|–|−)\s*{_CLOCK}$")
_MOST_NAME = 40


def read_people(text: str) -> tuple[PersonIn, ...]:
    """Return who is in, or say which line cannot be read."""
    lines = (line.strip() for line in text.splitlines())
    return tuple(_person(line) for line in lines if line)


def people_text(known: Iterable[PersonIn]) -> str:
    """Return people as the lines that they are typed in."""
    return "\n".join(
        f"{each.name} {clock(each.starts_at)} to {clock(each.ends_at)}"
        for each in known
    )


def _person(line: str) -> PersonIn:
    found = _LINE.match(line)
    try:
        if found is None:
            raise ValueError  # ruff: ignore[raise-within-try]
        name, *clocks = found.groups()
        h, m, to_h, to_m = (int(part) for part in clocks)
        starts_at, ends_at = time(h, m), time(to_h, to_m)
    except ValueError:
        raise UnreadableError(
            name="Who is in",
            why=f"“{line[:40]}” has no name with two times.",
            advice="Write it as Ines 08:00 to 17:00.",
            argument="people",
        ) from None
    return PersonIn(
        name=" ".join(name.split())[:_MOST_NAME], starts_at=starts_at, ends_at=ends_at
    )
