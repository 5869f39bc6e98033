"""How long each dye's stocks keep, from every look that was ever written down."""

from collections import defaultdict
from collections.abc import Collection, Mapping
from datetime import date, timedelta

from django.utils import timezone

from shadewright.core.solutions.keeping import DyeLife, Seen, Watch, dye_life, watched
from shadewright.core.solutions.ledger import BottleAct
from shadewright.records import reads
from shadewright.records.keeping_reads import look_lines
from shadewright.records.models import BottleLine, Dye

COMMON = dye_life([])
"""How long a stock keeps by common practice."""


def dye_lives(dye_ids: Collection[int] | None = None) -> dict[int, DyeLife]:
    """Return the life of every dye that was watched, or of those asked for."""
    rows = Dye.objects.all() if dye_ids is None else Dye.objects.filter(pk__in=dye_ids)
    watches = _watches(dye_ids)
    return {
        pk: dye_life(watches.get(pk, ()), is_mix_fresh=is_mix_fresh)
        for pk, is_mix_fresh in rows.values_list("pk", "is_mix_fresh")
    }


def life_of_dye(dye_id: int) -> DyeLife:
    """Return the life of one dye."""
    reads.dye_row(dye_id)
    return dye_lives([dye_id])[dye_id]


def suggested_discard_day(dye_id: int, *, made_on: date) -> date | None:
    """Return the day that the studio's own looks suggest, if they are enough."""
    life = life_of_dye(dye_id)
    if not life.is_from_checks:
        return None
    return made_on + timedelta(days=life.discard_by_days)


def _watches(dye_ids: Collection[int] | None) -> Mapping[int, list[Watch]]:
    looks: dict[tuple[int, int], list[Seen]] = defaultdict(list)
    for line in look_lines(dye_ids):
        looks[line.bottle.dye_id, line.bottle_id].append(_seen(line))
    found: dict[int, list[Watch]] = defaultdict(list)
    for (dye_id, _bottle), seen in looks.items():
        watch = watched(seen)
        if watch is not None:
            found[dye_id].append(watch)
    return found


def _seen(line: BottleLine) -> Seen:
    made_on = line.bottle.made_on
    assert made_on is not None  # ruff: ignore[assert] - the question asked for it
    days = (timezone.localdate(line.at) - made_on).days
    return Seen(days=max(days, 0), act=BottleAct(line.act))
