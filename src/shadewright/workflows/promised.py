"""What planned baths will still draw from each bottle.

A bath counts until it is dyed or given up, or its day is over: a bath that nobody
dyed on its day keeps no bottle from the others.
"""

from collections.abc import Iterator, Sequence

from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathDose
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_shapes import PART
from shadewright.workflows.stamps import today

_OVER = {BathAct.FINISHED.value, BathAct.GIVEN_UP.value}


def promised_ml(*, but_for: str = "") -> dict[str, float]:
    """Return what each bottle will still give to planned baths, by code."""
    sums: dict[str, float] = {}
    for dose in _awaited_doses(but_for):
        if dose.bottle is not None:
            code = dose.bottle.code
            sums[code] = sums.get(code, 0.0) + (dose.volume_ml or 0.0)
    return sums


def wanted_g() -> dict[tuple[int, str], float]:
    """Return the dye that planned baths will still take, by its number and name."""
    sums: dict[tuple[int, str], float] = {}
    for dose in _awaited_doses():
        dye = (dose.dye_id, dose.dye.name)
        sums[dye] = sums.get(dye, 0.0) + dose.dye_g
    return sums


def _awaited_doses(but_for: str = "") -> Iterator[BathDose]:
    rows = recipe_reads.listed_bath_rows().filter(lot=None, dyed_on__gte=today())
    for bath in rows.exclude(number=but_for):
        yield from _awaited(bath)


def _awaited(bath: Bath) -> Iterator[BathDose]:
    standing = standing_lines(bath.lines.all())
    if any(line.act in _OVER for line in standing):
        return
    in_the_pot = _keys([line.step for line in standing if line.act != BathAct.NOTE])
    for place, dose in enumerate(bath.doses.all(), start=1):
        if f"dose-{place}" not in in_the_pot:
            yield dose


def _keys(steps: Sequence[str]) -> set[str]:
    return {step.removesuffix(PART) for step in steps}
