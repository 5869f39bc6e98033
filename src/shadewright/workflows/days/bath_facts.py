"""What the planner must know of a bath beside its stages."""

from collections.abc import Mapping

from shadewright.records.models import Bath
from shadewright.workflows.days.day_now import DayNow, wish_of
from shadewright.workflows.days.rack import skeins_of as on_rack

Place = tuple[str, str]
"""A pot and a source, by their names; empty where it is not known."""


def family_of(row: Bath) -> str:
    """Return the colour family of a bath: as said, else its main dye."""
    said = wish_of(row).family
    doses = sorted(row.doses.all(), key=lambda dose: (-dose.depth_percent, dose.pk))
    return said or (doses[0].dye.name if doses else "")


def depth_of(row: Bath) -> float:
    """Return the depth of all dyes together, in % on weight of fibre."""
    depths = {dose.position: dose.depth_percent for dose in row.doses.all()}
    return sum(depths.values())


def skeins_of(row: Bath) -> int:
    """Return how many skeins hang on the rack: as counted, else of 100 g each."""
    return on_rack(fibre_g=row.fibre_g, skeins=row.skeins)


def planned_places(day: DayNow) -> Mapping[str, Place]:
    """Return where the plan that holds puts each bath."""
    plan = day.schedule
    return {each.number: (each.pot, each.source) for each in plan.baths} if plan else {}


def place_of(row: Bath, planned: Mapping[str, Place]) -> Place:
    """Return where a bath is or shall be: as kept with it, as wished, as planned."""
    wish, found = wish_of(row), planned.get(row.number, ("", ""))
    pot = "" if row.pot is None else row.pot.name
    source = "" if row.source is None else row.source.name
    return pot or wish.pot_name or found[0], source or wish.source_name or found[1]
