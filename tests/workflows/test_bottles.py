"""What happens to a bottle: entered, drawn, looked at, tested, emptied."""

from collections.abc import Callable
from datetime import date, timedelta
from math import inf, nan

import pytest

from shadewright.errors import (
    ConflictError,
    NotFoundError,
    OutOfRangeError,
    StudioError,
)
from shadewright.records.models import BottleLine, StockBottle
from shadewright.workflows.bottles import (
    Look,
    change_particulars,
    draw,
    enter_bottle,
    look_at,
    pour_away,
    read_level,
    record_strength,
)
from shadewright.workflows.catalogue import earlier_versions
from shadewright.workflows.filling import Particulars
from shadewright.workflows.ledger_pages import bottle_page
from shadewright.workflows.people import people
from shadewright.workflows.shelf import (
    ShelfBottle,
    bottles_gone,
    shelf,
    shelf_bottle,
)
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.bench import entered, founded, new_dye, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def bottle() -> ShelfBottle:
    return entered(new_dye())


def test_a_bottle_is_entered_as_it_stands_and_its_strength_is_a_guess() -> None:
    founded()
    (ines, _) = people()
    found = enter_bottle(
        dye_id=new_dye(),
        strength_percent=2.0,
        volume_ml=300.0,
        stamp=stamp_now(by=ines.id),
        about=Particulars(
            made_on=today() - timedelta(days=40),
            is_date_about=True,
            place=" Second shelf ",
            discard_by=today(),
        ),
    )
    assert (found.volume_ml, found.strength_percent) == (300.0, 2.0)
    assert found.is_strength_guess
    assert found.evidence == "as labelled: a guess"
    assert found.place == "Second shelf"
    assert found.age.days == 40
    assert found.usable_ml == 290.0  # the studio's last drops are 10 ml
    assert bottle_page(found.code).made_by == "Ines"
    assert [one.code for one in shelf()] == [found.code]


@pytest.mark.parametrize(
    ("about", "argument"),
    [
        (Particulars(made_on=date(2999, 1, 1)), "made_on"),
        (
            Particulars(made_on=date(2026, 3, 1), discard_by=date(2026, 2, 1)),
            "discard_by",
        ),
        (Particulars(dead_volume_ml=-1.0), "dead_volume_ml"),
        (Particulars(dead_volume_ml=nan), "dead_volume_ml"),
    ],
)
def test_particulars_that_cannot_be_are_refused_and_leave_nothing(
    about: Particulars, argument: str
) -> None:
    dye_id = new_dye()
    with pytest.raises(OutOfRangeError) as refused:
        enter_bottle(
            dye_id=dye_id, strength_percent=1, volume_ml=1, stamp=now(), about=about
        )
    assert refused.value.argument == argument
    assert not StockBottle.objects.exists()


def test_drawing_lowers_the_level_and_leaves_the_strength(bottle: ShelfBottle) -> None:
    left = draw(code=bottle.code, volume_ml=35.0, stamp=now(), note="bath B2")
    assert (left.volume_ml, left.strength_percent) == (465.0, 1.0)
    assert bottle_page(bottle.code).entries[0].note == "bath B2"


