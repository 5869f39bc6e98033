"""Synthetic worlds: invented dyes on invented yarn, whose truth is known.

They are built by other rules than the model's own: dyes are plain bells on a floor,
and grow with depth by one of three laws that the model does not know.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from shadewright.core.mixing.model.kubelka_munk import reflectance_of_ks
from shadewright.core.mixing.model.seeing import as_seen
from shadewright.core.mixing.model.shapes import wavelengths_nm
from shadewright.core.mixing.swatches import Evidence, Reading, Swatch, seen_of

Floats = NDArray[np.float64]

LAWS = ("flags", "power", "exhausts")
LADDER = (0.1, 0.3, 1.0, 2.5)


@dataclass(frozen=True)
class World:
    """Dyes by shape (n, 31), strength, law; the bare yarn's K/S; the surface."""

    shapes: Floats
    gains: Floats
    half: Floats
    powers: Floats
    ground: Floats
    surface: float
    law: str

    @property
    def dyes(self) -> int:
        """How many dyes."""
        return len(self.gains)

    def grown(self, depths: Floats) -> Floats:
        """Return what a depth does, by this world's law."""
        if self.law == "flags":
            return np.asarray(depths / (1.0 + depths / self.half))
        if self.law == "power":
            return np.asarray(depths**self.powers)
        return np.asarray(self.half * (1.0 - np.exp(-depths / self.half)))

    def reflectance(self, depths: Floats, *, factor: float | Floats = 1.0) -> Floats:
        """Return the true reflectance of swatches."""
        added = (self.grown(depths) * self.gains * factor) @ self.shapes
        inside = reflectance_of_ks(self.ground + added)
        return np.asarray(self.surface + (1.0 - self.surface) * inside)

    def lab(self, depths: Floats) -> Floats:
        """Return the true colour of swatches under D65."""
        return as_seen(self.reflectance(depths), seen_of(Evidence.LAB))


def world(seed: int, law: str, surface: float, *, dyes: int = 9) -> World:
    """Return an invented world."""
    draws = np.random.default_rng(seed)
    nm = wavelengths_nm()
    shapes = []
    for _ in range(dyes):
        shape = np.zeros(len(nm))
        for band in range(int(draws.integers(1, 4))):
            height = 1.0 if band == 0 else draws.uniform(0.1, 0.6)
            at, wide = draws.uniform(400, 660), draws.uniform(28, 60)
            shape += height * np.exp(-0.5 * ((nm - at) / wide) ** 2)
        shapes.append(shape / shape.max() + draws.uniform(0.003, 0.02))
    ground = 0.0643 * np.exp(draws.normal(0.0, 0.1))
    return World(
        shapes=np.array(shapes),
        gains=np.exp(draws.normal(np.log(8.0), 0.35, dyes)),
        half=np.exp(draws.normal(np.log(4.0), 0.3, dyes)),
        powers=draws.uniform(0.82, 1.0, dyes),
        ground=ground * np.exp(0.6 * np.exp(-(nm - 400.0) / 60.0)),
        surface=surface,
        law=law,
    )


def ladder(dyes: int, depths: tuple[float, ...] = LADDER) -> Floats:
    """Return bare yarn, and each dye by itself at each depth."""
    rows = [np.zeros(dyes)]
    rows += [np.eye(dyes)[dye] * depth for dye in range(dyes) for depth in depths]
    return np.array(rows)


def ternaries(draws: np.random.Generator, dyes: int, count: int) -> Floats:
    """Return mixes of three dyes at 0.08 to 1 % each."""
    rows = np.zeros((count, dyes))
    for row in rows:
        three = draws.choice(dyes, 3, replace=False)
        row[three] = np.exp(draws.uniform(np.log(0.08), 0.0, 3))
    return rows


def doses_of(depths: Floats) -> tuple[tuple[str, float], ...]:
    """Return one row of depths by name."""
    return tuple((f"d{dye:02d}", float(depths[dye])) for dye in np.flatnonzero(depths))


@dataclass(frozen=True)
class Lab:
    """A bench that dyes and reads with known errors."""

    world: World
    draws: np.random.Generator
    dose_error: float = 0.02

    def read(
        self, depths: Floats, evidence: Evidence, noise: float, *, session: str = ""
    ) -> list[Swatch]:
        """Dye swatches and read them; the noise is a distance in Lab, or a band's."""
        off = self.dose_error * self.draws.standard_normal(depths.shape)
        true = as_seen(self.world.reflectance(depths * np.exp(off)), seen_of(evidence))
        is_spectrum = evidence is Evidence.SPECTRUM
        sd = noise if is_spectrum else noise / np.sqrt(3.0)
        seen = true + self.draws.normal(0.0, sd, true.shape)
        values = (np.maximum(seen, 9.3) / 116.0) ** 3 if is_spectrum else seen
        return [
            Swatch(
                number=place,
                base="wool",
                doses=doses_of(row),
                reading=Reading(
                    evidence=evidence,
                    values=tuple(float(value) for value in read),
                    sd=None if is_spectrum else noise,
                ),
                session=session,
            )
            for place, (row, read) in enumerate(zip(depths, values, strict=True), 1)
        ]
