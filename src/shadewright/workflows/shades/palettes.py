"""The palette that holds: the newest fit that came to its end."""

from dataclasses import dataclass, replace
from datetime import datetime
from functools import lru_cache
from uuid import UUID

from shadewright.core.mixing import Evidence, Palette
from shadewright.core.quality import Repeatability
from shadewright.errors import MissingError, UnreadableError
from shadewright.exchange.palette_file import read_palette
from shadewright.records import shade_reads
from shadewright.records.models import Dye, PaletteFit
from shadewright.workflows.shades.own_lots import own_lots_differ


@dataclass(frozen=True, kw_only=True)
class SuspectNow:
    """A swatch that the others do not believe: by what factor its dose seems off."""

    swatch_id: int
    distance: float
    dosed: float


@dataclass(frozen=True, kw_only=True, eq=False)
class PaletteNow:
    """The palette that holds, with what it was given.

    ``used`` are the swatches that it rests on; ``left_out`` CIEDE2000 of each, foretold
    without it; ``given`` what it was fitted to, as ``evidence.as_kept`` writes it;
    ``own_lots`` how the studio repeats itself, where enough lots tell.
    """

    fit_id: int
    palette: Palette
    at: datetime
    used: tuple[int, ...]
    left_out: dict[int, float]
    suspects: tuple[SuspectNow, ...]
    is_other_light: bool
    given: list[dict[str, object]]
    own_lots: Repeatability | None = None


def palette_now() -> PaletteNow | None:
    """Return the palette that holds, or None before the first fit.

    One that cannot be read, as another Shadewright or a broken disk may leave it, is
    none: what teaches is still there, and the next fit makes it anew. Where enough of
    the studio's own lots were read, nothing is foretold surer than they repeat.
    """
    row = shade_reads.newest_fit()
    try:
        now = None if row is None else shaped_palette(row)
    except UnreadableError:
        return None
    own = None if now is None else _own_lots(now.fit_id, shade_reads.newest_deeds())
    if now is None or own is None:
        return now
    return replace(now, palette=_repeating(now.palette, own.sd), own_lots=own)


def closest_reading(now: PaletteNow) -> float | None:
    """Return how far the best kind of reading so far is off, as a CIELAB distance.

    None where the palette rests on colours of which nobody said so, as a chart's are.
    """
    ranks = [Evidence(str(each["evidence"])).rank for each in now.given]
    best = max(ranks, default=0)
    said = [
        sd
        for each, rank in zip(now.given, ranks, strict=True)
        if rank == best and isinstance(sd := each["sd"], float)
    ]
    return min(said, default=None)


def gone_dyes(palette: Palette) -> tuple[str, ...]:
    """Return the dyes of a palette that are retired, or bear another name by now."""
    rows = Dye.objects.filter(name__in=palette.names.dyes, is_retired=False)
    here = set(rows.values_list("name", flat=True))
    return tuple(dye for dye in palette.names.dyes if dye not in here)


def palette_or_refuse() -> PaletteNow:
    """Return the palette that holds; refused before the first fit."""
    now = palette_now()
    if now is None:
        raise MissingError(
            name="A palette",
            advice="Enter one swatch of each dye first.",
            argument="palette",
        )
    return now


def shaped_palette(row: PaletteFit) -> PaletteNow:
    """Return a fit as frozen values."""
    suspects = tuple(SuspectNow(**each) for each in row.suspects)
    aside = {each.swatch_id for each in suspects}
    return PaletteNow(
        fit_id=row.pk,
        palette=_read(row.pk, row.palette),
        at=row.finished_at or row.started_at,
        used=tuple(x["swatch"] for x in row.used if x["swatch"] not in aside),
        left_out={int(number): de for number, de in row.left_out.items()},
        suspects=suspects,
        is_other_light=row.is_other_light,
        given=row.used,
    )


@lru_cache(maxsize=4)
def _own_lots(_fit_id: int, _newest: tuple[UUID | None, ...]) -> Repeatability | None:
    """Return how own lots differ, asked once while no colour and no fit is new."""
    return own_lots_differ()


@lru_cache(maxsize=4)
def _repeating(palette: Palette, sd: float) -> Palette:
    """Return one palette for one spread, so that what is kept by palette is found."""
    return replace(palette, repeats=sd)


@lru_cache(maxsize=4)
def _read(_fit_id: int, text: str) -> Palette:
    return read_palette(text)