@pytest.mark.parametrize("volume_ml", [0.0, -1.0, nan, inf, 2e6, 500.1])
def test_what_cannot_be_drawn_is_refused(bottle: ShelfBottle, volume_ml: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        draw(code=bottle.code, volume_ml=volume_ml, stamp=now())
    assert refused.value.argument == "volume_ml"
    assert shelf_bottle(bottle.code).volume_ml == 500.0


def test_a_deed_sent_twice_is_written_once(bottle: ShelfBottle) -> None:
    stamp = now()
    for _ in range(2):
        draw(code=bottle.code, volume_ml=35.0, stamp=stamp)
    assert shelf_bottle(bottle.code).volume_ml == 465.0
    again = now()
    for _ in range(2):
        enter_bottle(
            dye_id=bottle.dye_id,
            strength_percent=1,
            volume_ml=1,
            stamp=again,
            about=Particulars(),
        )
    assert StockBottle.objects.count() == 2


@pytest.mark.parametrize(
    ("look", "is_settled", "trouble"),
    [
        (Look.CLEAR, False, ""),
        (Look.SETTLED, True, "settled"),
        (Look.STIRRED, None, "look first"),
        (Look.REWARMED, None, "look first"),
    ],
)
def test_a_look_is_written_down(
    bottle: ShelfBottle, look: Look, *, is_settled: bool | None, trouble: str
) -> None:
    found = look_at(code=bottle.code, look=look, stamp=now())
    assert found.is_settled is is_settled
    assert found.trouble == trouble  # its age is not known


def test_a_tested_strength_is_no_guess(bottle: ShelfBottle) -> None:
    found = record_strength(code=bottle.code, strength_percent=0.9, stamp=now())
    assert found.strength_percent == pytest.approx(0.9)
    assert found.evidence == "tested"
    assert not found.is_strength_guess


@pytest.mark.by_hand
def test_evaporated_is_stronger_and_counted_is_not(bottle: ShelfBottle) -> None:
    def read(volume_ml: float, *, is_evaporated: bool) -> ShelfBottle:
        return read_level(
            code=bottle.code,
            volume_ml=volume_ml,
            is_evaporated=is_evaporated,
            stamp=now(),
        )

    dried = read(400.0, is_evaporated=True)
    assert dried.strength_percent == pytest.approx(1.25)  # 100 × 5 g / 400 ml
    counted = read(450.0, is_evaporated=False)
    assert counted.volume_ml == 450.0
    assert counted.strength_percent == pytest.approx(1.25)
    for level in (451.0, 0.0, 10.0):  # grown, gone, 56 %
        with pytest.raises(OutOfRangeError) as refused:
            read(level, is_evaporated=True)
        assert refused.value.argument == "volume_ml"
    assert read(0.0, is_evaporated=False).is_empty


def test_a_bottle_poured_away_is_gone_for_good(bottle: ShelfBottle) -> None:
    pour_away(code=bottle.code, stamp=now(), note="mould")
    assert shelf() == ()
    assert [one.trouble for one in bottles_gone()] == ["poured away"]
    with pytest.raises(ConflictError, match="poured away"):
        draw(code=bottle.code, volume_ml=1.0, stamp=now())
    with pytest.raises(ConflictError, match="poured away"):
        pour_away(code=bottle.code, stamp=now())


def test_what_is_written_on_a_bottle_can_be_written_anew_and_is_kept(
    bottle: ShelfBottle,
) -> None:
    founded()
    (_, tam) = people()
    found = change_particulars(
        code=bottle.code,
        place="Fridge",
        water="Rain",
        discard_by=date(2027, 1, 31),
        dead_volume_ml=5.0,
        notes="Look on Mondays",
        stamp=stamp_now(by=tam.id),
    )
    assert (found.place, found.discard_by, found.usable_ml) == (
        "Fridge",
        date(2027, 1, 31),
        495.0,
    )
    (before,) = earlier_versions(StockBottle.objects.get())
    assert (before.values["place"], before.replaced_by) == ("", "Tam")


@pytest.mark.parametrize(
    ("discard_by", "dead_volume_ml", "argument"),
    [(date(2020, 1, 1), 10.0, "discard_by"), (None, -1.0, "dead_volume_ml")],
)
def test_what_cannot_stand_on_a_bottle_is_refused(
    bottle: ShelfBottle,
    discard_by: date | None,
    dead_volume_ml: float,
    argument: str,
) -> None:
    StockBottle.objects.update(made_on=date(2026, 1, 1))
    with pytest.raises(OutOfRangeError) as refused:
        change_particulars(
            code=bottle.code,
            place="Fridge",
            water="",
            discard_by=discard_by,
            dead_volume_ml=dead_volume_ml,
            notes="",
            stamp=now(),
        )
    assert refused.value.argument == argument
    assert not shelf_bottle(bottle.code).place


@pytest.mark.parametrize(
    "verb",
    [
        lambda code: draw(code=code, volume_ml=1, stamp=now()),
        lambda code: look_at(code=code, look=Look.CLEAR, stamp=now()),
        lambda code: record_strength(code=code, strength_percent=1, stamp=now()),
        lambda code: pour_away(code=code, stamp=now()),
    ],
)
def test_a_bottle_that_never_was_is_not_found(
    verb: Callable[[str], ShelfBottle],
) -> None:
    with pytest.raises(NotFoundError):
        verb("T7KK")


def test_a_refusal_leaves_no_line(bottle: ShelfBottle) -> None:
    before = BottleLine.objects.count()
    with pytest.raises(StudioError):
        draw(code=bottle.code, volume_ml=900.0, stamp=now())
    assert BottleLine.objects.count() == before
