"""Whole pots: how many full loads some skeins make, and what would fill the last."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from shadewright.core.planning.demand import whole_pots
from shadewright.core.planning.loads import pot_load_g
from shadewright.records import day_reads, order_reads
from shadewright.records.models import Pot
from shadewright.workflows.days.demand import ToDye


@dataclass(frozen=True, kw_only=True)
class PotLoads:
    """Loads of the largest pot; ``pot_skeins`` is none where not one skein fits."""

    pot_name: str
    pot_skeins: int
    pots: int
    surplus: int


def pot_loads(wanted: Sequence[ToDye]) -> tuple[PotLoads | None, ...]:
    """Return what is to be dyed in loads of the largest pot.

    None without a pot, or where the recipe says no liquor ratio.
    """
    pots = list(day_reads.pot_rows())
    newest = order_reads.newest_versions({each.recipe_id for each in wanted})
    if not pots:
        return (None,) * len(wanted)
    largest = max(pots, key=lambda pot: pot.volume_l)
    return tuple(
        _loads(each, largest, newest[each.recipe_id].liquor_ratio) for each in wanted
    )


def _loads(wanted: ToDye, pot: Pot, liquor_ratio: float | None) -> PotLoads | None:
    if not liquor_ratio:
        return None
    load_g = pot_load_g(volume_l=pot.volume_l, liquor_ratio=liquor_ratio)
    most = floor(load_g / wanted.skein_g + 1e-9)
    loads = whole_pots(skeins=wanted.skeins, pot_skeins=max(1, most))
    return PotLoads(
        pot_name=pot.name, pot_skeins=most, pots=loads.pots, surplus=loads.surplus
    )
