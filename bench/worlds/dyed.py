"""Invented dye houses whose truth is known, built otherwise than the model is.

Two families of dyes: plain bells in wavelength, and lopsided bands with long tails
that also drift a little with depth. Strength grows by one of three laws. A day shifts
the strength of each dye; a second yarn is darker, takes each dye by its own factor
and bends its shape. Reflectance follows Kubelka and Munk with a surface term, as the
model's does: what is tested is what swatches teach, not whether yarn obeys physics.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from shadewright.core.mixing.model.kubelka_munk import reflectance_of_ks
from shadewright.core.mixing.model.seeing import as_seen
from shadewright.core.mixing.model.shapes import wavelengths_nm
from shadewright.core.mixing.swatches import Evidence, Mix, Reading, Swatch, seen_of

Floats = NDArray[np.float64]

FAMILIES = ("bells", "lopsided")
LAWS = ("flags", "power", "exhausts")
LADDER = (0.1, 0.3, 1.0, 2.5)
BASES = ("wool", "silk")


@dataclass(frozen=True)
class World:
    """Dyes (n, 31) with their growth; two yarns; ``sessions`` factors by day."""

    shapes: Floats
    gains: Floats
    half: Floats
    powers: Floats
    drift: Floats
    grounds: Floats
    takes: Floats
    sessions: Floats
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

    def reflectance(self, depths: Floats, *, base: int = 0, day: int = 0) -> Floats:
        """Return the true reflectance of swatches dyed on a yarn on a day."""
        strength = self.grown(depths) * self.gains * self.sessions[day]
        logs = np.log(np.maximum(depths, 1e-9) / 0.5)
        bent = self.shapes * self.takes[base]
        turned = np.exp(logs[:, :, None] * self.drift)
        added = np.einsum("sn,nw,snw->sw", strength, bent, turned)
        inside = reflectance_of_ks(self.grounds[base] + added)
        return np.asarray(self.surface + (1.0 - self.surface) * inside)

    def lab(self, depths: Floats, *, base: int = 0, day: int = 0) -> Floats:
        """Return the true colour under D65."""
        daylight = seen_of(Evidence.LAB)
        return as_seen(self.reflectance(depths, base=base, day=day), daylight)


def world(
    seed: int,
    *,
    dyes: int = 9,
    days: int = 1,
    day_factor: float = 0.0,
    family: str | None = None,
    law: str | None = None,
    surface: float | None = None,
) -> World:
    """Return an invented world; family, law and surface go by the seed if not told."""
    draws = np.random.default_rng(1000 + seed)
    family = family or FAMILIES[seed % 2]
    nm = wavelengths_nm()
    band = _bells if family == "bells" else _lopsided
    ground = 0.0643 * np.exp(draws.normal(0.0, 0.1) + 0.6 * np.exp((400.0 - nm) / 60.0))
    bends = np.sin(np.outer(draws.uniform(0.5, 1.5, dyes), (nm - 550.0) / 60.0))
    factors = np.exp(draws.uniform(np.log(0.8), np.log(1.3), dyes))
    takes = np.exp(0.05 * draws.normal(size=(dyes, 1)) * bends) * factors[:, None]
    darker = ground * (1.4 + 0.5 * (700.0 - nm) / 300.0)
    return World(
        shapes=np.array([band(draws, nm) for _ in range(dyes)]),
        gains=np.exp(draws.normal(np.log(8.0), 0.35, dyes)),
        half=np.exp(draws.normal(np.log(4.0), 0.3, dyes)),
        powers=draws.uniform(0.82, 1.0, dyes),
        drift=(0.0 if family == "bells" else 0.015) * bends,
        grounds=np.array([ground, darker]),
        takes=np.array([np.ones((dyes, len(nm))), takes]),
        sessions=np.exp(day_factor * draws.standard_normal((days, dyes))),
        surface=(0.0, 0.005, 0.012)[seed % 9 // 3] if surface is None else surface,
        law=law or LAWS[seed % 3],
    )


def _bells(draws: np.random.Generator, nm: Floats) -> Floats:
    """Return one to three bells on a floor."""
    shape = np.zeros(len(nm))
    for band in range(int(draws.integers(1, 4))):
        height = 1.0 if band == 0 else draws.uniform(0.1, 0.6)
        at, wide = draws.uniform(400, 660), draws.uniform(28, 60)
        shape += height * np.exp(-0.5 * ((nm - at) / wide) ** 2)
    return np.asarray(shape / shape.max() + draws.uniform(0.003, 0.02))


def _lopsided(draws: np.random.Generator, nm: Floats) -> Floats:
    """Return one to three bands that end sharply in the red and slowly in the blue."""
    shape = np.zeros(len(nm))
    for band in range(int(draws.integers(1, 4))):
        height = 1.0 if band == 0 else draws.uniform(0.1, 0.7)
        at, wide = draws.uniform(410, 650), draws.uniform(30, 55)
        away = (nm - at) / np.where(nm < at, wide * draws.uniform(1.1, 1.8), wide)
        shape += height / (1.0 + np.abs(away) ** draws.uniform(2.6, 4.0))
    return np.asarray(shape / shape.max() + draws.uniform(0.001, 0.01))


def ladder(dyes: int, depths: Sequence[float] = LADDER) -> Floats:
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
    return tuple((f"d{dye:03d}", float(depths[dye])) for dye in np.flatnonzero(depths))


def mixes_of(depths: Floats, *, base: int = 0, session: str = "") -> list[Mix]:
    """Return rows of depths as mixes to be foretold."""
    rows = [doses_of(row) for row in depths]
    return [Mix(base=BASES[base], doses=doses, session=session) for doses in rows]


@dataclass(frozen=True)
class Bench:
    """Dyes and reads swatches with known errors of dose and meter."""

    world: World
    draws: np.random.Generator
    dose_error: float = 0.02

    def read(
        self,
        depths: Floats,
        evidence: Evidence,
        noise: float,
        *,
        base: int = 0,
        day: int = 0,
    ) -> list[Swatch]:
        """Dye swatches and read them; noise is a distance in Lab, or a band's."""
        off = np.exp(self.dose_error * self.draws.standard_normal(depths.shape))
        made = self.world.reflectance(depths * off, base=base, day=day)
        true = as_seen(made, seen_of(evidence))
        is_spectrum = evidence is Evidence.SPECTRUM
        sd = noise if is_spectrum else noise / np.sqrt(3.0)
        seen = true + self.draws.normal(0.0, sd, true.shape)
        values = (np.maximum(seen, 9.3) / 116.0) ** 3 if is_spectrum else seen
        return [
            Swatch(
                number=place,
                base=BASES[base],
                doses=doses_of(row),
                reading=Reading(
                    evidence=evidence,
                    values=tuple(float(value) for value in read),
                    sd=None if is_spectrum else noise,
                ),
                session=f"day {day}",
            )
            for place, (row, read) in enumerate(zip(depths, values, strict=True), 1)
        ]
