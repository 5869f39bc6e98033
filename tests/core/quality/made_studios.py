"""Invented studios whose last lot is off for one known reason, or for none.

Each cause moves the colour by a vector of its own, and age, hold and load by slopes
towards the bare yarn. Jars and mill lots have small effects too; pots and people change
and do nothing. The last lot has a cause, and one to three other changes that do
nothing. Some cells are empty.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import hypot, sqrt
from random import Random
from typing import Any

from shadewright.core.colour import Lab
from shadewright.core.quality import Factor, PastLot
from shadewright.core.quality.causes.history import NAMES

Way = tuple[float, ...]
Numbers = dict[Factor, float]

NOWHERE: Way = (0.0, 0.0, 0.0)
USUAL = {
    Factor.LOAD: (25.0, 1.5),
    Factor.RAMP: (1.5, 0.1),
    Factor.HOLD: (45.0, 2.0),
    Factor.ACID_AFTER: (15.0, 1.5),
}
"""A number's mean and spread."""

PALER = {Factor.BOTTLE_AGE: 1.0, Factor.HOLD: -1.0, Factor.LOAD: 1.0}
"""Which way a number goes for the yarn to come out paler."""

PLANTED = (
    *(Factor.JAR, Factor.BOTTLE, Factor.BOTTLE_AGE, Factor.MILL_LOT),
    *(Factor.WATER, Factor.POT, Factor.LOAD, Factor.HOLD),
)


