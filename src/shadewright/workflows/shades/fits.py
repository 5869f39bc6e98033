"""Fit the palette anew, and keep what came out."""

from collections.abc import Sequence
from datetime import datetime
from time import monotonic

from shadewright.core.mixing import Learned, Part, Stage, learning
from shadewright.core.mixing import Swatch as Taught
from shadewright.core.mixing.palette import METHOD
from shadewright.errors import MissingError, StudioError
from shadewright.exchange.palette_file import written_palette
from shadewright.records.models import PaletteFit
from shadewright.records.models.palettes import FitState
from shadewright.workflows.shades.evidence import Teaching, as_kept, teaching
from shadewright.workflows.shades.palettes import (
    PaletteNow,
    palette_now,
    shaped_palette,
)
from shadewright.workflows.stamps import this_moment

PALETTES_KEPT = 3
"""Of how many fits the whole palette is kept; of the others what they rest on."""
MOST_WHY = 120
_LEFT_BEHIND = "Shadewright was closed before this fit was done."
_NOT_SETTLED = (
    "The swatches do not go together: the sums did not settle. "
    "Set the newest one aside, or read it again."
)
_WORDS = {
    Part.FIT: "Fitting the swatches",
    Part.DOUBT: "Looking for a swatch that does not belong",
    Part.LIGHT: "Looking whether they were read under another light",
}
_A_TURN = 0.45


def fit_now(*, why: str) -> PaletteNow:
    """Fit all evidence and return the palette; refused where nothing is dyed.

    How far it is stands in its row from the beginning, and at the end why it failed.
    """
    began, found = monotonic(), teaching()
    taught, trusted = found.taught, found.trusted
    require_dyed(found)
    row = PaletteFit.objects.create(
        started_at=this_moment(),
        why=why[:MOST_WHY],
        stage=_WORDS[Part.FIT],
        used=as_kept(taught, trusted=trusted),
    )
    try:
        learned = _learned(row, taught, trusted)
    except Exception as error:
        fault = str(error) if isinstance(error, StudioError) else _NOT_SETTLED
        _fail(row, fault, seconds=monotonic() - began)
        raise
    _keep(row, learned, seconds=monotonic() - began)
    return shaped_palette(row)


def require_dyed(found: Teaching) -> None:
    """Refuse evidence in which nothing is dyed: nothing can be learned of it."""
    if not any(each.doses for each in found.taught):
        raise MissingError(
            name="A dyed swatch with a colour",
            advice="Enter one swatch of each dye first.",
        )


def fit_if_stale(*, why: str) -> None:
    """Fit all evidence, unless that is what the palette rests on already."""
    if is_stale(palette_now()):
        fit_now(why=why)


def is_stale(now: PaletteNow | None) -> bool:
    """Whether the evidence, or the method, is no longer that of the palette."""
    found = teaching()
    if now is None:
        return bool(found.taught)
    given = as_kept(found.taught, trusted=found.trusted)
    return given != now.given or now.palette.method != METHOD


def fail_left_behind(*, before: datetime) -> str:
    """End the fits that a closed program left behind; return what one was for."""
    rows = PaletteFit.objects.filter(state=FitState.RUNNING, started_at__lt=before)
    found = list(rows)
    for row in found:
        _fail(row, _LEFT_BEHIND, seconds=None)
    return found[0].why or "begun again" if found else ""


def _learned(
    row: PaletteFit, taught: Sequence[Taught], trusted: frozenset[int]
) -> Learned:
    for told in learning(taught, trusted=trusted):
        if isinstance(told, Learned):
            return told
        row.stage, row.share = _WORDS[told.part], _share(told)
        row.save(update_fields=["stage", "share"])
    raise RuntimeError


def _share(stage: Stage) -> float:
    """Return how far a fit is: each further turn takes a part of what was left."""
    if stage.part is Part.LIGHT:
        return 0.9
    done = 1.0 - (1.0 - _A_TURN) ** (stage.turn - 1)
    half = 0.0 if stage.part is Part.FIT else 0.5
    return 0.9 * (done + half * _A_TURN * (1.0 - done))


def _fail(row: PaletteFit, fault: str, *, seconds: float | None) -> None:
    row.state, row.fault = FitState.FAILED, fault[:300]
    row.finished_at, row.seconds = this_moment(), seconds
    row.save()


def _keep(row: PaletteFit, learned: Learned, *, seconds: float) -> None:
    row.state, row.fault, row.share = FitState.DONE, "", 1.0
    row.finished_at, row.seconds = this_moment(), seconds
    row.method = learned.palette.method
    row.suspects = [
        {"swatch_id": x.swatch.number, "distance": x.distance, "dosed": x.dosed}
        for x in learned.suspects
    ]
    row.left_out = _left_out(learned)
    row.is_other_light = learned.is_other_light
    row.palette = written_palette(learned.palette)
    row.save()
    kept = PaletteFit.objects.exclude(palette="").values_list("pk", flat=True)
    for pk in list(kept[PALETTES_KEPT:]):
        PaletteFit.objects.filter(pk=pk).update(palette="")


def _left_out(learned: Learned) -> dict[str, float]:
    return {str(number): de for number, de in learned.left_out}
