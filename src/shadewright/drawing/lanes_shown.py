"""What the lanes of a dye day show: plain values, minutes after the day's start."""

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

BarKind = Literal["hands", "heat", "hold", "cool"]


@dataclass(frozen=True, kw_only=True)
class Bar:
    """A stage of a bath; thin where the pot stands off its source, in minutes."""

    kind: BarKind
    starts: float
    ends: float
    is_thin: bool = False


@dataclass(frozen=True, kw_only=True)
class LaneBath:
    """A bath on its source; ``row`` keeps thin bars of one lane apart."""

    number: str
    name: str
    short: str
    lane: int
    bars: tuple[Bar, ...]
    row: int = 0

    @property
    def starts(self) -> float:
        """When its first bar begins, in minutes."""
        return min((bar.starts for bar in self.bars), default=0.0)

    @property
    def named_at(self) -> float:
        """Where its name stands: where it first is on its source, in minutes."""
        thick = (bar.starts for bar in self.bars if not bar.is_thin)
        return min(thick, default=self.starts)


@dataclass(frozen=True, kw_only=True)
class Lane:
    """A source: its name, its power in words, how many rows of thin bars it has."""

    name: str
    power: str
    rows: int = 1


@dataclass(frozen=True, kw_only=True)
class Power:
    """What a circuit carries: from each minute on so many kilowatts, in minutes."""

    name: str
    limit_kw: float
    peak_kw: float
    steps: tuple[tuple[float, float], ...]

    @property
    def most_kw(self) -> float:
        """What the top of its picture stands for, in kilowatts."""
        return max(self.limit_kw, self.peak_kw) * 1.1 or 1.0

    def spans(self, ends: float) -> tuple[tuple[float, float, float], ...]:
        """Return start, end and kilowatts of each step, the last one up to an end."""
        marks = [*self.steps, (ends, 0.0)]
        return tuple((a, b, kw) for (a, kw), (b, _next) in pairwise(marks))


@dataclass(frozen=True, kw_only=True)
class LanesShown:
    """A day as lanes; ``name`` and ``more`` say it in words, in minutes."""

    name: str
    more: str
    opens_min: int
    length: float
    lanes: tuple[Lane, ...]
    baths: tuple[LaneBath, ...]
    hands: tuple[tuple[float, float], ...]
    powers: tuple[Power, ...]
    now: float | None = None
    now_words: str = ""

    @property
    def hours(self) -> tuple[tuple[float, str], ...]:
        """The full hours: when they are, and how they read."""
        first = -(-self.opens_min // 60)
        last = int(self.opens_min + self.length) // 60
        return tuple(
            (60.0 * hour - self.opens_min, f"{hour % 24:02d}:00")
            for hour in range(first, last + 1)
        )
