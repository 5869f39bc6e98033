"""What people ask of the demo studio, and what its own shelf should hold."""

from dataclasses import dataclass
from datetime import timedelta
from functools import partial

from shadewright.records.models import OrderLine
from shadewright.records.writes import Stamp
from shadewright.workflows.days.orders import (
    Closing,
    LineWish,
    OrderWish,
    close_order,
    promise,
    write_order,
)
from shadewright.workflows.days.pars import keep_par
from shadewright.workflows.days.shares import share_bath
from shadewright.workflows.days.yields import yields_of
from shadewright.workflows.demo.house import House
from shadewright.workflows.recipes import version
from shadewright.workflows.stamps import today

SHOP, KNITTERS, WREN = "Marsh End, the shop", "The Tuesday knitters", "Wren"


@dataclass(frozen=True, kw_only=True)
class Line:
    """A colourway on a yarn in skeins, and what was said of it."""

    name: str
    base: str
    skeins: int
    as_said: str = ""


@dataclass(frozen=True, kw_only=True)
class Asked:
    """An order: when it came, and in how many days it is wanted and promised."""

    days_ago: int
    clock: str
    for_whom: str
    lines: tuple[Line, ...]
    due_in: int
    promised_in: int | None = None
    notes: str = ""


SENT = Asked(
    days_ago=20,
    clock="11:20",
    for_whom=WREN,
    lines=(Line(name="Bramble Grey", base="Hollow 4-ply", skeins=2),),
    due_in=9,
)
FOR_THE_SHOP = Asked(
    days_ago=6,
    clock="10:35",
    for_whom=SHOP,
    lines=(
        Line(
            name="Rosehip Lane",
            base="Byre DK",
            skeins=4,
            as_said="the deep red, as last time",
        ),
        Line(name="Millrace", base="Hollow 4-ply", skeins=3),
        Line(name="Foxglove Bank", base="Drift lace", skeins=10),
    ),
    due_in=18,
    promised_in=15,
)
FOR_THE_KNITTERS = Asked(
    days_ago=2,
    clock="12:05",
    for_whom=KNITTERS,
    lines=(
        Line(
            name="Low Tide",
            base="Hollow 4-ply",
            skeins=5,
            as_said="the moody sea one, not the pale one",
        ),
    ),
    due_in=8,
    notes="Fetched on the Tuesday, after the knitting.",
)
PARS = (
    Line(name="Kingcup", base="Byre DK", skeins=4),
    Line(name="Low Tide", base="Hollow 4-ply", skeins=6),
    Line(name="Peat Smoke", base="Byre DK", skeins=4),
)


def write_orders(house: House) -> None:
    """Write down when each order came, and when the first was sent."""
    for asked in (SENT, FOR_THE_SHOP, FOR_THE_KNITTERS):
        at = house.diary.at(asked.days_ago, asked.clock)
        house.diary.note(at, house.ines, partial(_write, house, asked))
    at = house.diary.at(SENT.days_ago, "17:05")
    house.diary.note(at, house.tam, _send)
    house.diary.note(house.diary.at(9, "18:05"), house.ines, lambda _: _set_pars(house))


def line_of(name: str) -> OrderLine:
    """Return the line of an open order that asks for a colourway."""
    lines = OrderLine.objects.filter(recipe__name=name, order__is_closed=False)
    return lines.order_by("id")[0]


def _write(house: House, asked: Asked, stamp: Stamp) -> None:
    wish = OrderWish(
        for_whom=asked.for_whom,
        lines=tuple(_line(house, line) for line in asked.lines),
        due_on=today() + timedelta(days=asked.due_in),
        notes=asked.notes,
    )
    number = write_order(wish=wish, stamp=stamp)
    if asked.promised_in is not None:
        told = today() + timedelta(days=asked.promised_in)
        promise(number=number, promised_on=told, stamp=stamp)


def _line(house: House, line: Line) -> LineWish:
    return LineWish(
        recipe_id=_recipe_id(house, line),
        base_id=house.bases[line.base],
        skeins=line.skeins,
        as_said=line.as_said,
    )


def _recipe_id(house: House, line: Line) -> int:
    return version(house.versions[line.name]).recipe_id


def _send(stamp: Stamp) -> None:
    """Take the order from the shelf, and send it."""
    (wanted,) = SENT.lines
    line = line_of(wanted.name)
    yields = yields_of(recipe_ids={line.recipe_id}, base_ids={line.base_id})
    left = line.skeins
    for lot in yields:
        taken = min(left, lot.free) if lot.is_on_shelf else 0
        if taken:
            share_bath(line_id=line.pk, number=lot.number, skeins=taken)
            left -= taken
    close_order(number=line.order.number, how=Closing.SENT, stamp=stamp)


def _set_pars(house: House) -> None:
    for par in PARS:
        keep_par(
            recipe_id=_recipe_id(house, par),
            base_id=house.bases[par.base],
            skeins=par.skeins,
        )
