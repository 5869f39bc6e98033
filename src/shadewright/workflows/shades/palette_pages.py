"""What a palette says of one base: its dyes, its reach, and how well it foretells.

The sums are made once for each palette and base, and kept until the next fit.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from shadewright.core.mixing import Advised, Evidence, Palette, advised_swatches
from shadewright.core.mixing.strips import Strip, strips
from shadewright.core.recipes import Target, Wishes, matches
from shadewright.core.recipes.lightness import MOST_TOGETHER
from shadewright.core.recipes.reaching import (
    Reach,
    is_well_inside,
    reaches,
)
from shadewright.errors import NotFoundError
from shadewright.records.models import Base, Dye, Swatch
from shadewright.workflows.shades.doubts import Doubts, doubts_among
from shadewright.workflows.shades.offering import LotOnOffer, offers_among
from shadewright.workflows.shades.palettes import (
    PaletteNow,
    closest_reading,
    gone_dyes,
    palette_now,
)
from shadewright.workflows.shades.swatches import SwatchNow, swatches_now
from shadewright.workflows.shades.wanted import Wanted, target_of

ADVISED = 3
LEAST_LEFT_OUT = 8
"""Fewer swatches than this do not say how well a palette foretells. [-]"""
REACHED = 1.0
"""A colour is in reach while a recipe comes within this, CIEDE2000. [1]"""


@dataclass(frozen=True, kw_only=True)
class BaseNow:
    """A base: how many of its swatches the palette rests on, how many of them dyed.

    Without any, ``is_known`` is False and the palette knows nothing of it.
    """

    id: int
    name: str
    taught: int
    dyed: int
    is_known: bool


@dataclass(frozen=True, kw_only=True)
class DyeNow:
    """A dye on a base.

    ``alone`` are its own swatches there, read, with those that are left out; ``mixes``
    counts those of more dyes that teach, ``elsewhere`` those on other bases.
    """

    name: str
    dye_id: int | None
    strip: Strip
    evidence: Evidence
    alone: tuple[SwatchNow, ...]
    mixes: int
    elsewhere: int


@dataclass(frozen=True, kw_only=True)
class LeftOut:
    """How well swatches are foretold that were left out; CIEDE2000, None if too few."""

    count: int
    half: float | None
    nine_in_ten: float | None


@dataclass(frozen=True, kw_only=True)
class PaletteOnBase:
    """A palette on one base; without ``now`` there is none, or not of this base."""

    base: BaseNow
    bases: tuple[BaseNow, ...]
    now: PaletteNow | None
    dyes: tuple[DyeNow, ...]
    reaches: tuple[Reach, ...]
    swatches: tuple[SwatchNow, ...]
    lots: int
    left_out: LeftOut
    doubts: Doubts
    offers: tuple[LotOnOffer, ...]


@dataclass(frozen=True, kw_only=True)
class Missed:
    """A wanted colour that no recipe reaches, with the nearest."""

    wanted: Wanted
    distance: float
    words: str
    doses: tuple[tuple[str, float], ...]


def base_most_used() -> int | None:
    """Return the base with most evidence in the palette that holds."""
    now = palette_now()
    if now is None:
        return None
    bases = _bases(now, swatches_now())
    best = max(bases, key=lambda each: (each.dyed, each.taught), default=None)
    return None if best is None or not best.is_known else best.id


def swatches_kept() -> int:
    """Return how many swatches there are, read or not."""
    return Swatch.objects.count()


def palette_on_base(base_id: int) -> PaletteOnBase:
    """Return all that the palette says of a base, in use or retired."""
    now, every = palette_now(), swatches_now()
    bases = _bases(now, every, also=base_id)
    base = next((each for each in bases if each.id == base_id), None)
    if base is None:
        raise NotFoundError(kind="base", key=str(base_id), argument="base")
    known = now if base.is_known else None
    here = tuple(each for each in every if each.base_id == base_id)
    used = frozenset(() if known is None else known.used)
    return PaletteOnBase(
        base=base,
        bases=bases,
        now=known,
        dyes=() if known is None else _dyes(known, base, every),
        reaches=() if known is None else _reaches(known.palette, base.name),
        swatches=tuple(each for each in here if each.reading is not None),
        lots=sum(each.is_lot and each.id in used for each in here),
        left_out=_left_out(known, here),
        doubts=doubts_among(every, now),
        offers=tuple(x for x in offers_among(every) if x.base_name == base.name),
    )


def advised_on(found: PaletteOnBase) -> tuple[Advised, ...]:
    """Return the swatches that would help most on a base."""
    if found.now is None:
        return ()
    palette = found.now.palette
    sd = closest_reading(found.now)
    return _advised(palette, found.base.name, gone_dyes(palette), sd)


def reckon_ahead() -> None:
    """Reckon what the pages of every base will show, before somebody asks."""
    now = palette_now()
    if now is None:
        return
    gone, sd = gone_dyes(now.palette), closest_reading(now)
    for base in now.palette.names.bases:
        _strips(now.palette, base)
        _reaches(now.palette, base)
        _advised(now.palette, base, gone, sd)


def missed_on(found: PaletteOnBase, wanted: Sequence[Wanted]) -> tuple[Missed, ...]:
    """Return which of some wanted colours lie out of reach on a base."""
    if found.now is None:
        return ()
    palette, base = found.now.palette, found.base.name
    return tuple(
        Missed(wanted=each, distance=near.de, words=near.words, doses=near.doses)
        for each in wanted
        if (near := _nearest(palette, base, target_of(each))).de > REACHED
    )


def wanted_for(base_id: int, wanted: Sequence[Wanted]) -> tuple[Wanted, ...]:
    """Return wanted colours that are for this base, or for any."""
    return tuple(each for each in wanted if each.base_id in {None, base_id})


def _bases(
    now: PaletteNow | None, every: Sequence[SwatchNow], *, also: int = 0
) -> tuple[BaseNow, ...]:
    """Return the bases, those that the palette knows best first."""
    used = frozenset(() if now is None else now.used)
    names = () if now is None else now.palette.names.bases
    taught = Counter(each.base_id for each in every if each.id in used)
    dyed = Counter(each.base_id for each in every if each.id in used and each.doses)
    rows = Base.objects.values_list("id", "name", "is_retired")
    bases = [
        BaseNow(
            id=pk, name=name, taught=taught[pk], dyed=dyed[pk], is_known=name in names
        )
        for pk, name, is_retired in rows
        if not is_retired or name in names or pk == also
    ]
    key = {each.id: (not each.is_known, -each.dyed, -each.taught) for each in bases}
    return tuple(sorted(bases, key=lambda each: (*key[each.id], each.name)))


def _dyes(
    now: PaletteNow, base: BaseNow, every: Sequence[SwatchNow]
) -> tuple[DyeNow, ...]:
    ids = dict(Dye.objects.values_list("name", "id"))
    return tuple(
        _dye(place, strip, now, base, every, ids)
        for place, strip in enumerate(_strips(now.palette, base.name))
    )


def _dye(
    place: int,
    strip: Strip,
    now: PaletteNow,
    base: BaseNow,
    every: Sequence[SwatchNow],
    ids: Mapping[str, int],
) -> DyeNow:
    holding = [each for each in every if strip.dye in dict(each.doses)]
    here = [each for each in holding if each.base_id == base.id]
    used = frozenset(now.used)
    alone = [x for x in here if len(x.doses) == 1 and x.reading is not None]
    return DyeNow(
        name=strip.dye,
        dye_id=ids.get(strip.dye),
        strip=strip,
        evidence=now.palette.evidence[place],
        alone=tuple(sorted(alone, key=lambda each: (each.doses[0][1], each.id))),
        mixes=sum(len(each.doses) > 1 and each.id in used for each in here),
        elsewhere=sum(x.base_id != base.id and x.id in used for x in holding),
    )


def _left_out(now: PaletteNow | None, here: Sequence[SwatchNow]) -> LeftOut:
    """Return how well swatches of this base are foretold; of all, if these are few."""
    every = {} if now is None else now.left_out
    own = [every[each.id] for each in here if each.id in every]
    found = sorted(own if len(own) >= LEAST_LEFT_OUT else every.values())
    if len(found) < LEAST_LEFT_OUT:
        return LeftOut(count=len(found), half=None, nine_in_ten=None)
    return LeftOut(
        count=len(found), half=_quantile(found, 0.5), nine_in_ten=_quantile(found, 0.9)
    )


def _quantile(ordered: Sequence[float], share: float) -> float:
    """Return the least value that so many do not pass: no guess between two."""
    place = -int(-share * len(ordered) // 1) - 1
    return ordered[max(place, 0)]


@lru_cache(maxsize=16)
def _strips(palette: Palette, base: str) -> tuple[Strip, ...]:
    return strips(palette, base=base)


@lru_cache(maxsize=16)
def _reaches(palette: Palette, base: str) -> tuple[Reach, ...]:
    return reaches(palette, base=base)


@lru_cache(maxsize=16)
def _advised(
    palette: Palette, base: str, gone: tuple[str, ...], sd: float | None
) -> tuple[Advised, ...]:
    return advised_swatches(
        palette, base=base, count=ADVISED, without=gone, reading_sd=sd
    )


@dataclass(frozen=True, kw_only=True)
class _Nearest:
    """The recipe that comes nearest to a colour, and how it differs.

    Of a colour that is well inside the reach nothing more is asked.
    """

    de: float
    words: str
    doses: tuple[tuple[str, float], ...]


@lru_cache(maxsize=256)
def _nearest(palette: Palette, base: str, target: Target) -> _Nearest:
    if is_well_inside(palette, base=base, lab=target.lab):
        return _Nearest(de=0.0, words="", doses=())
    found = matches(
        palette, base=base, target=target, wishes=Wishes(most_dyes=MOST_TOGETHER)
    )
    nearest = min(found.recipes, key=lambda each: each.de)
    return _Nearest(de=found.nearest_de, words=found.nearest_words, doses=nearest.doses)
