"""What is drawn of a history, and where what was new is marked."""

from collections.abc import Sequence
from datetime import date, timedelta

from shadewright.core.colour import Lab
from shadewright.core.quality import PastLot
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.judging.drift import drift_lots
from shadewright.workflows.judging.histories import DyeThen, History, LotThen
from shadewright.workflows.judging.standards import OfWhat
from shadewright.workflows.shades.lot_colours import LotColour

MIDDLE = Lab(50.0, 10.0, 10.0)
WHAT = OfWhat(recipe_id=1, recipe_name="Low Tide", base_id=1, base_name="Fell DK")


def lot(
    number: str, light: float | None, *, jar: str = "J-1 + J-2", hold: float = 30.0
) -> LotThen:
    dyes = [
        DyeThen(
            name=name,
            depth_percent=0.5,
            bottle="T7K",
            bottle_id=1,
            jar=each,
            age_days=3.0,
            strength_percent=1.0,
        )
        for name, each in zip(("Slate", "Gorse"), jar.split(" + "), strict=True)
    ]
    colour = None
    if light is not None:
        colour = LotColour(lab=Lab(light, 10.0, 10.0), read_by=ReadBy.METER, u=0.1)
    return LotThen(
        past=PastLot(number=number, jar=jar, hold_min=hold),
        dyed_on=date(2026, 3, 2) + timedelta(days=int(number)),
        version=1,
        planned=frozenset(),
        dyes=tuple(dyes),
        colour=colour,
    )


def marks(lots: Sequence[LotThen]) -> list[tuple[int, str, str]]:
    history = History(what=WHAT, lots=tuple(lots), is_by_meter=False)
    drawn = drift_lots(history, MIDDLE)
    return [(x.mark.number, x.number, x.mark.words) for x in drawn if x.mark]


def test_only_the_jar_that_is_new_is_named_with_its_dye() -> None:
    found = marks([lot("1", 50.0), lot("2", 50.2, jar="J-1 + J-9")])
    assert found == [(1, "2", "jar J-9 (Gorse)")]


def test_what_was_new_with_a_lot_that_was_not_read_stands_at_the_next() -> None:
    lots = [lot("1", 50.0), lot("2", None, jar="J-8 + J-2"), lot("3", 51.0)]
    assert marks(lots) == [(1, "3", "jar J-8 (Slate), since 2")]


def test_a_name_that_was_there_before_is_no_news() -> None:
    lots = [lot("1", 50.0), lot("2", 50.0, jar="J-8 + J-2"), lot("3", 50.0)]
    assert [place for _number, place, _words in marks(lots)] == ["2"]


def test_a_number_is_news_only_far_outside_what_was_before() -> None:
    lots = [lot(f"{n}", 50.0, hold=29.0 + n % 3) for n in range(1, 6)]
    assert marks([*lots, lot("7", 50.0, hold=34.0)]) == []
    assert marks([*lots, lot("7", 52.0, hold=12.0)]) == [
        (1, "7", "hold 12\u00a0min, not 29\u00a0min")
    ]


def test_a_lighter_lot_lies_above_with_its_spread() -> None:
    history = History(what=WHAT, lots=(lot("1", 52.0),), is_by_meter=False)
    (drawn,) = drift_lots(history, MIDDLE)
    assert drawn.lighter == 2.0
    assert drawn.words == "lighter"
    assert drawn.spread is not None
    assert 0.19 < drawn.spread < 0.2
