"""The fits as pages show them: the one that holds, the one that runs, all of them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from shadewright.records import shade_reads
from shadewright.records.models import PaletteFit
from shadewright.records.models.palettes import FitState
from shadewright.workflows.shades.fits import is_stale
from shadewright.workflows.shades.palettes import PaletteNow, palette_now
from shadewright.workflows.shades.swatches import SwatchNow

MOST_FITS = 60
_MOST_NAMES = 6


@dataclass(frozen=True, kw_only=True)
class Running:
    """A fit that runs: what it does, and the share that is done."""

    stage: str
    share: float


@dataclass(frozen=True, kw_only=True)
class FitStatus:
    """Where the palette stands: what holds, what runs, what went wrong last."""

    holds: PaletteNow | None
    swatches: int
    lots: int
    running: Running | None
    seconds: float | None
    fault: str
    is_stale: bool


@dataclass(frozen=True, kw_only=True)
class FitRow:
    """A fit in the history; ``changed`` says what was new against the one before."""

    number: int
    at: datetime
    why: str
    is_running: bool
    fault: str
    swatches: int
    lots: int
    aside: tuple[str, ...]
    changed: tuple[str, ...]
    seconds: float | None
    is_other_light: bool


def fit_status() -> FitStatus:
    """Return where the palette stands now."""
    newest = PaletteFit.objects.defer("palette").first()
    holds = palette_now()
    used = () if holds is None else holds.used
    lots = shade_reads.lots_among(used)
    has_failed = newest is not None and newest.state == FitState.FAILED
    return FitStatus(
        holds=holds,
        swatches=len(used) - lots,
        lots=lots,
        running=_running(),
        seconds=_seconds(holds),
        fault=newest.fault if newest is not None and has_failed else "",
        is_stale=is_stale(holds),
    )


def fits(swatches: Sequence[SwatchNow]) -> tuple[FitRow, ...]:
    """Return the fits, the newest first, each against the one before that was done.

    ``swatches`` are all there are, which lend the fits their names.
    """
    rows = list(PaletteFit.objects.defer("palette").order_by("-id")[: MOST_FITS + 1])
    by_id = {each.id: each for each in swatches}
    return tuple(
        _row(row, _done_before(rows[place + 1 :]), by_id)
        for place, row in enumerate(rows[:MOST_FITS])
    )


def _running() -> Running | None:
    rows = PaletteFit.objects.filter(state=FitState.RUNNING)
    row = rows.defer("palette", "used").first()
    return None if row is None else Running(stage=row.stage, share=row.share)


def _seconds(holds: PaletteNow | None) -> float | None:
    if holds is None:
        return None
    rows = PaletteFit.objects.filter(pk=holds.fit_id)
    return rows.values_list("seconds", flat=True).get()


def _done_before(rows: Sequence[PaletteFit]) -> PaletteFit | None:
    return next((row for row in rows if row.state == FitState.DONE), None)


def _row(
    row: PaletteFit, before: PaletteFit | None, swatches: Mapping[int, SwatchNow]
) -> FitRow:
    used = [entry["swatch"] for entry in row.used]
    lots = sum(each in swatches and swatches[each].is_lot for each in used)
    aside = [entry["swatch_id"] for entry in row.suspects]
    return FitRow(
        number=row.pk,
        at=row.finished_at or row.started_at,
        why=row.why,
        is_running=row.state == FitState.RUNNING,
        fault=row.fault,
        swatches=len(used) - lots,
        lots=lots,
        aside=tuple(_label(each, swatches) for each in aside),
        changed=() if before is None else _changed(row, before, swatches),
        seconds=row.seconds,
        is_other_light=row.is_other_light,
    )


def _changed(
    row: PaletteFit, before: PaletteFit, swatches: Mapping[int, SwatchNow]
) -> tuple[str, ...]:
    """Say in words what a fit was given that the one before was not."""
    now, then = ({each["swatch"]: each for each in x.used} for x in (row, before))
    doubted, was = ({x["swatch_id"] for x in each.suspects} for each in (row, before))
    both = now.keys() & then.keys()
    changes = {
        "New": now.keys() - then.keys(),
        "No longer": then.keys() - now.keys(),
        "Read or measured anew": {x for x in both if now[x] != then[x]},
        "Doubted now": doubted - was,
        "Believed again": (was - doubted) & now.keys(),
    }
    return tuple(
        f"{words}: {_labels(sorted(found), swatches)}"
        for words, found in changes.items()
        if found
    )


def _labels(found: Sequence[int], swatches: Mapping[int, SwatchNow]) -> str:
    named = ", ".join(_label(each, swatches) for each in found[:_MOST_NAMES])
    more = len(found) - _MOST_NAMES
    return f"{named} and {more} more" if more > 0 else named


def _label(swatch_id: int, swatches: Mapping[int, SwatchNow]) -> str:
    found = swatches.get(swatch_id)
    return f"swatch {swatch_id}" if found is None else found.label
