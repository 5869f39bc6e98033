"""Whole pots: which fillings some skeins make, and what would fill the last."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import floor

from shadewright.core.planning.demand import whole_pots
from shadewright.core.planning.loads import pot_load_g
from shadewright.records import day_reads, order_reads
from shadewright.workflows.days.demand import ToDye


@dataclass(frozen=True, kw_only=True)
class PotLoad:
    """A pot, the skeins that it takes, and how often it is filled."""

    pot_name: str
    pot_skeins: int
    times: int


@dataclass(frozen=True, kw_only=True)
class PotLoads:
    """Fillings of the studio's pots, the largest first; none where no skein fits."""

    loads: tuple[PotLoad, ...]
    surplus: int


def pot_loads(wanted: Sequence[ToDye]) -> tuple[PotLoads | None, ...]:
    """Return what is to be dyed in fillings of the pots in use.

    None without a pot, or where the recipe says no liquor ratio.
    """
    pots = {row.name: row.volume_l for row in day_reads.pot_rows()}
    newest = order_reads.newest_versions({each.recipe_id for each in wanted})
    return tuple(
        _loads(each, pots, newest[each.recipe_id].liquor_ratio) for each in wanted
    )


def _loads(
    wanted: ToDye, pots: Mapping[str, float], liquor_ratio: float | None
) -> PotLoads | None:
    if not liquor_ratio or not pots:
        return None
    most = {
        name: floor(
            pot_load_g(volume_l=volume_l, liquor_ratio=liquor_ratio) / wanted.skein_g
            + 1e-9
        )
        for name, volume_l in pots.items()
    }
    if not any(most.values()):
        return PotLoads(loads=(), surplus=0)
    found = whole_pots(skeins=wanted.skeins, pot_skeins=most)
    loads = (
        PotLoad(pot_name=name, pot_skeins=most[name], times=times)
        for name, times in found.loads
    )
    return PotLoads(loads=tuple(loads), surplus=found.surplus)
