"""Whole pots: how many full loads some skeins make, and what would fill the last."""

from dataclasses import dataclass
from math import floor

from shadewright.core.planning.demand import whole_pots
from shadewright.core.planning.splits import pot_load_g
from shadewright.records import day_reads, recipe_reads
from shadewright.workflows.days.demand import ToDye


@dataclass(frozen=True, kw_only=True)
class PotLoads:
    """Loads of the largest pot; ``pot_skeins`` is none where not one skein fits."""

    pot_name: str
    pot_skeins: int
    pots: int
    surplus: int


def pot_loads(wanted: ToDye) -> PotLoads | None:
    """Return what is to be dyed in loads of the largest pot; None without a pot."""
    pots = list(day_reads.pot_rows())
    version = recipe_reads.recipe_row(wanted.recipe_id).versions.all()[0]
    if not pots or not version.liquor_ratio:
        return None
    largest = max(pots, key=lambda pot: pot.volume_l)
    load_g = pot_load_g(volume_l=largest.volume_l, liquor_ratio=version.liquor_ratio)
    most = floor(load_g / wanted.skein_g + 1e-9)
    loads = whole_pots(skeins=wanted.skeins, pot_skeins=max(1, most))
    return PotLoads(
        pot_name=largest.name, pot_skeins=most, pots=loads.pots, surplus=loads.surplus
    )
