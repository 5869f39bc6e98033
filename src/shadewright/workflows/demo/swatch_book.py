"""The demo's swatch book: what was dyed to be looked at, and what an eye saw of it.

Most of it is from before the studio wrote its baths down. One dose was weighed wrong
and nobody knows; one swatch was read while it was wet; two dyes were matched on Byre DK
at a screen only, and one ladder was read again by a friend’s meter for spectra.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from shadewright.core.colour import Lab
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.demo.truth import (
    Spectrum,
    day_of,
    eyed,
    metered,
    reflectance,
    slipped,
    spread_out,
    wetted,
)

SUPERWASH, WOOL = "Hollow 4-ply", "Byre DK"
EARLY, LATE = 66, 44
"""So many days ago the first swatches were read, and those dyed since."""

Doses = tuple[tuple[str, float], ...]


@dataclass(frozen=True, kw_only=True)
class InBook:
    """A swatch of the book; ``really`` is the factor on a dose that went wrong.

    ``again_by`` tells that it was read once more, later, and how.
    """

    yarn: str
    doses: Doses
    dyed_ago: int
    read_ago: int = EARLY
    read_by: ReadBy = ReadBy.METER
    again_by: ReadBy | None = None
    really: float = 1.0
    is_wet: bool = False


@dataclass(frozen=True, kw_only=True)
class Seen:
    """What was seen of a swatch: Lab a reading, or a spectrum."""

    labs: tuple[Lab, ...] = ()
    spectrum: Spectrum = ()


LADDERS: dict[str, tuple[float, ...]] = {
    "Gorse": (0.1, 0.3, 1.0, 2.0),
    "Marigold": (0.1, 0.4, 1.2),
    "Rosehip": (0.1, 0.3, 1.0, 2.5),
    "Foxglove": (0.1, 0.4, 1.2),
    "Heather": (0.1, 0.4, 1.2),
    "Bramble": (0.1, 0.3, 1.0, 2.5),
    "Sloe": (0.1, 0.3, 1.0, 2.5),
    "Lagoon": (0.05, 0.2, 0.5, 1.0, 2.0),
    "Kelp": (0.05, 0.3, 0.8, 2.0),
    "Slate": (0.1, 0.4, 1.2),
    "Peat": (0.1, 0.4, 1.5),
    "Coal": (0.1, 0.5, 1.5, 3.0),
}
"""Depths of each dye on the superwash. [%]"""

ON_WOOL: dict[str, tuple[float, ...]] = {
    "Gorse": (0.3, 1.2),
    "Marigold": (0.2, 1.0),
    "Rosehip": (0.3, 1.0, 2.0),
    "Foxglove": (0.3, 1.0),
    "Heather": (0.5,),
    "Bramble": (0.2, 1.0),
    "Sloe": (0.2, 0.8, 2.0),
    "Lagoon": (0.2, 0.8),
    "Kelp": (0.2, 0.8),
    "Slate": (0.3, 1.0),
    "Peat": (0.3, 1.0),
    "Coal": (0.8,),
}

AT_A_SCREEN = {"Heather", "Coal"}
AGAIN_AS_SPECTRA = "Rosehip"
WRONG_DOSE = (SUPERWASH, (("Kelp", 0.3),))
"""It says 0.3 %; three times as much went in."""
WET = (WOOL, (("Slate", 1.0),))

MIXES: tuple[tuple[int, str, Doses], ...] = (
    (151, SUPERWASH, (("Lagoon", 0.5), ("Kelp", 0.25))),
    (151, SUPERWASH, (("Rosehip", 0.6), ("Marigold", 0.3))),
    (151, SUPERWASH, (("Gorse", 0.8), ("Peat", 0.2))),
    (151, SUPERWASH, (("Bramble", 0.2), ("Sloe", 0.1))),
    (137, SUPERWASH, (("Slate", 0.5), ("Gorse", 0.1))),
    (137, SUPERWASH, (("Foxglove", 0.4), ("Heather", 0.3))),
    (137, SUPERWASH, (("Peat", 0.5), ("Coal", 0.15), ("Marigold", 0.1))),
    (137, SUPERWASH, (("Kelp", 0.3), ("Gorse", 0.4), ("Slate", 0.1))),
    (123, WOOL, (("Rosehip", 0.8), ("Marigold", 0.25))),
    (123, WOOL, (("Lagoon", 0.4), ("Slate", 0.2))),
    (123, WOOL, (("Bramble", 0.7), ("Sloe", 0.5))),
    (123, WOOL, (("Gorse", 1.0), ("Marigold", 0.15))),
)
SINCE: tuple[tuple[int, str, Doses], ...] = (
    (57, SUPERWASH, (("Lagoon", 0.3), ("Gorse", 0.3))),
    (57, SUPERWASH, (("Sloe", 0.4), ("Foxglove", 0.2))),
    (57, SUPERWASH, (("Rosehip", 0.3), ("Peat", 0.4), ("Gorse", 0.2))),
    (57, SUPERWASH, (("Kelp", 0.5), ("Coal", 0.2))),
    (50, SUPERWASH, (("Slate", 0.3), ("Heather", 0.2), ("Coal", 0.1))),
    (50, SUPERWASH, (("Marigold", 0.4), ("Foxglove", 0.15))),
    (50, WOOL, (("Peat", 0.5), ("Slate", 0.3))),
    (50, WOOL, (("Kelp", 0.3), ("Gorse", 0.5), ("Peat", 0.1))),
)
_LADDERS_DYED, _ON_WOOL_DYED = (244, 230, 216), (188, 174)
_WRONG, _SEED = 3.0, 2611


def swatch_book() -> tuple[InBook, ...]:
    """Return every swatch of the book, in the order in which they were dyed."""
    return tuple(sorted(_all(), key=lambda each: -each.dyed_ago))


def seen_of(swatch: InBook, place: int, read_by: ReadBy) -> Seen:
    """Return what was seen of the swatch at a place of the book."""
    spectrum = dyed(
        swatch.yarn,
        tuple((dye, depth * swatch.really) for dye, depth in swatch.doses),
        days_ago=swatch.dyed_ago,
        chance=chance_of(f"swatch {place}"),
    )
    shown = wetted(spectrum) if swatch.is_wet else spectrum
    return seen_by(read_by, shown, chance_of(f"swatch {place} {read_by}"))


def dyed(yarn: str, doses: Doses, *, days_ago: int, chance: Random) -> Spectrum:
    """Return the true spectrum of yarn that was dyed on a day with these doses."""
    day = day_of(chance_of(f"day {days_ago}"))
    return reflectance(yarn, slipped(dict(doses), chance), day=day)


def seen_by(read_by: ReadBy, spectrum: Spectrum, chance: Random) -> Seen:
    """Return what is seen of a spectrum by a meter or by an eye."""
    if read_by is ReadBy.SPECTRUM:
        return Seen(spectrum=spread_out(spectrum, chance))
    if read_by is ReadBy.METER:
        return Seen(labs=metered(spectrum, chance))
    return Seen(labs=(eyed(spectrum, chance),))


def chance_of(what: str) -> Random:
    """Return the chance of one thing, which no other thing disturbs."""
    return Random(f"{_SEED} {what}")  # ruff: ignore[suspicious-non-cryptographic-random-usage]


def _all() -> Iterator[InBook]:
    yield InBook(yarn=SUPERWASH, doses=(), dyed_ago=_LADDERS_DYED[0])
    yield InBook(yarn=WOOL, doses=(), dyed_ago=_ON_WOOL_DYED[0])
    for place, (dye, depths) in enumerate(LADDERS.items()):
        for depth in depths:
            yield _rung(SUPERWASH, dye, depth, _LADDERS_DYED[place // 4])
    for place, (dye, depths) in enumerate(ON_WOOL.items()):
        for depth in depths:
            yield _rung(WOOL, dye, depth, _ON_WOOL_DYED[place // 6])
    for dyed_ago, yarn, doses in MIXES:
        yield InBook(yarn=yarn, doses=doses, dyed_ago=dyed_ago)
    for dyed_ago, yarn, doses in SINCE:
        yield InBook(yarn=yarn, doses=doses, dyed_ago=dyed_ago, read_ago=LATE)


def _rung(yarn: str, dye: str, depth: float, dyed_ago: int) -> InBook:
    doses = ((dye, depth),)
    is_on_screen = yarn == WOOL and dye in AT_A_SCREEN
    is_read_again = yarn == SUPERWASH and dye == AGAIN_AS_SPECTRA
    return InBook(
        yarn=yarn,
        doses=doses,
        dyed_ago=dyed_ago,
        read_by=ReadBy.EYE if is_on_screen else ReadBy.METER,
        again_by=ReadBy.SPECTRUM if is_read_again else None,
        really=_WRONG if (yarn, doses) == WRONG_DOSE else 1.0,
        is_wet=(yarn, doses) == WET,
    )
