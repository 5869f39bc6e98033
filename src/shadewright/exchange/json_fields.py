"""Fields of a JSON object, each fetched with one sentence where it cannot be used."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import isfinite

from shadewright.core.quantities import require_between
from shadewright.errors import MissingError, UnreadableError

_CLOCK = re.compile(r"(\d{1,2}):(\d{2})")


@dataclass(frozen=True, kw_only=True)
class Fields:
    """An object of a file; ``where`` is how a person finds it there."""

    whole: Mapping[str, object]
    where: str

    def has(self, key: str) -> bool:
        """Return whether a field is given, and not null."""
        return self.whole.get(key) is not None

    def text(self, key: str, *, usual: str | None = None) -> str:
        """Return a field that holds text."""
        value = self._value(key, usual)
        if not isinstance(value, str):
            raise self.because(key=key, why="is no text")
        return value.strip()

    def flag(self, key: str, *, usual: bool = False) -> bool:
        """Return a field that is true or false."""
        value = self._value(key, usual)
        if not isinstance(value, bool):
            raise self.because(key=key, why="is neither true nor false")
        return value

    def number(
        self,
        key: str,
        *,
        least: float = 0.0,
        most: float,
        unit: str = "",
        usual: float | None = None,
    ) -> float:
        """Return a field that holds a number within bounds."""
        value = self._value(key, usual)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.because(key=key, why="is no number")
        if not isfinite(value):
            raise self.because(key=key, why="is no number that can be used")
        return require_between(
            float(value),
            least=least,
            most=most,
            unit=unit,
            name=f"{key} of {self.where}",
        )

    def count(self, key: str, *, most: int, usual: int | None = None) -> int:
        """Return a field that holds a whole number from 0 up."""
        value = self.number(key, most=most, usual=usual)
        if value != int(value):
            raise self.because(key=key, why="is no whole number")
        return int(value)

    def clock(self, key: str) -> int:
        """Return a time of day such as 08:00, in minutes since midnight."""
        found = _CLOCK.fullmatch(self.text(key))
        hours, minutes = (int(part) for part in found.groups()) if found else (99, 0)
        if minutes > 59 or 60 * hours + minutes > 24 * 60:
            raise self.because(key=key, why="is no time of day such as 08:00")
        return 60 * hours + minutes

    def inner(self, key: str) -> "Fields":
        """Return an object within this one."""
        value = self._value(key, None)
        if not isinstance(value, dict):
            raise self.because(key=key, why="is no object")
        return Fields(whole=value, where=f"{key} of {self.where}")

    def each(self, key: str, called: str) -> Iterator["Fields"]:
        """Yield the objects of a list, none where it is not given.

        Yields
        ------
        Fields
            Each, called by its name or else by its place.
        """
        value = self._value(key, [])
        if not isinstance(value, list):
            raise self.because(key=key, why="is no list")
        for place, one in enumerate(value, start=1):
            if not isinstance(one, dict):
                raise self.because(
                    key=key, why=f"holds something else than objects ({place})"
                )
            name = one.get("name")
            named = name if isinstance(name, str) and name else str(place)
            yield Fields(whole=one, where=f"{called} {named}")

    def because(self, *, key: str, why: str) -> UnreadableError:
        """Return the sentence that says what is amiss with a field."""
        return UnreadableError(
            name=f"The {key} of {self.where}",
            why=f"It {why}.",
            advice="Mend the file and try again.",
        )

    def _value(self, key: str, usual: object) -> object:
        value = self.whole.get(key)
        if value is None:
            value = usual
        if value is None:
            raise MissingError(
                name=f"The {key} of {self.where}",
                advice="Write it into the file.",
            )
        return value