@dataclass(frozen=True, kw_only=True)
class Law:
    """What holds in a kind of studio.

    ``jumps``: a planted number moves the colour by what no slope foretold. ``again``:
    the planted name was dyed under once before, and moved the colour then too.
    ``silent``: columns that nobody ever filled in.
    """

    name: str = "plain"
    noise: float = 0.2
    has_long_tails: bool = False
    small: float = 0.3
    planted: tuple[Factor, ...] = PLANTED
    decoys: tuple[Factor, ...] = (*NAMES, Factor.RAMP, Factor.ACID_AFTER)
    jumps: bool = False
    again: bool = False
    bare: Way = (90.0, 0.0, 9.0)
    drift: float = 0.0
    turn: float = 0.25
    empty: float = 0.06
    silent: tuple[Factor, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Studio:
    """A history, and what is true of its last lot."""

    lots: tuple[PastLot, ...]
    cause: Factor | None
    size: float
    decoys: int


@dataclass
class Past:
    """What is true while lots are dyed one after the other."""

    draws: Random
    law: Law
    shade: Lab
    slopes: Numbers
    names: dict[Factor, str] = field(default_factory=dict)
    numbers: Numbers = field(default_factory=dict)
    effects: dict[tuple[Factor, str], Way] = field(default_factory=dict)
    walk: Way = NOWHERE
    count: int = 0

    def rename(self, factor: Factor, *, size: float = 0.0) -> None:
        """Take up a new jar, pot or person, which may move the colour."""
        self.count += 1
        name = f"{factor[0].upper()}{self.count}"
        self.names[factor] = name
        self.effects[factor, name] = tuple(size * x for x in direction(self.draws))


def studio(seed: int, law: Law, *, is_quiet: bool = False) -> Studio:
    """Return a studio by its seed; a quiet one has no cause planted."""
    past = _begun(seed, law)
    draws = past.draws
    count = draws.randint(8, 18)
    bad_day = draws.randint(2, count - 3) if law.again and not is_quiet else -1
    bad: tuple[Factor, str] | None = None
    lots = []
    for place in range(count - 1):
        _let_time_pass(past)
        _change_a_little(past)
        names = dict(past.names)
        if place == bad_day:
            factor = draws.choice([each for each in law.planted if each in NAMES])
            past.rename(factor, size=draws.uniform(1.2, 4.0))
            bad = (factor, past.names[factor])
        lots.append(_dyed(past, place, NOWHERE))
        past.names = names
    _let_time_pass(past)
    cause, size, shift = (None, 0.0, NOWHERE) if is_quiet else _planted(past, bad)
    decoys = _distracted(past, cause)
    lots.append(_dyed(past, count - 1, shift))
    return Studio(lots=tuple(lots), cause=cause, size=size, decoys=decoys)


def studios(count: int, law: Law, *, is_quiet: bool = False) -> Iterator[Studio]:
    """Return so many studios of a law."""
    return (studio(seed, law, is_quiet=is_quiet) for seed in range(count))


def direction(draws: Random) -> Way:
    """Return any way in L, a, b, one long."""
    drawn = [draws.gauss(0.0, 1.0) for _ in range(3)]
    return tuple(x / hypot(*drawn) for x in drawn)


def _begun(seed: int, law: Law) -> Past:
    # ruff: ignore[suspicious-non-cryptographic-random-usage]
    draws = Random(f"{seed} {law.name}")
    past = Past(
        draws=draws,
        law=law,
        shade=Lab(
            draws.uniform(25, 75), draws.uniform(-45, 55), draws.uniform(-45, 65)
        ),
        slopes={
            Factor.BOTTLE_AGE: draws.uniform(0.005, 0.02),
            Factor.HOLD: draws.uniform(0.02, 0.08),
            Factor.LOAD: draws.uniform(0.03, 0.12),
        },
    )
    for factor in NAMES:
        past.rename(factor)
    past.numbers[Factor.BOTTLE_AGE] = draws.uniform(0, 40)
    return past


def _let_time_pass(past: Past) -> None:
    past.numbers[Factor.BOTTLE_AGE] += past.draws.uniform(3, 14)
    for factor, (usual, spread) in USUAL.items():
        past.numbers[factor] = past.draws.gauss(usual, spread)


def _change_a_little(past: Past) -> None:
    """Let jars, yarn and bottles run out now and then, and pots and people turn."""
    draws, law = past.draws, past.law
    for factor in (Factor.JAR, Factor.MILL_LOT):
        if draws.random() < 0.15:
            past.rename(factor, size=abs(draws.gauss(0.0, law.small)))
    if draws.random() < 0.15:
        past.rename(Factor.BOTTLE)
        past.numbers[Factor.BOTTLE_AGE] = draws.uniform(0, 5)
    for factor in (Factor.POT, Factor.PERSON):
        if draws.random() < law.turn:
            past.names[factor] = f"{factor[0].upper()}{draws.choice('xy')}"
    past.walk = tuple(x + draws.gauss(0.0, law.drift) for x in past.walk)


def _planted(past: Past, bad: tuple[Factor, str] | None) -> tuple[Factor, float, Way]:
    """Plant a cause; return it, its size, and its shift where no name carries it."""
    draws = past.draws
    size = draws.uniform(1.2, 4.0)
    if bad is not None:
        past.names[bad[0]] = bad[1]
        return bad[0], hypot(*past.effects[bad]), NOWHERE
    cause = draws.choice(past.law.planted)
    if cause in NAMES:
        past.rename(cause, size=size)
        return cause, size, NOWHERE
    return cause, size, _moved_number(past, cause, size)


def _moved_number(past: Past, cause: Factor, size: float) -> Way:
    """Move a number: as far as its slope asks, or by a jump that no slope foretold."""
    draws = past.draws
    way = PALER.get(cause) or draws.choice((-1.0, 1.0))
    if cause in past.slopes and not past.law.jumps:
        by = size / past.slopes[cause]
        past.numbers[cause] = max(past.numbers[cause] + way * by, 1.0)
        return NOWHERE
    spread = USUAL[cause][1] if cause in USUAL else 15.0
    by = spread * draws.uniform(4, 9)
    past.numbers[cause] = max(past.numbers[cause] + way * by, 0.1)
    to = _paler(past) if cause in PALER else direction(draws)
    return tuple(size * x for x in to)


def _distracted(past: Past, cause: Factor | None) -> int:
    """Change one to three other things that do nothing; return how many."""
    draws = past.draws
    free = [factor for factor in past.law.decoys if factor is not cause]
    count = min(draws.randint(1, 3), len(free))
    for factor in draws.sample(free, count):
        if factor in NAMES:
            past.rename(factor)
        else:
            past.numbers[factor] *= draws.choice((0.6, 0.75, 1.3, 1.6))
    return count


def _dyed(past: Past, place: int, shift: Way) -> PastLot:
    """Dye a lot with what is true now, read it, and write most of it down."""
    draws, law, numbers = past.draws, past.law, past.numbers
    paler = past.slopes[Factor.BOTTLE_AGE] * numbers[Factor.BOTTLE_AGE]
    for factor in (Factor.HOLD, Factor.LOAD):
        away = numbers[factor] - USUAL[factor][0]
        paler += PALER[factor] * past.slopes[factor] * away
    ways = [shift, past.walk, tuple(paler * x for x in _paler(past))]
    ways += [past.effects.get(each, NOWHERE) for each in past.names.items()]
    seen = Lab(
        *(
            x + sum(moved) + _noise(draws, law)
            for x, moved in zip(past.shade, zip(*ways, strict=True), strict=True)
        )
    )
    true: dict[Factor, Any] = {**past.names, **numbers}
    written: dict[str, Any] = {
        str(factor): round(value, 2) if isinstance(value, float) else value
        for factor, value in true.items()
        if draws.random() >= law.empty and factor not in law.silent
    }
    return PastLot(number=f"L{place + 1}", colour=seen, **written)


def _paler(past: Past) -> Way:
    way = [bare - x for bare, x in zip(past.law.bare, past.shade, strict=True)]
    return tuple(x / hypot(*way) for x in way)


def _noise(draws: Random, law: Law) -> float:
    """Return noise; with long tails Student's t of 5, to the same spread."""
    drawn = draws.gauss(0.0, law.noise)
    if not law.has_long_tails:
        return drawn
    chi = sum(draws.gauss(0.0, 1.0) ** 2 for _ in range(5))
    return drawn * sqrt(3.0 / chi)
