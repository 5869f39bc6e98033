"""The demo's story: founded, filled with things, dyed in for some months."""

from dataclasses import replace
from datetime import datetime
from decimal import Decimal

from django.db import transaction

from shadewright.workflows.demo.after_heat import write_after_heat
from shadewright.workflows.demo.buyers import write_buyers
from shadewright.workflows.demo.calendar import SEED, Diary
from shadewright.workflows.demo.days import write_dye_days
from shadewright.workflows.demo.dyes import receive_jars, write_down_dyes
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.judged import write_judged
from shadewright.workflows.demo.lessons import write_lessons
from shadewright.workflows.demo.orders import write_orders
from shadewright.workflows.demo.planned_days import write_planned_days
from shadewright.workflows.demo.recipes import write_recipes
from shadewright.workflows.demo.room import write_room
from shadewright.workflows.demo.shelf_life import ShelfLife
from shadewright.workflows.demo.stocks import WATER
from shadewright.workflows.demo.swatches import write_swatches
from shadewright.workflows.demo.things import receive_yarn, write_down_things
from shadewright.workflows.demo.ware import put_tools_in_order, write_down_ware
from shadewright.workflows.demo.wishes import write_wishes
from shadewright.workflows.labels import bottles_to_label, print_labels
from shadewright.workflows.people import add_person
from shadewright.workflows.studio import found_studio, set_altitude, set_rate, studio


def build_demo(now: datetime) -> None:
    """Build the demo studio as of a moment; a demo that stands is left alone."""
    if studio() is not None:
        return
    with transaction.atomic():
        _tell(House(diary=Diary(now)))


def _tell(house: House) -> None:
    """Tell it from the founding to this minute."""
    diary = house.diary
    diary.note(diary.at(300, "10:00"), 0, lambda _: _found())
    diary.tell()
    house.look_round()
    diary.note(diary.at(260, "09:00"), house.ines, write_down_dyes)
    diary.note(diary.at(260, "09:30"), house.ines, write_down_things)
    diary.note(diary.at(260, "09:40"), house.ines, write_down_ware)
    diary.tell()
    house.look_round()
    receive_jars(house)
    receive_yarn(house)
    put_tools_in_order(house)
    write_recipes(house)
    write_dye_days(house)
    ShelfLife(house).write()
    shades = replace(house, diary=diary.aside(SEED + 1))
    write_swatches(shades)
    write_wishes(shades)
    write_lessons(shades)
    days = replace(house, diary=diary.aside(SEED + 2))
    write_room(days)
    write_orders(days)
    write_after_heat(days)
    write_planned_days(days)
    sold = replace(house, diary=diary.aside(SEED + 3))
    write_buyers(sold)
    write_judged(sold)
    diary.note(diary.before(90), house.ines, lambda _: _label_all_but_two(house))
    diary.tell()


def _found() -> None:
    found_studio(name="Thornbank Dye Room", person="Ines", water=WATER, is_demo=True)
    set_rate(Decimal("18.00"))
    set_altitude(210)
    add_person("Tam")


def _label_all_but_two(house: House) -> None:
    unlabelled = {house.bottles["weak Slate"], house.bottles["old Marigold"]}
    codes = [each.code for each in bottles_to_label() if each.code not in unlabelled]
    print_labels(codes=codes, format_key="a4-21")
