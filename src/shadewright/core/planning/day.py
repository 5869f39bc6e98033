"""A dye day as it is wished: what there is, who is in, what is to be dyed."""

from dataclasses import dataclass
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
    """A pot, in l and kg."""

    name: str
    volume_l: float
    mass_kg: float
    material: str


@dataclass(frozen=True, kw_only=True)
class DayCircuit:
    """Sources that share a fuse, in kW."""

    name: str
    limit_kw: float


@dataclass(frozen=True, kw_only=True)
class DaySource:
    """A source of heat; without a circuit only its own power limits it, in kW."""

    name: str
    power_kw: float
    kind: SourceKind
    circuit: str = ""


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
class WantedBath:
    """A bath to be dyed.

    ``minutes`` are those of its stages; heat and rise may be missing and come from the
    heat model then. ``cools_on_source`` is None where the weight decides. [min, g, %]
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

    @property
    def liquor_l(self) -> float:
        """All the liquor, in litres."""
        return self.fibre_g * self.liquor_ratio / 1000.0


@dataclass(frozen=True, kw_only=True)
class Day:
    """All of it, counted in ticks from the day's start; ``length`` is the day's end.

    A tick is a minute, or the part of one in which every length given is whole. The
    day opens so many minutes after midnight.
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
