"""Some months of work with powder and stock, told in order."""

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from django.db import transaction

from shadewright.records.models import Dye
from shadewright.workflows.bottles import (
    Look,
    draw,
    enter_bottle,
    look_at,
    pour_away,
    read_level,
    record_strength,
)
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.demo.calendar import Calendar
from shadewright.workflows.demo.things import fill_catalogue, found
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import count_jar, receive_jar
from shadewright.workflows.making import (
    go_to_step,
    start_making,
    weigh_powder,
)
from shadewright.workflows.mending import add_water, dilute, merge
from shadewright.workflows.stocks import make_stock
from shadewright.workflows.studio import studio
from shadewright.workflows.undo import undo


@dataclass(frozen=True, kw_only=True)
class DemoStock:
    """A stock that was made: of what, how long ago, and how it was drawn on."""

    dye: str
    days_ago: int
    percent: float = 1.0
    volume_ml: float = 500.0
    draws_ml: tuple[float, ...] = ()
    every_days: int = 3
    by: str = "Ines"
    place: str = "top shelf"


JARS_G = {
    "Bramble": 100,
    "Coal": 250,
    "Foxglove": 100,
    "Gorse": 100,
    "Heather": 12,
    "Kelp": 100,
    "Lagoon": 50,
    "Marigold": 100,
    "Peat": 100,
    "Primrose": 50,
    "Rosehip": 100,
    "Slate": 50,
    "Sloe": 100,
}

STOCKS = (
    DemoStock(dye="Peat", days_ago=235, draws_ml=(60, 85, 40, 55), every_days=9),
    DemoStock(dye="Sloe", days_ago=128, draws_ml=(45, 70, 62), every_days=8, by="Tam"),
    DemoStock(dye="Coal", days_ago=74, percent=2.0, draws_ml=(80, 120), every_days=11),
    DemoStock(dye="Bramble", days_ago=45, draws_ml=(60, 110, 95, 58), every_days=7),
    DemoStock(dye="Foxglove", days_ago=36, percent=0.5, draws_ml=(40, 85)),
    DemoStock(
        dye="Slate",
        days_ago=22,
        draws_ml=(150, 120, 90, 42, 38),
        by="Tam",
        place="trolley",
    ),
    DemoStock(dye="Heather", days_ago=16, draws_ml=(35, 50), by="Tam"),
    DemoStock(dye="Rosehip", days_ago=9, draws_ml=(100, 90), every_days=2),
    DemoStock(dye="Gorse", days_ago=4, draws_ml=(60, 150), every_days=1),
    DemoStock(dye="Kelp", days_ago=2, volume_ml=1000, draws_ml=(35,), every_days=1),
)


def build_demo(now: datetime) -> None:
    """Build the demo studio as of a moment; a demo that stands is left alone."""
    if studio() is not None:
        return
    with transaction.atomic():
        Story(now).tell()


