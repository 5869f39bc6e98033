"""What was foretold beside what came out, and how often the bound held."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from statistics import median

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.mixing import Evidence
from shadewright.core.uncertainty import usual_counts
from shadewright.records import shade_reads
from shadewright.records.models import Prediction
from shadewright.workflows.shades.kinds import TEACHES_AS
from shadewright.workflows.shades.standing_behind import behind_among
from shadewright.workflows.shades.swatches import (
    Doses,
    ReadColour,
    SwatchNow,
    swatches_now,
)

PROMISED = 0.9
_NEAR = 0.05
"""Relative difference of a depth from which a dose went in otherwise (our choice)."""
_ALLOWED = 2.0
"""So many standard errors of a dose are among what its bound is for (our choice)."""


class Counts(StrEnum):
    """Whether a prediction counts in the hit rate."""

    YES = "counts"
    WAITS = "not read yet"
    KNEW = "the fit knew it already"
    OTHERWISE = "not dosed as planned"


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """A prediction and what came out; ``apart`` is CIEDE2000 between the two.

    ``otherwise`` names the dyes of which something else went in than was planned;
    ``behind`` is what the prediction rested on, the nearest first.
    """

    bath_number: str
    is_lot: bool
    label: str
    base_name: str
    doses: Doses
    foretold: Lab
    expected: float
    within_90: float
    evidence: Evidence
    made_at: datetime
    fit_id: int
    reading: ReadColour | None
    apart: float | None
    counts: Counts
    otherwise: tuple[str, ...]
    behind: tuple[SwatchNow, ...]

    @property
    def is_held(self) -> bool:
        """Whether what came out lies within the bound."""
        return self.apart is not None and self.apart <= self.within_90

    @property
    def is_poor(self) -> bool:
        """Whether the colour that came out was picked on a screen or off a photo."""
        read = self.reading
        return read is not None and TEACHES_AS[read.read_by] is Evidence.SCREEN


@dataclass(frozen=True, kw_only=True)
class HitRate:
    """How many predictions held.

    ``poor`` of them rest on a rough reading, of which ``poor_held`` held: it is off by
    itself, so it says nothing of the bound. Of the others ``fewest`` to ``most`` would
    hold by chance alone. ``mixes`` counts those that differ, since lots of one recipe
    share what is off; ``median`` is the middle distance.
    """

    counted: int
    mixes: int
    held: int
    poor: int
    poor_held: int
    fewest: int
    most: int
    median: float


def outcomes() -> tuple[Outcome, ...]:
    """Return every prediction of a bath that was not given up, the newest first."""
    rows = list(shade_reads.prediction_rows())
    swatches = swatches_now()
    knew = shade_reads.swatches_by_fit({row.fit_id for row in rows})
    return tuple(_outcome(row, swatches, knew) for row in rows)


def hit_rate(found: Sequence[Outcome]) -> HitRate | None:
    """Return how often the bound held; None while nothing counts."""
    counted = [each for each in found if each.counts is Counts.YES]
    if not counted:
        return None
    poor = [each for each in counted if each.is_poor]
    well = len(counted) - len(poor)
    fewest, most = usual_counts(promises=well, chance=PROMISED) if well else (0, 0)
    return HitRate(
        counted=len(counted),
        mixes=len({(each.base_name, each.doses) for each in counted}),
        held=sum(each.is_held for each in counted),
        poor=len(poor),
        poor_held=sum(each.is_held for each in poor),
        fewest=fewest,
        most=most,
        median=median(each.apart for each in counted if each.apart is not None),
    )


def _outcome(
    row: Prediction,
    swatches: Sequence[SwatchNow],
    knew: Mapping[int, frozenset[int]],
) -> Outcome:
    bath = row.bath
    swatch = next((x for x in swatches if x.bath_number == bath.number), None)
    used = tuple(x for x in swatches if x.id in knew[row.fit_id])
    foretold = Lab(row.colour_l, row.colour_a, row.colour_b)
    reading = None if swatch is None else swatch.reading
    doses = tuple((str(dye), float(depth)) for dye, depth in row.doses)
    near = max(_NEAR, _ALLOWED * row.dose_error)
    otherwise = () if swatch is None else _otherwise(doses, swatch.doses, near=near)
    return Outcome(
        bath_number=bath.number,
        is_lot=not bath.is_swatch,
        label=f"{bath.version.recipe.name}, {bath.number}",
        base_name=bath.base.name,
        doses=doses,
        foretold=foretold,
        expected=row.expected,
        within_90=row.within_90,
        evidence=Evidence(row.evidence),
        made_at=row.made_at,
        fit_id=row.fit_id,
        reading=reading,
        apart=None if reading is None else ciede2000(foretold, reading.lab),
        counts=_counts(swatch, knew[row.fit_id], is_otherwise=bool(otherwise)),
        behind=behind_among(used, doses, bath.base.name),
        otherwise=otherwise,
    )


def _counts(
    swatch: SwatchNow | None, knew: frozenset[int], *, is_otherwise: bool
) -> Counts:
    if swatch is None or swatch.reading is None:
        return Counts.WAITS
    if swatch.id in knew:
        return Counts.KNEW
    return Counts.OTHERWISE if is_otherwise else Counts.YES


def _otherwise(planned: Doses, given: Doses, *, near: float) -> tuple[str, ...]:
    before, after = dict(planned), dict(given)
    return tuple(
        dye
        for dye in before | after
        if abs(after.get(dye, 0.0) - before.get(dye, 0.0))
        > near * max(before.get(dye, 0.0), after.get(dye, 0.0))
    )
