"""What planned baths will still draw from each bottle.

A bath counts until it is dyed or given up, or its day is over: a bath that nobody
dyed on its day keeps no bottle from the others.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathDose
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_shapes import PART
from shadewright.workflows.stamps import today

_OVER = {BathAct.FINISHED.value, BathAct.GIVEN_UP.value}


@dataclass(frozen=True, kw_only=True)
class AwaitedDose:
    """A dose that a planned bath will still take; ``step`` is its key on the card."""

    bath: Bath
    step: str
    row: BathDose


def promised_ml(*, but_for: str = "", but_on: date | None = None) -> dict[str, float]:
    """Return what each bottle will still give to planned baths, by code.

    Leave out one bath, or all baths of a day.
    """
    sums: dict[str, float] = {}
    for each in _awaited_doses():
        is_left_out = each.bath.number == but_for or each.bath.dyed_on == but_on
        if each.row.bottle is not None and not is_left_out:
            code = each.row.bottle.code
            sums[code] = sums.get(code, 0.0) + (each.row.volume_ml or 0.0)
    return sums


def wanted_g() -> dict[tuple[int, str], float]:
    """Return the dye that planned baths will still take, by its number and name."""
    sums: dict[tuple[int, str], float] = {}
    for each in _awaited_doses():
        dye = (each.row.dye_id, each.row.dye.name)
        sums[dye] = sums.get(dye, 0.0) + each.row.dye_g
    return sums


def awaited_on(day: date) -> tuple[AwaitedDose, ...]:
    """Return what the baths of a day will still take, bath by bath as planned."""
    found = [each for each in _awaited_doses() if each.bath.dyed_on == day]
    return tuple(sorted(found, key=lambda each: each.bath.pk))


def days_without_bottle(dye_id: int) -> dict[date, int]:
    """Return how many doses of a dye are planned without a bottle, by day."""
    dry = (
        each.bath.dyed_on
        for each in _awaited_doses()
        if each.row.bottle is None and each.row.dye_id == dye_id
    )
    return dict(sorted(Counter(dry).items()))


def _awaited_doses() -> Iterator[AwaitedDose]:
    rows = recipe_reads.listed_bath_rows().filter(lot=None, dyed_on__gte=today())
    for bath in rows.prefetch_related("doses__dye"):
        yield from _awaited(bath)


def _awaited(bath: Bath) -> Iterator[AwaitedDose]:
    standing = standing_lines(bath.lines.all())
    if any(line.act in _OVER for line in standing):
        return
    in_the_pot = _keys([line.step for line in standing if line.act != BathAct.NOTE])
    for place, dose in enumerate(bath.doses.all(), start=1):
        if f"dose-{place}" not in in_the_pot:
            yield AwaitedDose(bath=bath, step=f"dose-{place}", row=dose)


def _keys(steps: Sequence[str]) -> set[str]:
    return {step.removesuffix(PART) for step in steps}