class Story:
    """The demo's months, told by the verbs of the workflows."""

    def __init__(self, now: datetime) -> None:
        self._calendar = Calendar(now)
        self._people: dict[str, int] = {}
        self._dyes: dict[str, int] = {}
        self._jars: dict[str, int] = {}
        self._bottles: dict[str, str] = {}

    def tell(self) -> None:
        """Tell it from the founding to this morning."""
        self._people = found(self._calendar)
        self._dyes = fill_catalogue(self._calendar, self._people["Ines"])
        self._receive_jars()
        for stock in STOCKS:
            self._make(stock)
        self._old_ones()
        self._what_went_wrong()
        self._this_week()

    def _receive_jars(self) -> None:
        for number, (dye, grams) in enumerate(JARS_G.items()):
            jar = receive_jar(
                dye_id=self._dyes[dye],
                powder_g=grams,
                lot=f"{chr(65 + number)}{3070 + 113 * number}",
                opened_on=self._calendar.day(250 - 3 * number),
                price=Decimal(grams) * Decimal("0.24"),
                strength_percent=110.0 if dye == "Rosehip" else 100.0,
                stamp=self._calendar.stamp(
                    self._people["Ines"], days_ago=250 - 3 * number, clock="16:10"
                ),
            )
            self._jars[dye] = jar.id

    def _make(self, stock: DemoStock) -> None:
        by = self._people[stock.by]
        made = self._calendar.stamp(by, days_ago=stock.days_ago, clock="10:12")
        factor = 1.1 if stock.dye == "Rosehip" else 1.0
        wanted_g = stock.volume_ml * stock.percent / 100 / factor
        bottle = make_stock(
            dye_id=self._dyes[stock.dye],
            jar_id=self._jars[stock.dye],
            wanted_percent=stock.percent,
            powder_g=self._calendar.slip(wanted_g, 0.1),
            final_ml=stock.volume_ml,
            about=Particulars(
                made_on=self._calendar.day(stock.days_ago),
                water="Tap, 180 mg/l hard",
                place=stock.place,
            ),
            stamp=made,
        )
        self._bottles[stock.dye] = bottle.code
        self._draw_on(bottle.code, stock)

    def _draw_on(self, code: str, stock: DemoStock) -> None:
        for number, volume_ml in enumerate(stock.draws_ml, start=1):
            days_ago = max(stock.days_ago - number * stock.every_days, 0)
            by = self._people["Tam" if number % 2 else "Ines"]
            if number % 2:
                seen = self._calendar.stamp(by, days_ago=days_ago, clock="09:02")
                look_at(code=code, look=Look.CLEAR, stamp=seen)
            drawn = self._calendar.stamp(by, days_ago=days_ago, clock="09:24")
            draw(code=code, volume_ml=volume_ml, note="kettle bath", stamp=drawn)

    def _old_ones(self) -> None:
        ines = self._people["Ines"]
        entered = enter_bottle(
            dye_id=self._dyes["Marigold"],
            strength_percent=1.0,
            volume_ml=180,
            about=Particulars(
                made_on=self._calendar.day(170),
                is_date_about=True,
                place="bottom shelf",
                notes="Stood on the shelf before the records began.",
            ),
            stamp=self._calendar.stamp(ines, days_ago=60, clock="15:20"),
        )
        self._bottles["Marigold"] = entered.code
        weak = self._weaker("Kelp", days_ago=1, percent=0.1, volume_ml=250)
        draw(
            code=weak,
            volume_ml=25,
            note="pale swatches",
            stamp=self._calendar.stamp(ines, days_ago=1, clock="11:30"),
        )
        self._weaker("Slate", days_ago=5, percent=0.1, volume_ml=200)

    def _weaker(
        self, dye: str, *, days_ago: int, percent: float, volume_ml: float
    ) -> str:
        stamp = self._calendar.stamp(
            self._people["Tam"], days_ago=days_ago, clock="10:40"
        )
        made_on = self._calendar.day(days_ago)
        about = Particulars(made_on=made_on, place="trolley")
        return dilute(
            code=self._bottles[dye],
            want_percent=percent,
            volume_ml=volume_ml,
            stamp=stamp,
            about=about,
        ).code

    def _what_went_wrong(self) -> None:
        ines, tam = self._people["Ines"], self._people["Tam"]
        at = self._calendar.stamp
        read_level(
            code=self._bottles["Peat"],
            volume_ml=228,
            is_evaporated=True,
            note="the cap was loose",
            stamp=at(tam, days_ago=96, clock="17:05"),
        )
        look_at(
            code=self._bottles["Sloe"],
            look=Look.SETTLED,
            note="a dark layer at the bottom",
            stamp=at(ines, days_ago=1, clock="17:40"),
        )
        record_strength(
            code=self._bottles["Bramble"],
            strength_percent=0.98,
            note="dyed beside a fresh 1 %",
            stamp=at(ines, days_ago=11, clock="14:30"),
        )
        add_water(
            code=self._bottles["Coal"],
            volume_ml=10,
            note="back to the mark",
            stamp=at(ines, days_ago=30, clock="09:50"),
        )
        count_jar(
            jar_id=self._jars["Slate"],
            reading_g=44.1,
            note="spilt a little on the damp paper",
            stamp=at(tam, days_ago=12, clock="16:40"),
        )
        self._merge_two_gorses(tam)
        self._undo_a_slip(ines)
        self._correct_a_dye(ines)

    def _merge_two_gorses(self, by: int) -> None:
        old = DemoStock(dye="Gorse", days_ago=40, draws_ml=(240, 200), every_days=10)
        newest = self._bottles["Gorse"]
        self._make(old)
        merge(
            code=newest,
            from_codes=[self._bottles["Gorse"]],
            stamp=self._calendar.stamp(by, days_ago=1, clock="08:50"),
        )
        self._bottles["Gorse"] = newest
        primrose = DemoStock(dye="Primrose", days_ago=50, volume_ml=250)
        self._make(primrose)
        pour_away(
            code=self._bottles["Primrose"],
            note="made for one day",
            stamp=self._calendar.stamp(by, days_ago=49, clock="18:00"),
        )

    def _undo_a_slip(self, by: int) -> None:
        slip = self._calendar.stamp(by, days_ago=5, clock="11:15")
        draw(code=self._bottles["Heather"], volume_ml=50, stamp=slip)
        undo(
            deed=slip.deed,
            stamp=self._calendar.stamp(by, days_ago=5, clock="11:16"),
        )

    def _correct_a_dye(self, by: int) -> None:
        dye = Dye.objects.get(name="Lagoon")
        dye.solubility_g_per_l = 25
        dye.solubility_source = "invented, as if from a newer data sheet"
        keep_item(dye, self._calendar.stamp(by, days_ago=20, clock="20:05"))

    def _this_week(self) -> None:
        tam = self._people["Tam"]
        begun = start_making(
            dye_id=self._dyes["Lagoon"],
            jar_id=self._jars["Lagoon"],
            volume_ml=500,
            strength_percent=1.0,
            stamp=self._calendar.stamp(tam, days_ago=0, clock="08:40"),
        )
        weighed = self._calendar.stamp(tam, days_ago=0, clock="08:52")
        weigh_powder(making_id=begun.id, powder_g=5.2, stamp=weighed)
        go_to_step(making_id=begun.id, key="cool")
