"""What the demo's dyes truly do: all of it invented, and known to nobody in the demo.

The studio sees its swatches only through a meter or a screen, as any studio does. What
it then foretells can be held against this truth. So that this is a fair trial, the
truth is not the one that a fit would make up:

- a dye fills the sites of a yarn (Langmuir's law), and a deeper bath leaves more of it
  in the water, which is poured away;
- light is turned back at the fibre both from without and from within (Saunderson's two
  terms), more on one yarn than on the other;
- on wool each dye is stronger or weaker than on superwash, and its bands lie elsewhere;
- a day is a day: all dyes take a little more or less, and each by a little of its own;
- a dose is off by 2 %, and a meter reads a little beside the colour.

Only that dyes add up in K/S is as the fit has it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from math import exp, sqrt
from random import Random

from shadewright.core.colour import Lab, Light
from shadewright.core.mixing.asking import lab_under
from shadewright.workflows.demo.absorption import DYES, YARNS

Depths = Mapping[str, float]
"""Dyes by name with their depths. [%]"""
Spectrum = tuple[float, ...]

DOSE_ERROR = 0.02
DAY_TOGETHER, DAY_EACH = 0.05, 0.06
FROM_WITHIN = 0.12
ONE_READING, PILE = 0.17, 0.12
"""A meter's own spread, and that of how the yarn lies, each part of Lab. [1]"""
ON_SCREEN = 3.4
"""How far an eye is off at a screen, each part of Lab. [1]"""


WETTER = 1.35
"""Light of wet yarn is its dry one to this power (our guess). [1]"""


@dataclass(frozen=True, kw_only=True)
class Day:
    """What a day makes of every dye, as factors."""

    together: float = 1.0
    each: Depths = field(default_factory=dict)

    def on(self, dye: str) -> float:
        """Return the factor on one dye."""
        return self.together * self.each.get(dye, 1.0)


CALM = Day()


def day_of(chance: Random) -> Day:
    """Return a day of its own."""
    return Day(
        together=exp(chance.gauss(0.0, DAY_TOGETHER)),
        each={dye: exp(chance.gauss(0.0, DAY_EACH)) for dye in DYES},
    )


def slipped(depths: Depths, chance: Random) -> dict[str, float]:
    """Return what truly went in where these doses were meant."""
    return {
        dye: depth * exp(chance.gauss(0.0, DOSE_ERROR)) for dye, depth in depths.items()
    }


def reflectance(yarn: str, depths: Depths, *, day: Day = CALM) -> Spectrum:
    """Return the share of light that comes back from dyed yarn, band by band."""
    bare = YARNS[yarn]
    whole = list(_ground(yarn))
    for dye, depth in depths.items():
        held = _in_the_fibre(dye, depth * day.on(dye), is_wool=bare.is_wool)
        for band, absorbs in enumerate(_absorbs(dye, is_wool=bare.is_wool)):
            whole[band] += held * absorbs
    return tuple(_seen(_opaque(q), bare.shine) for q in whole)


def colour(spectrum: Spectrum, *, light: Light = Light.D65) -> Lab:
    """Return the colour of a spectrum for the 10° observer."""
    import numpy as np

    return Lab(*map(float, lab_under(np.array([spectrum]), light=light)[0]))


def metered(spectrum: Spectrum, chance: Random, *, times: int = 3) -> tuple[Lab, ...]:
    """Return what a meter shows, pressed to the yarn so many times."""
    true = colour(spectrum)
    lying = [part + chance.gauss(0.0, PILE) for part in true]
    return tuple(
        Lab(*(round(part + chance.gauss(0.0, ONE_READING), 2) for part in lying))
        for _time in range(times)
    )


def eyed(spectrum: Spectrum, chance: Random) -> Lab:
    """Return what an eye picks on a screen beside the yarn."""
    return Lab(*(part + chance.gauss(0.0, ON_SCREEN) for part in colour(spectrum)))


def spread_out(spectrum: Spectrum, chance: Random) -> Spectrum:
    """Return what a meter for spectra shows."""
    return tuple(round(part * exp(chance.gauss(0.0, 0.002)), 4) for part in spectrum)


def wetted(spectrum: Spectrum) -> Spectrum:
    """Return what wet yarn shows: darker, and stronger in colour."""
    return tuple(part**WETTER for part in spectrum)


def _in_the_fibre(dye: str, depth: float, *, is_wool: bool) -> float:
    """Return what the fibre took of a dose in %; the rest stays in the bath.

    f = room (c − f) / (half + c − f), solved for f.
    """
    true = DYES[dye]
    whole = depth + true.room + true.half
    took = (whole - sqrt(whole**2 - 4.0 * depth * true.room)) / 2.0
    return took * (true.stronger if is_wool else 1.0)


@cache
def _absorbs(dye: str, *, is_wool: bool) -> Spectrum:
    true = DYES[dye]
    return true.absorbs(moved_nm=true.moved_nm if is_wool else 0.0)


@cache
def _ground(yarn: str) -> Spectrum:
    """Return K/S of a bare yarn."""
    bare = YARNS[yarn]
    inner = (_from_inside(share, bare.shine) for share in bare.reflects())
    return tuple((1.0 - share) ** 2 / (2.0 * share) for share in inner)


def _opaque(ks: float) -> float:
    """Return what an opaque layer reflects, by Kubelka and Munk."""
    return 1.0 / (1.0 + ks + sqrt(ks * ks + 2.0 * ks))


def _seen(inside: float, shine: float) -> float:
    """Return the light that leaves, by Saunderson."""
    out = (1.0 - FROM_WITHIN) * inside / (1.0 - FROM_WITHIN * inside)
    return shine + (1.0 - shine) * out


def _from_inside(seen: float, shine: float) -> float:
    """Undo ``_seen``."""
    out = (seen - shine) / (1.0 - shine)
    return out / (1.0 - FROM_WITHIN + FROM_WITHIN * out)
