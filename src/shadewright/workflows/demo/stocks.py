"""The demo's stocks: looked over before each dye day, and made as they run short."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import isclose

from shadewright.core.solutions.keeping import Purpose
from shadewright.records.writes import Stamp
from shadewright.workflows.bottle_choice import refused_for
from shadewright.workflows.bottles import pour_away
from shadewright.workflows.demo.dyes import STRONGER
from shadewright.workflows.demo.house import House
from shadewright.workflows.filling import Particulars
from shadewright.workflows.mending import merge
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.stamps import today
from shadewright.workflows.stock_spreads import MadeWith
from shadewright.workflows.stock_tools import usual_for_stocks
from shadewright.workflows.stocks import make_stock

WATER = "Tap, 80 mg/l hard"
SPARE = 1.1
"""A stock is made where less than so many times the day's need is there."""

THINNED_PERCENT = 0.2

DREGS_ML, LITTLE_ML = 100.0, 210.0
"""Less than this is poured into a new bottle; less than that when tidying up."""


@dataclass(frozen=True, kw_only=True)
class Usual:
    """How a dye's stock is usually made."""

    percent: float = 1.0
    volume_ml: float = 1000.0
    place: str = "top shelf"
    is_by_weight: bool = False


USUAL = {
    "Coal": Usual(percent=2.0, volume_ml=500.0, is_by_weight=True),
    "Gorse": Usual(percent=2.0),
    "Heather": Usual(volume_ml=500.0),
    "Kelp": Usual(is_by_weight=True),
    "Primrose": Usual(volume_ml=250.0, place="bench"),
    "Rosehip": Usual(volume_ml=500.0),
    "Slate": Usual(place="trolley"),
    "Sloe": Usual(place="trolley"),
}


@dataclass(kw_only=True)
class Need:
    """The dye that a day takes, in grams, and what it is for at the strictest."""

    dye_g: float = 0.0
    purpose: Purpose = Purpose.USUAL


def see_to_stocks(house: House, needs: Mapping[str, Need], stamp: Stamp) -> None:
    """Look over the shelf for a dye day, and make what would run short."""
    standing = shelf()
    for dye, need in needs.items():
        mine = [each for each in standing if each.dye_name == dye]
        there_g = sum(_holds_g(each) for each in mine if _is_good(each, need.purpose))
        if there_g < SPARE * need.dye_g:
            made = make_more(house, dye, stamp.by or house.ines)
            is_pure = need.purpose is Purpose.MUST_REPEAT
            for each in mine:
                by = stamp.by or house.ines
                _empty(house, each, None if is_pure else made, by, DREGS_ML)


def pour_together(house: House, stamp: Stamp) -> None:
    """Pour old dregs into the newest bottles; the oldest of Slate is forgotten."""
    by = stamp.by or house.tam
    standing = sorted(shelf(), key=lambda bottle: -(bottle.age.days or 0))
    newest = {each.dye_name: each for each in standing}
    forgotten = next(each for each in standing if each.dye_name == "Slate")
    for each in standing:
        into = newest[each.dye_name]
        if each.code not in {into.code, forgotten.code}:
            _empty(house, each, into, by, LITTLE_ML)


def _empty(
    house: House, old: ShelfBottle, into: ShelfBottle | None, by: int, most_ml: float
) -> None:
    """Pour what little is left of an old bottle into another, or else away."""
    stamp = house.diary.stamp(by)
    if old.volume_ml <= 0:
        pour_away(code=old.code, note="empty, washed", stamp=stamp)
    elif old.volume_ml >= most_ml or old.is_settled or old.is_past:
        return
    elif into is None:
        pour_away(code=old.code, note="too little to keep", stamp=stamp)
    elif isclose(old.strength_percent, into.strength_percent, rel_tol=0.1):
        merge(code=into.code, from_codes=[old.code], stamp=stamp)


def _holds_g(bottle: ShelfBottle) -> float:
    """Return the dye that a bottle can give; a thinned one is for pale shades."""
    is_thinned = bottle.strength_percent < THINNED_PERCENT
    return 0.0 if is_thinned else bottle.usable_ml * bottle.strength_percent / 100


def _is_good(bottle: ShelfBottle, purpose: Purpose) -> bool:
    return not (bottle.is_past or bottle.is_empty or refused_for(bottle, purpose))


def make_more(
    house: House, dye: str, by: int, about: Particulars | None = None
) -> ShelfBottle:
    """Make a dye's stock as it is usually made, by a hand that slips a little."""
    usual = USUAL.get(dye, Usual())
    wanted_g = usual.volume_ml * usual.percent / STRONGER.get(dye, 100.0)
    made = make_stock(
        dye_id=house.dyes[dye],
        jar_id=house.jars[dye],
        wanted_percent=usual.percent,
        powder_g=house.diary.slip(wanted_g, 0.1),
        final_ml=usual.volume_ml,
        about=about or Particulars(made_on=today(), water=WATER, place=usual.place),
        made_with=_made_with(usual),
        stamp=house.diary.stamp(by),
    )
    house.bottles[dye] = made.code
    return made


def _made_with(usual: Usual) -> MadeWith:
    tools = usual_for_stocks()
    return replace(tools, ware=tools.scale) if usual.is_by_weight else tools
