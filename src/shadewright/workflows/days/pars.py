"""Par levels: how many skeins of a colourway on a base the shelf should hold."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from django.db import transaction

from shadewright.core.planning.demand import is_same_skein
from shadewright.records import order_reads, recipe_reads
from shadewright.records.models import ParLevel
from shadewright.workflows.days.demand import demand_now
from shadewright.workflows.days.orders import check_skeins, skein_weight_g
from shadewright.workflows.days.yields import BathYield


@dataclass(frozen=True, kw_only=True)
class ParNow:
    """A par level beside what is there: free on the shelf, and coming, in skeins."""

    recipe_id: int
    recipe_name: str
    base_id: int
    base_name: str
    skeins: int
    skein_g: float
    on_shelf: int
    coming: int

    @property
    def short(self) -> int:
        """Skeins that are neither there nor planned."""
        return max(0, self.skeins - self.on_shelf - self.coming)


@transaction.atomic
def keep_par(
    *, recipe_id: int, base_id: int, skeins: int, skein_g: float | None = None
) -> None:
    """Let the shelf hold so many skeins; nothing takes the level away."""
    recipe_reads.lock_numbers()
    recipe_reads.recipe_row(recipe_id)
    base = recipe_reads.base_row(base_id)
    check_skeins(skeins, argument="skeins_1", least=0)
    if not skeins:
        ParLevel.objects.filter(recipe_id=recipe_id, base_id=base_id).delete()
        return
    grams = skein_weight_g(skein_g or base.skein_g, base.name, place=1)
    ParLevel.objects.update_or_create(
        recipe_id=recipe_id,
        base_id=base_id,
        defaults={"skeins": skeins, "skein_g": grams},
    )


def pars() -> tuple[ParNow, ...]:
    """Return what the shelf should hold, by colourway and base.

    Skeins that an open order would have count for the order, as under what to dye.
    """
    demand, taken = demand_now(), Counter[str]()
    for shares in demand.allotted.values():
        taken.update(shares)
    there = [each for each in demand.yields if each.is_on_shelf]
    coming = [each for each in demand.yields if not each.is_on_shelf]
    return tuple(
        ParNow(
            recipe_id=row.recipe_id,
            recipe_name=row.recipe.name,
            base_id=row.base_id,
            base_name=row.base.name,
            skeins=row.skeins,
            skein_g=row.skein_g,
            on_shelf=_free(row, there, taken),
            coming=_free(row, coming, taken),
        )
        for row in order_reads.par_rows()
    )


def _free(row: ParLevel, yields: list[BathYield], taken: Mapping[str, int]) -> int:
    return sum(
        each.free - taken.get(each.number, 0)
        for each in yields
        if (each.recipe_id, each.base_id) == (row.recipe_id, row.base_id)
        and each.skein_g is not None
        and is_same_skein(skein_g=each.skein_g, other_g=row.skein_g)
    )
