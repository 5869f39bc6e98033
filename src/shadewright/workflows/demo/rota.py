"""What the demo dyes on its dye days, and what goes differently."""

from dataclasses import dataclass
from enum import StrEnum

_SKEIN_G = {"Byre DK": 100, "Drift lace": 50, "Hollow 4-ply": 100, "Stile tweed": 50}

PH = {
    "Beech leaf": 5.8,
    "Bramble Grey": 5.6,
    "Foxglove Bank": 4.8,
    "Kingcup": 3.2,
    "Low Tide": 4.6,
    "Millrace": 3.3,
    "Night Hedge": 5.4,
    "Peat Smoke": 5.8,
    "Primrose Path": 6.2,
    "Rosehip Lane": 3.1,
    "Seaglass": 5.1,
}
"""What a pH strip shows at the top temperature."""


class Slip(StrEnum):
    """What can go differently at the pot."""

    OVER_POUR = "over-pour"
    MISSED_DOSE = "missed dose"
    LATE_ACID = "late acid"
    WEAK_ACID = "weak acid"
    SHORT_HOLD = "short hold"
    RAN_OUT = "ran out"
    TAKEN_BACK = "taken back"
    TWO_PHONES = "two phones"
    BOILED_OVER = "boiled over"
    GIVEN_UP = "given up"


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """A bath that somebody wants: which colourway, on which yarn, how much."""

    name: str
    base: str
    fibre_g: float
    is_swatch: bool = False
    slip: Slip | None = None

    @property
    def skeins(self) -> int | None:
        """How many skeins that is."""
        return None if self.is_swatch else round(self.fibre_g / _SKEIN_G[self.base])


def _bath(name: str, base: str, fibre_g: float) -> Wanted:
    return Wanted(name=name, base=base, fibre_g=fibre_g)


def _swatch(name: str, base: str) -> Wanted:
    return Wanted(name=name, base=base, fibre_g=12, is_swatch=True)


ROTA = (
    (
        _bath("Low Tide", "Hollow 4-ply", 400),
        _bath("Kingcup", "Byre DK", 300),
        _bath("Bramble Grey", "Hollow 4-ply", 300),
        _swatch("Low Tide", "Drift lace"),
    ),
    (
        _bath("Rosehip Lane", "Byre DK", 400),
        _bath("Millrace", "Hollow 4-ply", 300),
        _bath("Foxglove Bank", "Drift lace", 200),
    ),
    (
        _bath("Night Hedge", "Byre DK", 300),
        _bath("Low Tide", "Byre DK", 300),
        _bath("Peat Smoke", "Stile tweed", 250),
    ),
    (
        _bath("Bramble Grey", "Drift lace", 250),
        _bath("Rosehip Lane", "Hollow 4-ply", 300),
        _bath("Millrace", "Byre DK", 300),
        _swatch("Rosehip Lane", "Stile tweed"),
    ),
    (
        _bath("Seaglass", "Drift lace", 250),
        _bath("Peat Smoke", "Byre DK", 400),
        _bath("Foxglove Bank", "Hollow 4-ply", 300),
        _swatch("Seaglass", "Hollow 4-ply"),
    ),
    (
        _bath("Kingcup", "Stile tweed", 250),
        _bath("Low Tide", "Hollow 4-ply", 400),
        _bath("Night Hedge", "Hollow 4-ply", 200),
        _swatch("Kingcup", "Drift lace"),
    ),
)

EXTRA = {
    47: _swatch("Primrose Path", "Byre DK"),
    30: Wanted(name="Seaglass", base="Byre DK", fibre_g=300, slip=Slip.GIVEN_UP),
}
"""What is dyed on a day beside the rota, for once."""

YESTERDAYS = _bath("Kingcup", "Byre DK", 200)
MORNING = _bath("Foxglove Bank", "Hollow 4-ply", 200)
GOING = _bath("Low Tide", "Byre DK", 200)
PLANNED = _bath("Millrace", "Hollow 4-ply", 300)

WENT_DIFFERENTLY = {
    (96, 0): Slip.OVER_POUR,
    (93, 1): Slip.LATE_ACID,
    (86, 1): Slip.TAKEN_BACK,
    (79, 2): Slip.SHORT_HOLD,
    (72, 0): Slip.TWO_PHONES,
    (65, 2): Slip.TWO_PHONES,
    (58, 1): Slip.MISSED_DOSE,
    (51, 0): Slip.BOILED_OVER,
    (44, 1): Slip.LATE_ACID,
    (37, 0): Slip.OVER_POUR,
    (30, 2): Slip.RAN_OUT,
    (23, 1): Slip.SHORT_HOLD,
    (16, 1): Slip.TAKEN_BACK,
    (12, 0): Slip.WEAK_ACID,
    (9, 0): Slip.MISSED_DOSE,
}
