"""What befell the demo's bottles and jars, apart from being drawn on."""

from functools import partial

from shadewright.records.models import Dye, MeasuringTool
from shadewright.records.writes import Stamp
from shadewright.workflows.bottles import (
    Look,
    draw,
    enter_bottle,
    look_at,
    pour_away,
    read_level,
)
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.demo.calendar import Happening
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.looks import write_looks
from shadewright.workflows.demo.stocks import WATER, make_more, pour_together
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import count_jar
from shadewright.workflows.making import go_to_step, start_making, weigh_powder
from shadewright.workflows.mending import add_water, dilute
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import today
from shadewright.workflows.strength_tests import draw_for_test, record_ladder
from shadewright.workflows.undo import undo
from shadewright.workflows.weighing_bottles import weigh_bottle


class ShelfLife:
    """The shelf's own story, from the first bottle to the one in the making."""

    def __init__(self, house: House) -> None:
        self._house = house
        self._diary = house.diary

    def write(self) -> None:
        """Write down what will befall, each on its day."""
        ines, tam = self._house.ines, self._house.tam
        for days_ago, clock, by, happening in (
            (235, "10:12", ines, self._make_old_peat),
            (226, "09:24", ines, self._draw_old_peat),
            (208, "09:31", tam, self._draw_old_peat),
            (118, "15:05", tam, self._make_heather),
            (96, "17:05", tam, self._read_old_peat),
            (48, "08:40", ines, self._make_primrose),
            (47, "18:00", tam, self._pour_primrose_away),
            (31, "09:50", ines, self._top_coal_up),
            (20, "20:05", ines, self._correct_lagoon),
            (21, "10:40", tam, self._weaker("Kelp", 250)),
            (14, "19:30", ines, self._retire_the_syringe),
            (12, "16:40", tam, self._count_slate),
            (11, "14:30", ines, self._weigh_weak_kelp(377.6)),
            (8, "10:20", ines, self._enter_foxglove),
            (7, "14:10", tam, self._test_foxglove),
            (1, "17:15", tam, self._weigh_weak_kelp(371.4)),
            (6, "11:15", ines, self._draw_by_mistake),
            (4, "10:40", tam, self._weaker("Slate", 200)),
            (2, "15:50", tam, partial(pour_together, self._house)),
            (2, "18:20", ines, self._enter_marigold),
            (1, "17:40", ines, self._find_sloe_settled),
        ):
            self._diary.note(self._diary.at(days_ago, clock), by, happening)
        write_looks(self._house)
        self._diary.note(self._diary.before(95), tam, self._begin_sloe)

    def _make_old_peat(self, stamp: Stamp) -> None:
        about = Particulars(
            made_on=today(),
            water=WATER,
            place="bottom shelf",
            discard_by=self._diary.day(115),
        )
        made = make_more(self._house, "Peat", stamp.by or 0, about)
        self._house.bottles["old Peat"] = made.code

    def _draw_old_peat(self, stamp: Stamp) -> None:
        note = "a kettle, before baths were written down"
        draw(code=self._code("old Peat"), volume_ml=185, note=note, stamp=stamp)

    def _read_old_peat(self, stamp: Stamp) -> None:
        read_level(
            code=self._code("old Peat"),
            volume_ml=590,
            is_evaporated=True,
            note="the cap was loose",
            stamp=stamp,
        )

    def _weigh_weak_kelp(self, gross_g: float) -> Happening:
        def weigh_it(stamp: Stamp) -> None:
            weigh_bottle(
                code=self._code("weak Kelp"),
                gross_g=gross_g,
                scale_id=self._tool("Bench scale"),
                stamp=stamp,
            )

        return weigh_it

    def _make_heather(self, stamp: Stamp) -> None:
        make_more(self._house, "Heather", stamp.by or 0)

    def _enter_foxglove(self, stamp: Stamp) -> None:
        entered = enter_bottle(
            dye_id=self._house.dyes["Foxglove"],
            strength_percent=1.0,
            volume_ml=400,
            about=Particulars(
                made_on=self._diary.day(70),
                is_date_about=True,
                place="bottom shelf",
                notes="Swapped at the fair; its label says 1 %, about.",
            ),
            stamp=stamp,
        )
        self._house.bottles["swapped Foxglove"] = entered.code

    def _test_foxglove(self, stamp: Stamp) -> None:
        """Dye the swapped bottle beside our own: it lies between two rungs."""
        pair = {
            "code": self._code("swapped Foxglove"),
            "fresh_code": self._code("Foxglove"),
        }
        draw_for_test(**pair, stamp=stamp)
        found = self._diary.stamp(stamp.by or 0)
        record_ladder(**pair, low_percent=80, high_percent=90, stamp=found)

    def _make_primrose(self, stamp: Stamp) -> None:
        make_more(self._house, "Primrose", stamp.by or 0)

    def _pour_primrose_away(self, stamp: Stamp) -> None:
        pour_away(code=self._code("Primrose"), note="made for one day", stamp=stamp)

    def _top_coal_up(self, stamp: Stamp) -> None:
        add_water(
            code=self._code("Coal"),
            volume_ml=10,
            note="back to the mark",
            tool_id=self._tool("Big syringe"),
            stamp=stamp,
        )

    def _correct_lagoon(self, stamp: Stamp) -> None:
        dye = Dye.objects.get(name="Lagoon")
        dye.solubility_g_per_l = 25
        dye.solubility_source = "invented, as if from a newer data sheet"
        keep_item(dye, stamp)

    def _retire_the_syringe(self, stamp: Stamp) -> None:
        tool = MeasuringTool.objects.get(name="Small syringe")
        tool.is_retired = True
        keep_item(tool, stamp)

    def _weaker(self, dye: str, volume_ml: float) -> Happening:
        def dilute_it(stamp: Stamp) -> None:
            made = dilute(
                code=self._code(dye),
                want_percent=0.1,
                volume_ml=volume_ml,
                about=Particulars(made_on=today(), place="trolley"),
                tool_id=self._tool("Small cylinder"),
                ware_id=self._tool("Tall cylinder"),
                stamp=stamp,
            )
            self._house.bottles[f"weak {dye}"] = made.code

        return dilute_it

    def _count_slate(self, stamp: Stamp) -> None:
        count_jar(
            jar_id=self._house.jars["Slate"],
            reading_g=24.1,
            note="spilt a little on the damp paper",
            stamp=stamp,
        )

    def _draw_by_mistake(self, stamp: Stamp) -> None:
        draw(code=self._code("Heather"), volume_ml=50, stamp=stamp)
        undo(deed=stamp.deed, stamp=self._diary.stamp(stamp.by or 0))

    def _enter_marigold(self, stamp: Stamp) -> None:
        entered = enter_bottle(
            dye_id=self._house.dyes["Marigold"],
            strength_percent=1.0,
            volume_ml=180,
            about=Particulars(
                made_on=self._diary.day(150),
                is_date_about=True,
                place="bottom shelf",
                notes="Found behind the others, from before the records began.",
            ),
            stamp=stamp,
        )
        self._house.bottles["old Marigold"] = entered.code

    def _find_sloe_settled(self, stamp: Stamp) -> None:
        ours = (each for each in shelf() if each.dye_name == "Sloe")
        oldest = max(ours, key=lambda each: each.age.days or 0)
        look_at(
            code=oldest.code,
            look=Look.SETTLED,
            note="a dark layer at the bottom",
            stamp=stamp,
        )

    def _begin_sloe(self, stamp: Stamp) -> None:
        by = stamp.by or 0
        begun = start_making(
            dye_id=self._house.dyes["Sloe"],
            jar_id=self._house.jars["Sloe"],
            volume_ml=1000,
            strength_percent=1.0,
            scale_id=self._tool("Bench scale"),
            ware_id=self._tool("Tall cylinder"),
            stamp=stamp,
        )
        weigh_powder(making_id=begun.id, powder_g=10.2, stamp=self._diary.stamp(by))
        go_to_step(making_id=begun.id, key="cool")

    def _tool(self, name: str) -> int:
        return self._house.tools[name]

    def _code(self, name: str) -> str:
        return self._house.bottles[name]
