"""The demo's day of today, half under way, and tomorrow's, planned from orders.

Today has three baths of its own: one cools, one is on the heat, and one should have
begun by now, but for the pot of yesterday's that it waits for. Tomorrow has too little
Rosehip, and says what to make.
"""

from dataclasses import dataclass
from datetime import date, datetime
from functools import partial
from random import Random

from shadewright.core.planning import plan_of, searched
from shadewright.core.solutions.keeping import Purpose
from shadewright.records.models import Bath
from shadewright.records.writes import Stamp
from shadewright.workflows.days.asked import asked_of
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.pinning import WishSaid, keep_wish
from shadewright.workflows.days.scheduling import Found, keep_plan
from shadewright.workflows.days.split_keeping import keep_split
from shadewright.workflows.days.splitting import SplitWish
from shadewright.workflows.demo.calendar import SEED
from shadewright.workflows.demo.days import plan_wanted
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.kettle import KettleBath
from shadewright.workflows.demo.orders import line_of
from shadewright.workflows.demo.room import ROOM, Hours, hours_of_today, say_who_is_in
from shadewright.workflows.demo.rota import GOING, MORNING, PLANNED, Wanted
from shadewright.workflows.demo.stocks import Need, see_to_stocks
from shadewright.workflows.demo.ware import TAP

SPOTS = 20_000
"""How many spots a plan looks at: counted, so that the same day has the same plan."""
PLANNED_MIN, BEGUN_MIN, GOING_MIN, DUE_MIN = 226, 214, 54, 18
"""So many minutes ago today was planned, and each of its baths was to begin."""


@dataclass(frozen=True, kw_only=True)
class ToSplit:
    """Yarn for tomorrow: for a line of an order, or for the shelf."""

    name: str
    base: str
    skeins: int
    is_ordered: bool = True


TOMORROWS = (
    ToSplit(name="Rosehip Lane", base="Byre DK", skeins=4),
    ToSplit(name="Low Tide", base="Hollow 4-ply", skeins=5),
    ToSplit(name="Millrace", base="Hollow 4-ply", skeins=3),
    ToSplit(name="Kingcup", base="Byre DK", skeins=4, is_ordered=False),
)
LACKING = "Rosehip"
_SKEIN_G = 100.0


def write_planned_days(house: House) -> None:
    """Write down how today and tomorrow were planned."""
    diary = house.diary
    diary.note(diary.at(2, "16:20"), house.ines, partial(_prepare, house))
    diary.note(diary.at(1, "16:40"), house.tam, partial(_split_tomorrow, house))
    planned_at = diary.before(PLANNED_MIN)
    diary.note(planned_at, house.ines, partial(_plan_today, house))
    diary.note(diary.before(34), house.tam, partial(_plan_tomorrow, house))


def _prepare(house: House, stamp: Stamp) -> None:
    """Fill the shelf for both days, but for one dye; plan today's first bath."""
    see_to_stocks(house, _needs(house), stamp)
    begun_at = house.diary.before(BEGUN_MIN)
    number = plan_wanted(house, MORNING, 2, begun_at.date())
    KettleBath(house, number, MORNING).write(begun_at)


def _needs(house: House) -> dict[str, Need]:
    """Return what both days take of each dye that is not to run short."""
    needs: dict[str, Need] = {}
    for name, fibre_g in _to_dye():
        for dye, depth in house.doses[name].items():
            if dye != LACKING:
                needs.setdefault(dye, Need()).dye_g += fibre_g * depth / 100
                if house.purposes[name] is Purpose.MUST_REPEAT:
                    needs[dye].purpose = Purpose.MUST_REPEAT
    return needs


def _to_dye() -> list[tuple[str, float]]:
    today = [(each.name, each.fibre_g) for each in (MORNING, GOING, PLANNED)]
    return [*today, *((each.name, each.skeins * _SKEIN_G) for each in TOMORROWS)]


def _split_tomorrow(house: House, stamp: Stamp) -> None:
    by = stamp.by or house.tam
    for each in TOMORROWS:
        line = line_of(each.name) if each.is_ordered else None
        wish = SplitWish(
            version_id=house.versions[each.name],
            base_id=house.bases[each.base],
            dyed_on=house.diary.day(-1),
            skeins_g=(_SKEIN_G,) * each.skeins,
            mill_lot_id=house.mill_lots.get(house.bases[each.base]),
            water_id=house.waters[TAP],
            for_lines=() if line is None else ((line.pk, each.skeins),),
        )
        keep_split(wish, house.diary.stamp(by))


def _plan_today(house: House, stamp: Stamp) -> None:
    """Plan today around what is said to begin when."""
    day = house.diary.day(0)
    say_who_is_in(day, hours_of_today(house.diary.now), stamp)
    for wanted, minutes in ((MORNING, BEGUN_MIN), (GOING, GOING_MIN)):
        _pin(day, wanted, house.diary.before(minutes))
    _pin(day, PLANNED, house.diary.before(DUE_MIN), is_placed=False)
    _keep_plan(day, stamp)


def _pin(
    day: date, wanted: Wanted, starts_at: datetime, *, is_placed: bool = True
) -> None:
    """Pin a bath of the day to its time, and to where it stands."""
    if starts_at.date() != day:
        return
    rows = Bath.objects.filter(dyed_on=day, version__recipe__name=wanted.name)
    row = rows.get(is_swatch=False)
    wish = WishSaid(
        pot_id=row.pot_id if is_placed else None,
        source_id=row.source_id if is_placed else None,
        starts_at=starts_at.time().replace(second=0, microsecond=0),
    )
    keep_wish(day=day, number=row.number, wish=wish)


def _plan_tomorrow(house: House, stamp: Stamp) -> None:
    day = house.diary.day(-1)
    hours = Hours(opens_at=ROOM.opens_at, closes_at=ROOM.closes_at)
    say_who_is_in(day, hours, stamp)
    _keep_plan(day, stamp)


def _keep_plan(day: date, stamp: Stamp) -> None:
    """Keep a plan that was searched by count alone; no clock of ours ends it."""
    asked = asked_of(day_now(day))
    draws = Random(SEED)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    *_, best = searched(asked.day, spots=SPOTS, draws=draws, before=asked.before)
    found = Found(asked=asked, plan=plan_of(best, asked.day), is_stopped=False)
    keep_plan(found, day, stamp)
