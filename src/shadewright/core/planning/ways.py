"""In which ways a bath can be dyed: on which source, in which pots, how long each.

Where a bath's own minutes say how long the heat and the rise take, every source is
alike but for its power; where the heat model says it, each pot on each source has
minutes of its own. Pots that make no difference share one way.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil
from typing import NamedTuple

from shadewright.core.baths.heating import HeatWanted, Load, heat_sum
from shadewright.core.planning.day import (
    BLOCK,
    HANDS,
    Day,
    DayPot,
    DaySource,
    Stage,
    WantedBath,
)
from shadewright.core.planning.fitting import (
    may_stand,
    places_of,
    room_of,
    stays_on_source,
)
from shadewright.core.tables.heat import Material

COLD_C, DOSE_C, TOP_C = 20.0, 40.0, 95.0
"""Water from the tap; where dye goes in; the top (common practice for wool). [°C]"""
_RISES = ((Stage.HEAT, COLD_C, DOSE_C), (Stage.RAMP, DOSE_C, TOP_C))
FASTEST_C_PER_MIN = 1.5
"""No rise from the heat model is steeper than this (common practice). [°C/min]"""


class Wanting(NamedTuple):
    """When hands are wanted, in minutes, and for which stage or touch."""

    offset: int
    length: int
    what: str | int


@dataclass(frozen=True, kw_only=True)
class Way:
    """A bath on one source, in one of some pots; minutes count from the heat's start.

    ``block`` lasts to the end of the check, ``power`` to the end of the hold,
    ``source`` as long as the source is taken (None: to the end of the day), ``cooled``
    to the end of the cooling. [min, kW]
    """

    source: int
    pots: tuple[int, ...]
    heat: int
    ramp: int
    block: int
    power: int
    taken: int | None
    cooled: int
    hands: tuple[Wanting, ...]
    power_kw: float


def ways_of(bath: WantedBath, day: Day) -> tuple[Way, ...]:
    """Return every way in which a bath can be dyed, by source, then by pot.

    A bath that is going stays where it is; whether it fits there is no question then.

    Parameters
    ----------
    bath : WantedBath
        What is to be dyed. [min]
    day : Day
        Pots and sources. [-]

    Returns
    -------
    tuple of Way
        None where no pot holds the bath. [min]
    """
    groups: dict[tuple[int, int, int, bool], list[int]] = {}
    for place, source in enumerate(day.sources):
        for which, pot in places_of(bath, day):
            if may_stand(bath, pot, source):
                heat, ramp = _heat_and_ramp(bath, pot, source, day)
                key = (place, heat, ramp, stays_on_source(bath, pot))
                groups.setdefault(key, []).append(which)
    return tuple(
        _way(
            bath, day, source=key[0], heat=key[1], ramp=key[2], stays=key[3], pots=pots
        )
        for key, pots in groups.items()
    )


def _heat_and_ramp(
    bath: WantedBath, pot: DayPot, source: DaySource, day: Day
) -> tuple[int, int]:
    """Return the minutes of heat and rise: learned, the bath's own, or the model's."""
    learned = bath.minutes_by_place.get((pot.name, source.name), (None, None))
    found = []
    for (stage, start_c, top_c), known in zip(_RISES, learned, strict=True):
        given = _given(bath, stage, known)
        if given is None:
            needed = _model_minutes(bath, pot, source, start_c, top_c)
            if stage is Stage.RAMP:
                needed = max(needed, (top_c - start_c) / FASTEST_C_PER_MIN)
            given = ceil(needed * day.ticks_per_min)
        found.append(given)
    return found[0], found[1]


def _given(bath: WantedBath, stage: Stage, learned: int | None) -> int | None:
    # What was learned goes before what is given, until the heat is on.
    given = bath.minutes.get(stage)
    if learned is None or (bath.going and bath.going.has_heat and given is not None):
        return given
    return learned


def _model_minutes(
    bath: WantedBath, pot: DayPot, source: DaySource, start_c: float, top_c: float
) -> float:
    load = Load(
        water_ml=bath.liquor_l * 1000.0,
        fibre_g=bath.fibre_g,
        vessel_kg=pot.mass_kg,
        material=Material(pot.material),
    )
    wanted = HeatWanted(
        load=load,
        start_c=start_c,
        top_c=top_c,
        power_kw=source.power_kw,
        source=source.kind,
    )
    return heat_sum(wanted=wanted).minutes


def _way(
    bath: WantedBath,
    day: Day,
    *,
    source: int,
    heat: int,
    ramp: int,
    stays: bool,
    pots: list[int],
) -> Way:
    lengths = bath.minutes | {Stage.HEAT: heat, Stage.RAMP: ramp}
    block = sum(lengths[stage] for stage in BLOCK)
    cooled = block if bath.is_overnight else block + lengths[Stage.COOL]
    forever = stays and bath.is_overnight
    return Way(
        source=source,
        pots=tuple(sorted(pots, key=lambda pot: room_of(day, pot))),
        heat=heat,
        ramp=ramp,
        block=block,
        power=block - lengths[Stage.CHECK],
        taken=None if forever else cooled if stays else block,
        cooled=cooled,
        hands=tuple(_hands(bath, lengths)),
        power_kw=day.sources[source].power_kw,
    )


def _hands(bath: WantedBath, lengths: dict[Stage, int]) -> Iterator[Wanting]:
    # In the order of the stages, each touch after what its stage wants.
    start = 0
    for stage in BLOCK:
        if stage in HANDS and lengths[stage]:
            yield Wanting(start, lengths[stage], stage)
        for number, touch in enumerate(bath.touches):
            if touch.stage is stage and touch.minutes:
                yield Wanting(start + touch.at, touch.minutes, number)
        start += lengths[stage]
