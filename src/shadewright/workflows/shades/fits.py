"""Fit the palette anew, and keep what came out."""

from shadewright.core.mixing import Learned, learn
from shadewright.errors import MissingError
from shadewright.exchange.palette_file import written_palette
from shadewright.records.models import PaletteFit
from shadewright.records.models.palettes import FitState
from shadewright.workflows.shades.evidence import (
    as_kept,
    evidence,
    trusted_swatches,
)
from shadewright.workflows.shades.palettes import PaletteNow, palette_now
from shadewright.workflows.stamps import this_moment

PALETTES_KEPT = 3
"""Of how many fits the whole palette is kept; of the others what they rest on."""


def fit_now(*, why: str) -> PaletteNow:
    """Fit all evidence and return the palette; refused where nothing is dyed."""
    taught = evidence()
    if not any(each.doses for each in taught):
        raise MissingError(
            name="A dyed swatch with a colour",
            advice="Enter one swatch of each dye first.",
        )
    row = PaletteFit.objects.create(started_at=this_moment(), why=why)
    trusted = frozenset(trusted_swatches())
    learned = learn(taught, trusted=trusted)
    row.used = as_kept(taught)
    _keep(row, learned)
    found = palette_now()
    if found is None:
        raise RuntimeError
    return found


def is_stale(now: PaletteNow | None) -> bool:
    """Whether the evidence is no longer what the palette was fitted to."""
    given = as_kept(evidence())
    return given != ([] if now is None else now.given)


def _keep(row: PaletteFit, learned: Learned) -> None:
    row.state = FitState.DONE
    row.finished_at = this_moment()
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
    pairs = zip(learned.used, learned.palette.left_out, strict=True)
    return {str(swatch.number): de for swatch, de in pairs}
