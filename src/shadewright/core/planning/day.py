"""A dye day as it is wished: what there is, who is in, what is to be dyed."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from shadewright.core.tables.heat import Source as SourceKind


class Stage(StrEnum):
    """What a bath goes through, in this order."""

    FILL = "fill"
    HEAT = "heat"
    DOSE = "dose"
    RAMP = "ramp"
    HOLD = "hold"
    CHECK = "check"
    COOL = "cool"
    RINSE = "rinse"


BLOCK = (Stage.HEAT, Stage.DOSE, Stage.RAMP, Stage.HOLD, Stage.CHECK)
"""Stages between which there is no gap."""

HANDS = frozenset({Stage.FILL, Stage.DOSE, Stage.CHECK, Stage.RINSE})
"""Stages that want one person from end to end."""


@dataclass(frozen=True, kw_only=True)
class DayPerson:
    """Somebody, and when they are in, in ticks from the day's start, in minutes."""

    name: str
    starts: int
    ends: int


@dataclass(frozen=True, kw_only=True)
class DayPot:
    """A pot, in l and kg; not to be used from ``out_from`` on, in minutes."""

    name: str
    volume_l: float
    mass_kg: float
    material: str
    out_from: int | None = None


@dataclass(frozen=True, kw_only=True)
class DayCircuit:
    """Sources that share a fuse, in kW."""

    name: str
    limit_kw: float


@dataclass(frozen=True, kw_only=True)
class DaySource:
    """A source of heat; without a circuit only its own power limits it, in kW.

    Not to be used from ``out_from`` on. A steamer takes one steamed bath at once, of up
    to ``room_g`` of yarn where that is known. [kW, min, g]
    """

    name: str
    power_kw: float
    kind: SourceKind
    circuit: str = ""
    out_from: int | None = None
    room_g: float | None = None


@dataclass(frozen=True, kw_only=True)
class Touch:
    """What is done within a stage, as acid in the middle of a rise, in minutes."""

    stage: Stage
    at: int
    minutes: int


@dataclass(frozen=True, kw_only=True)
class Pin:
    """What is settled of a bath: pot, source, when its filling starts, in minutes."""

    pot: str = ""
    source: str = ""
    start: int | None = None


@dataclass(frozen=True, kw_only=True)
class Going:
    """How far a bath has come that has begun, in ticks of the day, in minutes.

    Its filling began at ``fill_start`` in ``pot`` (empty for a steamed one). Its heat
    is on ``source`` since ``heat_start``, or not on yet where that is None. What its
    minutes put before the day's ``now`` is over, so that a late pot has longer ones.
    ``checked_at`` and ``rinse_start`` are given once they are known. A bath that was
    rinsed holds its pot no longer, which wants a wash-out as ever; once that is done
    too, leave the bath away and count its skeins as ``rack_used``.
    """

    pot: str
    source: str = ""
    fill_start: int
    heat_start: int | None = None
    checked_at: int | None = None
    rinse_start: int | None = None

    @property
    def has_heat(self) -> bool:
        """Whether the heat was put on, so that source and times are settled."""
        later = (self.heat_start, self.checked_at, self.rinse_start)
        return any(each is not None for each in later)


@dataclass(frozen=True, kw_only=True)
class PlaceBefore:
    """A bath in a plan: pot, source, when its filling starts, in minutes."""

    pot: str
    source: str
    start: int


@dataclass(frozen=True, kw_only=True)
class WantedBath:
    """A bath to be dyed.

    ``minutes`` are those of its stages; heat and rise may be missing and come from the
    heat model then. ``minutes_by_place`` holds the minutes of heat and rise by names of
    pot and source (no pot for steam), where they were learned; they go before both,
    but not for a bath whose heat is on. ``cools_on_source`` is None where the weight
    decides. A steamed bath wants a steamer and no pot. [min, g, %]
    """

    name: str
    family: str
    depth_percent: float
    fibre_g: float
    skeins: int
    liquor_ratio: float
    minutes: dict[Stage, int]
    due: int | None = None
    touches: tuple[Touch, ...] = ()
    cools_on_source: bool | None = None
    is_overnight: bool = False
    pin: Pin | None = None
    is_steamed: bool = False
    minutes_by_place: Mapping[tuple[str, str], tuple[int, int]] = field(
        default_factory=dict
    )
    going: Going | None = None

    @property
    def liquor_l(self) -> float:
        """All the liquor, in litres."""
        return self.fibre_g * self.liquor_ratio / 1000.0


@dataclass(frozen=True, kw_only=True)
class Day:
    """All of it, counted in ticks from the day's start; ``length`` is the day's end.

    A tick is a minute, or the part of one in which every length given is whole. The
    day opens so many minutes after midnight. Nothing that has not begun starts before
    ``now``.
    """

    length: int
    people: tuple[DayPerson, ...]
    pots: tuple[DayPot, ...]
    circuits: tuple[DayCircuit, ...]
    sources: tuple[DaySource, ...]
    sinks: int
    rack_slots: int
    rack_used: int
    washout: int
    baths: tuple[WantedBath, ...]
    ticks_per_min: int = 1
    opens_min: int = 0
    now: int = 0
