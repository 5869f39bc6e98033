"""How deep each dye of a bath is: as it went in, or as planned where nobody said."""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.uncertainty import Value
from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathDose
from shadewright.workflows.dosing import HowSure, planned_depth, remembered
from shadewright.workflows.poured import PouredBath, poured_bath


@dataclass(frozen=True, kw_only=True)
class DepthNow:
    """One dye's depth; ``is_given`` where it is what went in, not what was planned."""

    dye_name: str
    depth_percent: float
    is_given: bool
    how_sure: HowSure


def depths_of(number: str) -> tuple[DepthNow, ...]:
    """Return the depths of a bath, dye by dye, those left out among them as 0."""
    row = recipe_reads.bath_row(number)
    return depths_in(row, poured_bath(row))


def depths_in(row: Bath, poured: PouredBath) -> tuple[DepthNow, ...]:
    """Return the depths of a bath, given what went in."""
    planned = _planned_doses(row)
    found = []
    for name in poured.dyes:
        depth = poured.depth_percent(name)
        if depth is not None:
            how = poured.how_sure(name) or HowSure(sure=None)
            found.append(_depth(name, depth, how, is_given=True))
        elif name in planned:
            doses = planned[name]
            how = remembered(doses[0])
            found.append(_depth(name, _planned(doses), how, is_given=False))
    return tuple(found)


def doses_in(row: Bath, poured: PouredBath) -> tuple[tuple[str, float], ...]:
    """Return the dyes of a bath with their depths alone, none that was left out."""
    planned = _planned_doses(row)
    found = []
    for name in poured.dyes:
        depth = poured.depth_percent(name)
        if depth is None:
            depth = _planned(planned.get(name, ()))
        if depth > 0.0:
            found.append((name, depth))
    return tuple(found)


def values_in(row: Bath, poured: PouredBath) -> tuple[Value, ...]:
    """Return the depths of a bath with the terms that are known of each."""
    planned = _planned_doses(row)
    given = (poured.depth_value(name) for name in poured.dyes)
    return tuple(
        planned_depth(planned[name][0]) if value is None else value
        for name, value in zip(poured.dyes, given, strict=True)
        if value is not None or _is_only_planned(name, poured, planned)
    )


def _is_only_planned(
    name: str, poured: PouredBath, planned: dict[str, list[BathDose]]
) -> bool:
    return poured.depth_percent(name) is None and name in planned


def _planned_doses(row: Bath) -> dict[str, list[BathDose]]:
    planned: dict[str, list[BathDose]] = {}
    for dose in row.doses.all():
        planned.setdefault(dose.dye.name, []).append(dose)
    return planned


def _planned(doses: Sequence[BathDose]) -> float:
    """Return the depth of all doses of a dye that stand at places of their own."""
    return sum({dose.position: dose.depth_percent for dose in doses}.values())


def _depth(name: str, depth: float, how: HowSure, *, is_given: bool) -> DepthNow:
    return DepthNow(dye_name=name, depth_percent=depth, is_given=is_given, how_sure=how)
