"""Invented studios by another law: three dyes, each now weaker and now stronger.

Yarn reflects red, green and blue light by Kubelka and Munk. Whatever happens changes
how much of a dye is on the yarn: a jar and a bottle one dye, water one dye up and
another down, yarn and a pot all of them, an old bottle one dye down; a short hold, a
heavy load and late acid all of them, down. So paler is a curve and often another hue.
Noise is mostly in the dosing. Bottles go with their jars, waters come back, loads go
by skeins.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from math import dist, exp, sqrt
from random import Random
from typing import Any

from shadewright.core.colour import Lab, lab_of_xyz
from shadewright.core.quality import Factor, PastLot
from shadewright.core.quality.causes.history import NAMES, NUMBERS
from tests.core.quality.made_studios import Studio

Three = tuple[float, ...]

NO_DYE_MORE: Three = (0.0, 0.0, 0.0)
BARES = ((0.78, 0.74, 0.62), (0.45, 0.44, 0.42), (0.85, 0.84, 0.80), (0.5, 0.4, 0.3))
TO_XYZ = ((41.24, 35.76, 18.05), (21.26, 71.52, 7.22), (1.93, 11.92, 95.05))
WHITE = (95.05, 100.0, 108.9)
PLANTED = tuple(each for each in Factor if each is not Factor.RAMP)
DECOYS = (*NAMES, Factor.RAMP, Factor.ACID_AFTER, Factor.HOLD)
USUAL = {
    Factor.BOTTLE_AGE: 5.0,
    Factor.LOAD: 25.0,
    Factor.RAMP: 1.5,
    Factor.HOLD: 45.0,
    Factor.ACID_AFTER: 15.0,
}
JUMPS = {
    Factor.BOTTLE_AGE: (60.0, 200.0),
    Factor.LOAD: (12.0, 30.0),
    Factor.HOLD: (-33.0, -15.0),
    Factor.ACID_AFTER: (15.0, 40.0),
}


@dataclass
class Pots:
    """A studio’s shade and habits, and what stands on its shelf now."""

    draws: Random
    bare: Three
    depths: Three
    dyes: tuple[Three, ...]
    dosing: float
    fades: float
    names: dict[Factor, str] = field(default_factory=dict)
    numbers: dict[Factor, float] = field(default_factory=dict)
    worth: dict[str, Three] = field(default_factory=dict)
    count: int = 0

    def rename(self, factor: Factor, *, more: Three = NO_DYE_MORE) -> None:
        """Take up a new jar, pot or person: so much more of each dye, as a share."""
        self.count += 1
        self.names[factor] = f"{factor.value}-{self.count}"
        self.worth[self.names[factor]] = more

    def seen(self, *, more: Three = NO_DYE_MORE) -> Lab:
        """Return the colour of yarn with so much more of each dye than is usual."""
        shares = [exp(x) for x in more]
        strong = [d * s for d, s in zip(self.depths, shares, strict=True)]
        light = []
        for band, bare in enumerate(self.bare):
            k = (1 - bare) ** 2 / (2 * bare)
            k += sum(x * dye[band] for x, dye in zip(strong, self.dyes, strict=True))
            light.append(1 + k - sqrt(k * k + 2 * k))
        xyz = [sum(m * x for m, x in zip(row, light, strict=True)) for row in TO_XYZ]
        return lab_of_xyz(xyz, white=WHITE)


def dyed_studio(seed: int, *, is_quiet: bool = False) -> Studio:
    """Return a studio by its seed; a quiet one has no cause planted."""
    pots = _begun(seed)
    count = pots.draws.randint(8, 18)
    lots = []
    for place in range(count - 1):
        _let_time_pass(pots)
        _change_a_little(pots)
        lots.append(_dyed(pots, place))
    _let_time_pass(pots)
    usual = dict(pots.numbers)
    cause = None if is_quiet else pots.draws.choice(PLANTED)
    size = 0.0 if cause is None else pots.draws.uniform(1.2, 4.0)
    more = NO_DYE_MORE if cause is None else _planted(pots, cause, size)
    decoys = _distracted(pots, cause)
    lots.append(_dyed(pots, count - 1, more=more, acting=usual))
    return Studio(lots=tuple(lots), cause=cause, size=size, decoys=decoys)


def dyed_studios(count: int, *, is_quiet: bool = False) -> Iterator[Studio]:
    """Return so many studios."""
    return (dyed_studio(seed, is_quiet=is_quiet) for seed in range(count))


def _begun(seed: int) -> Pots:
    # ruff: ignore[suspicious-non-cryptographic-random-usage]
    draws = Random(f"{seed} dyed")
    coefficients = [[draws.uniform(0.02, 0.3) for _ in range(3)] for _ in range(3)]
    for dye, row in enumerate(coefficients):
        row[dye] = draws.uniform(2.0, 5.0)
    pots = Pots(
        draws=draws,
        bare=draws.choice(BARES),
        depths=tuple(draws.uniform(0.05, 1.0) ** 2 for _ in range(3)),
        dyes=tuple(tuple(row) for row in coefficients),
        dosing=draws.uniform(0.005, 0.02),
        fades=draws.uniform(0.0, 0.0008),
    )
    for factor in NAMES:
        pots.rename(factor)
    pots.numbers = dict(USUAL)
    return pots


def _let_time_pass(pots: Pots) -> None:
    draws = pots.draws
    pots.numbers[Factor.BOTTLE_AGE] += draws.randint(5, 20)
    pots.numbers[Factor.LOAD] = 5.0 * draws.choice((4, 5, 5, 5, 6))
    pots.numbers[Factor.RAMP] = draws.choice((1.4, 1.5, 1.5, 1.6))
    pots.numbers[Factor.HOLD] = draws.choice((45, 45, 45, 50))
    pots.numbers[Factor.ACID_AFTER] = draws.choice((15, 15, 18))


def _change_a_little(pots: Pots) -> None:
    draws = pots.draws
    has_new_jar = draws.random() < 0.12
    if has_new_jar:
        pots.rename(Factor.JAR, more=(draws.gauss(0.0, 0.02), 0.0, 0.0))
    if has_new_jar or draws.random() < 0.25:
        pots.rename(Factor.BOTTLE, more=(draws.gauss(0.0, 0.01), 0.0, 0.0))
        pots.numbers[Factor.BOTTLE_AGE] = draws.randint(0, 3)
    if draws.random() < 0.15:
        pots.rename(Factor.MILL_LOT, more=(draws.gauss(0.0, 0.01),) * 3)
    for factor, names in ((Factor.POT, "xyz"), (Factor.PERSON, "uv")):
        pots.names[factor] = f"{factor}-{draws.choice(names)}"
    if draws.random() < 0.1:
        pots.names[Factor.WATER] = f"water-{draws.choice('rt')}"


def _planted(pots: Pots, cause: Factor, size: float) -> Three:
    """Return how much more of each dye there is, so that the colour moves by a size."""
    draws = pots.draws
    if cause in NAMES:
        pots.rename(cause)
        if cause is Factor.BOTTLE:
            pots.numbers[Factor.BOTTLE_AGE] = draws.randint(0, 3)
    else:
        pots.numbers[cause] = max(
            1.0, pots.numbers[cause] + draws.uniform(*JUMPS[cause])
        )
    sign = draws.choice((-1.0, 1.0))
    one = draws.randrange(3)
    ways = {
        Factor.BOTTLE_AGE: tuple(-1.0 * (dye == one) for dye in range(3)),
        Factor.WATER: tuple(draws.gauss(0.0, 1.0) for _ in range(3)),
        Factor.MILL_LOT: (sign,) * 3,
        Factor.POT: (sign,) * 3,
        Factor.LOAD: (-1.0,) * 3,
        Factor.HOLD: (-1.0,) * 3,
        Factor.ACID_AFTER: (-1.0,) * 3,
    }
    plain = tuple(sign * (dye == one) for dye in range(3))
    return _as_far(pots, ways.get(cause, plain), size)


def _as_far(pots: Pots, way: Three, size: float) -> Three:
    """Return as much of a way as moves the colour by a size, or all that it can."""
    least, most = 0.0, 2.5
    for _ in range(30):
        middle = (least + most) / 2
        more = tuple(middle * x for x in way)
        is_less = dist(pots.seen(), pots.seen(more=more)) < size
        least, most = (middle, most) if is_less else (least, middle)
    return tuple(least * x for x in way)


def _distracted(pots: Pots, cause: Factor | None) -> int:
    draws = pots.draws
    count = draws.randint(1, 3)
    for factor in draws.sample([each for each in DECOYS if each is not cause], count):
        if factor in NAMES:
            pots.rename(factor)
        else:
            pots.numbers[factor] *= draws.choice((1.2, 1.4))
    return count


def _dyed(
    pots: Pots,
    place: int,
    *,
    more: Three = NO_DYE_MORE,
    acting: Mapping[Factor, float] | None = None,
) -> PastLot:
    """Dye a lot, read it, write most of it down; ``acting`` are numbers that do."""
    draws, true = pots.draws, acting or pots.numbers
    worths = [pots.worth.get(name, NO_DYE_MORE) for name in pots.names.values()]
    usual = 1 - exp(-USUAL[Factor.HOLD] / 11)
    held = (1 - exp(-true[Factor.HOLD] / 11)) / usual - 1
    all_dyes = held - 0.003 * (true[Factor.LOAD] - USUAL[Factor.LOAD])
    faded = -pots.fades * true[Factor.BOTTLE_AGE]
    dosed = [
        sum(each) + all_dyes + draws.gauss(0.0, pots.dosing)
        for each in zip(more, *worths, strict=True)
    ]
    dosed[0] += faded
    seen = Lab(*(x + draws.gauss(0.0, 0.1) for x in pots.seen(more=tuple(dosed))))
    known: dict[Factor, Any] = {**pots.names, **pots.numbers}
    written: dict[str, Any] = {
        str(factor): round(value, 1) if factor in NUMBERS else value
        for factor, value in known.items()
        if draws.random() >= 0.06
    }
    return PastLot(number=f"L{place + 1}", colour=seen, **written)
