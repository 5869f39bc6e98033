"""The demo's looks at its bottles: Sloe so often that its life is known."""

from functools import partial

from shadewright.records.writes import Stamp
from shadewright.workflows.bottles import Look, draw, look_at, pour_away
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.stocks import make_more
from shadewright.workflows.shelf import shelf

EARLY = (
    (236, ((21, Look.CLEAR), (48, Look.CLEAR), (84, Look.SETTLED))),
    (172, ((30, Look.CLEAR), (58, Look.CLEAR), (73, Look.SETTLED))),
    (134, ((16, Look.CLEAR), (33, Look.CLEAR))),
)
"""Early bottles of Sloe: made so many days ago, and how they looked at what age."""

LOOKED = ((85, "Sloe"), (71, "Sloe"), (57, "Sloe"), (29, "Sloe"), (15, "Sloe"))
ONCE = ((62, "Lagoon"), (38, "Gorse"), (20, "Foxglove"))


def write_looks(house: House) -> None:
    """Write down who looked at which bottles, and when."""
    for made_ago, seen in EARLY:
        made_at = house.diary.at(made_ago, "11:05")
        house.diary.note(made_at, house.ines, partial(_make_early, house, seen))
    for days_ago, dye in (*LOOKED, *ONCE):
        at = house.diary.at(days_ago, "12:20")
        house.diary.note(at, house.tam, partial(_look_over, house, dye))


def _make_early(house: House, seen: tuple[tuple[int, Look], ...], stamp: Stamp) -> None:
    made = make_more(house, "Sloe", stamp.by or house.ines)
    made_ago = (house.diary.now.date() - stamp.at.date()).days
    for age, look in seen:
        at = house.diary.at(made_ago - age, "12:20")
        house.diary.note(at, house.tam, partial(_look_early, house, made.code, look))
    emptied = partial(_empty_early, made.code)
    last_age = seen[-1][0]
    house.diary.note(house.diary.at(made_ago - last_age, "17:50"), house.tam, emptied)


def _look_early(house: House, code: str, look: Look, stamp: Stamp) -> None:
    look_at(code=code, look=look, stamp=stamp)
    if look is Look.CLEAR:
        again = house.diary.stamp(stamp.by or house.tam)
        draw(code=code, volume_ml=420, note="a kettle", stamp=again)


def _empty_early(code: str, stamp: Stamp) -> None:
    pour_away(code=code, note="the last of it, washed", stamp=stamp)


def _look_over(house: House, dye: str, stamp: Stamp) -> None:
    """Hold every bottle of a dye to the window: all of them are clear."""
    by = stamp.by or house.tam
    for each in shelf():
        if each.dye_name == dye and not (each.is_empty or each.is_settled):
            look_at(code=each.code, look=Look.CLEAR, stamp=house.diary.stamp(by))
