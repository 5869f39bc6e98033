"""The demo's dye days: stocks seen to, baths planned, and then dyed."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date
from functools import partial

from shadewright.core.solutions.keeping import Purpose
from shadewright.records.writes import Stamp
from shadewright.workflows.baths import BathWish, keep_bath
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.kettle import KettleBath
from shadewright.workflows.demo.rinsing import write_finishing
from shadewright.workflows.demo.rota import (
    EXTRA,
    GOING,
    PLANNED,
    ROTA,
    WENT_DIFFERENTLY,
    YESTERDAYS,
    Slip,
    Wanted,
)
from shadewright.workflows.demo.stocks import Need, see_to_stocks
from shadewright.workflows.demo.ware import RAIN, STANDS_ON, TAP
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.tools_at_hand import AS_USUAL, DosingWish

POTS = ("Big kettle", "Middle kettle", "Small kettle", "Middle kettle")
CLOCKS = ("09:05", "09:20", "09:40", "13:35")
FIRST_DAY, LAST_DAY = 96, 2
WEIGHED_SINCE = 36
"""For so many days Tam has put the stock on the scale."""


def write_dye_days(house: House) -> None:
    """Write down every dye day, the evening before it."""
    for number, days_ago in enumerate(dye_days()):
        by = house.tam if number % 3 else house.ines
        evening = house.diary.at(days_ago + 1, "15:40")
        wanted = _of_day(number, days_ago)
        house.diary.note(evening, by, partial(_make_ready, house, days_ago, wanted))
    evening = house.diary.at(2, "16:10")
    house.diary.note(evening, house.ines, partial(_make_ready_for_today, house))


def dye_days() -> tuple[int, ...]:
    """Return how many days ago the kettles were hot: twice a week."""
    every = range(FIRST_DAY, LAST_DAY - 1, -1)
    return tuple(days_ago for days_ago in every if days_ago % 7 in {2, 5})


def _of_day(number: int, days_ago: int) -> list[Wanted]:
    wanted = [
        replace(each, slip=WENT_DIFFERENTLY.get((days_ago, place)))
        for place, each in enumerate(ROTA[number % len(ROTA)])
    ]
    return [*wanted, EXTRA[days_ago]] if days_ago in EXTRA else wanted


def _make_ready(
    house: House, days_ago: int, wanted: Sequence[Wanted], stamp: Stamp
) -> None:
    """See to the stocks, plan the baths, and write down how each will go."""
    known = [each for each in wanted if each.name in house.versions]
    see_to_stocks(house, _needs(house, known), stamp)
    for place, each in enumerate(known):
        number = plan_wanted(house, each, place, house.diary.day(days_ago))
        starts_at = house.diary.at(days_ago, CLOCKS[place % len(CLOCKS)])
        if each.slip is Slip.GIVEN_UP:
            house.diary.note(starts_at, house.ines, partial(_give_up, number))
            continue
        KettleBath(house, number, each, place=place).write(starts_at)
        if days_ago > LAST_DAY or each.is_swatch:  # the last yarn is still drying
            rinsed_at = house.diary.at(days_ago - 1, f"10:{10 + 7 * place}")
            write_finishing(house, number, each, rinsed_at)


def _give_up(number: str, stamp: Stamp) -> None:
    give_up(number=number, why="The yarn was not soaked through.", stamp=stamp)


def _make_ready_for_today(house: House, stamp: Stamp) -> None:
    """Plan yesterday's bath, which still waits in its pot, and the two of today."""
    see_to_stocks(house, _needs(house, (YESTERDAYS, GOING, PLANNED)), stamp)
    diary = house.diary
    waiting = plan_wanted(house, YESTERDAYS, 0, diary.day(1))
    KettleBath(house, waiting, YESTERDAYS).write(diary.at(1, "09:05"))
    begun_at = diary.before(52)
    going = plan_wanted(house, GOING, 1, begun_at.date())
    KettleBath(house, going, GOING, place=1).write(begun_at)
    plan_wanted(house, PLANNED, 2, diary.day(0))


def plan_wanted(house: House, wanted: Wanted, place: int, day: date) -> str:
    """Plan a bath in the pot of its place, and return its number."""
    base_id = house.bases[wanted.base]
    pot = "Swatch jars" if wanted.is_swatch else POTS[place]
    is_play = house.purposes[wanted.name] is Purpose.PLAY
    wish = BathWish(
        version_id=house.versions[wanted.name],
        base_id=base_id,
        fibre_g=wanted.fibre_g,
        dyed_on=day,
        mill_lot_id=house.mill_lots.get(base_id),
        pot_id=house.pots[pot],
        source_id=house.burners[STANDS_ON[pot]],
        water_id=house.waters[RAIN if is_play else TAP],
        skeins=wanted.skeins,
        is_swatch=wanted.is_swatch,
        dosing=_dosing(house, wanted, place, day),
    )
    by = house.tam if place % 2 else house.ines
    return keep_bath(wish=wish, stamp=house.diary.stamp(by))


def _dosing(house: House, wanted: Wanted, place: int, day: date) -> DosingWish:
    """Swatches get the syringe and the fine scale; Tam came to dose by weight."""
    if wanted.is_swatch:
        syringe = house.tools["Big syringe"]
        return DosingWish(
            yarn_scale=house.tools["Bench scale"], tools={1: syringe, 2: syringe}
        )
    is_tams = bool(place % 2) and day >= house.diary.day(WEIGHED_SINCE)
    return DosingWish(is_by_weight=True) if is_tams else AS_USUAL


def _needs(house: House, wanted: Iterable[Wanted]) -> dict[str, Need]:
    """Return what these baths take together, by dye."""
    needs: dict[str, Need] = {}
    for each in wanted:
        for dye, depth in house.doses[each.name].items():
            need = needs.setdefault(dye, Need())
            need.dye_g += each.fibre_g * depth / 100
            if house.purposes[each.name] is Purpose.MUST_REPEAT:
                need.purpose = Purpose.MUST_REPEAT
    return needs
