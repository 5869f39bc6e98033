"""The demo's dyes and yarns as they truly are: invented, like their names.

No curve here was measured. Each was made up so that a skein at the usual depth looks
like the dye's name and like the patch on its chart.
"""

from dataclasses import dataclass
from math import exp

BANDS_NM = tuple(range(400, 701, 10))


@dataclass(frozen=True, kw_only=True)
class Bump:
    """A band in which a dye absorbs: even in energy, so longer towards the red."""

    nm: float
    wide: float
    high: float

    def at(self, nm: float, *, moved_nm: float) -> float:
        """Return what it absorbs at a wavelength; on some yarns it lies elsewhere."""
        middle = self.nm + moved_nm
        away = (1.0 / nm - 1.0 / middle) * middle**2 / self.wide
        return self.high * exp(-0.5 * away**2)


@dataclass(frozen=True, kw_only=True)
class TrueDye:
    """A dye as it is.

    ``room`` is the most that a yarn holds, ``half`` what must be left in the bath to
    fill half of that; ``stronger`` how much more it gives on a wool yarn and
    ``moved_nm`` how far its bands move there. [%], [%], [1], [nm]
    """

    bumps: tuple[Bump, ...]
    floor: float
    room: float
    half: float
    stronger: float
    moved_nm: float = 0.0

    def absorbs(self, *, moved_nm: float = 0.0) -> tuple[float, ...]:
        """Return what 1 % in the fibre absorbs, band by band."""
        return tuple(
            self.floor + sum(bump.at(nm, moved_nm=moved_nm) for bump in self.bumps)
            for nm in BANDS_NM
        )


@dataclass(frozen=True, kw_only=True)
class TrueYarn:
    """A bare yarn: how white, how much yellower in the blue, how it shines."""

    white: float
    yellow: float
    shine: float
    is_wool: bool = False

    def reflects(self) -> tuple[float, ...]:
        """Return the share of light that comes back, band by band."""
        return tuple(
            self.white - self.yellow * exp((400.0 - nm) / 70.0) for nm in BANDS_NM
        )


def _bumps(*each: tuple[float, float, float]) -> tuple[Bump, ...]:
    return tuple(Bump(nm=nm, wide=wide, high=high) for nm, wide, high in each)


YARNS = {
    "Hollow 4-ply": TrueYarn(white=0.80, yellow=0.26, shine=0.010),
    "Byre DK": TrueYarn(white=0.75, yellow=0.30, shine=0.007, is_wool=True),
}

DYES = {
    "Bramble": TrueDye(
        bumps=_bumps((510, 49, 6.7), (625, 31, 5.9)),
        floor=0.12,
        room=6.5,
        half=0.06,
        stronger=0.93,
        moved_nm=2,
    ),
    "Coal": TrueDye(
        bumps=_bumps((591, 70, 8.4), (480, 60, 3.5), (420, 40, 4.9)),
        floor=0.1,
        room=9.0,
        half=0.03,
        stronger=0.97,
        moved_nm=0,
    ),
    "Foxglove": TrueDye(
        bumps=_bumps((545, 26, 0.4), (506, 36, 7.2)),
        floor=0.12,
        room=5.5,
        half=0.12,
        stronger=1.08,
        moved_nm=-2,
    ),
    "Gorse": TrueDye(
        bumps=_bumps((424, 33, 7.6), (464, 21, 2.8)),
        floor=0.08,
        room=4.5,
        half=0.2,
        stronger=1.14,
        moved_nm=0,
    ),
    "Heather": TrueDye(
        bumps=_bumps((577, 36, 1.1), (529, 42, 1.4)),
        floor=0.2,
        room=6.0,
        half=0.06,
        stronger=0.92,
        moved_nm=2,
    ),
    "Kelp": TrueDye(
        bumps=_bumps((640, 42, 1.0), (427, 45, 3.1), (595, 34, 2.7)),
        floor=0.11,
        room=5.5,
        half=0.1,
        stronger=1.05,
        moved_nm=1,
    ),
    "Lagoon": TrueDye(
        bumps=_bumps((640, 38, 0.7), (604, 33, 2.6)),
        floor=0.36,
        room=5.5,
        half=0.14,
        stronger=1.1,
        moved_nm=-1,
    ),
    "Marigold": TrueDye(
        bumps=_bumps((474, 31, 9.4), (435, 32, 5.1)),
        floor=0.1,
        room=4.5,
        half=0.22,
        stronger=1.12,
        moved_nm=1,
    ),
    "Peat": TrueDye(
        bumps=_bumps((440, 49, 6.3), (510, 55, 1.7), (610, 60, 1.1)),
        floor=0.1,
        room=9.0,
        half=0.03,
        stronger=0.98,
        moved_nm=0,
    ),
    "Rosehip": TrueDye(
        bumps=_bumps((507, 29, 17.1), (469, 35, 19.1), (545, 19, 5.5)),
        floor=0.07,
        room=4.2,
        half=0.25,
        stronger=1.16,
        moved_nm=-1,
    ),
    "Slate": TrueDye(
        bumps=_bumps((610, 60, 1.6), (560, 50, 1.4), (430, 40, 1.3)),
        floor=0.1,
        room=4.0,
        half=0.25,
        stronger=1.11,
        moved_nm=2,
    ),
    "Sloe": TrueDye(
        bumps=_bumps((605, 48, 7.0), (559, 40, 5.8), (450, 40, 2.4)),
        floor=0.1,
        room=6.5,
        half=0.06,
        stronger=0.94,
        moved_nm=1,
    ),
}
