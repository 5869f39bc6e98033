"""A stock in the making: each step keeps what was typed."""

import pytest

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records.models import JarLine, StockBottle
from shadewright.workflows.jars import jar
from shadewright.workflows.making import (
    abandon_making,
    finish_making,
    go_to_step,
    make_up,
    start_making,
    weigh_powder,
)
from shadewright.workflows.makings import Making, making, makings
from shadewright.workflows.shelf import shelf_bottle
from shadewright.workflows.undo import undo
from tests.workflows.bench import founded, new_dye, new_jar, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def begun() -> Making:
    founded()
    dye_id = new_dye()
    return start_making(
        dye_id=dye_id,
        jar_id=new_jar(dye_id),
        volume_ml=500.0,
        strength_percent=1.0,
        stamp=now(),
    )


def left_g(begun: Making) -> float:
    assert begun.stock.jar_id is not None
    return jar(begun.stock.jar_id).left_g


@pytest.mark.by_hand
def test_from_powder_to_a_bottle_of_true_strength(begun: Making) -> None:
    weigh_powder(making_id=begun.id, powder_g=5.2, stamp=now())
    assert left_g(begun) == pytest.approx(94.8)
    made_up = make_up(making_id=begun.id, final_ml=520.0, water="Rain")
    assert made_up.label_percent == pytest.approx(1.0)  # 100 × 5.2 / 520
    stamp = now()
    bottle, again = (
        finish_making(making_id=begun.id, stamp=stamp, place="fridge") for _ in range(2)
    )
    assert bottle == again
    assert bottle.strength_percent == pytest.approx(1.0)
    assert (bottle.volume_ml, bottle.place) == (520.0, "fridge")
    assert StockBottle.objects.count() == 1
    assert makings() == ()
    assert making(begun.id).bottle_code == bottle.code


def test_a_second_weighing_takes_the_first_back(begun: Making) -> None:
    for grams in (5.0, 5.0, 5.3):
        weigh_powder(making_id=begun.id, powder_g=grams, stamp=now())
    assert left_g(begun) == pytest.approx(94.7)
    assert JarLine.objects.filter(act="undone").count() == 1


@pytest.mark.parametrize("powder_g", [0.0, -1.0, float("nan"), 100.1])
def test_a_weight_that_cannot_be_is_refused(begun: Making, powder_g: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        weigh_powder(making_id=begun.id, powder_g=powder_g, stamp=now())
    assert refused.value.argument == "powder_g"
    assert left_g(begun) == 100.0


def test_no_step_is_passed_whose_number_is_wanted(begun: Making) -> None:
    with pytest.raises(MissingError) as refused:
        go_to_step(making_id=begun.id, key="paste")
    assert refused.value.argument == "powder_g"
    weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
    with pytest.raises(MissingError) as refused:
        go_to_step(making_id=begun.id, key="label")
    assert refused.value.argument == "final_ml"
    with pytest.raises(ConflictError, match="Finish the steps before"):
        finish_making(making_id=begun.id, stamp=now())


def test_a_stock_that_is_given_up_gives_its_powder_back_or_not(begun: Making) -> None:
    weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
    abandon_making(making_id=begun.id, is_powder_kept=True, stamp=now())
    assert left_g(begun) == 100.0
    assert makings() == ()
    with pytest.raises(ConflictError, match="given up"):
        weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())


def test_an_undone_weighing_waits_for_a_new_one(begun: Making) -> None:
    weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
    deed = JarLine.objects.get(act="weighed out").deed
    undo(deed=deed, stamp=now())
    found = making(begun.id)
    assert (found.powder_g, found.step.key) == (None, "weigh")
    assert left_g(begun) == 100.0


def test_a_finished_stock_is_taken_back_with_its_powder(begun: Making) -> None:
    weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
    make_up(making_id=begun.id, final_ml=500.0)
    bottle = finish_making(making_id=begun.id, stamp=now())
    deed = StockBottle.objects.get().lines.get().deed
    undo(deed=deed, stamp=now())
    assert shelf_bottle(bottle.code).is_void
    assert left_g(begun) == 100.0
    with pytest.raises(ConflictError, match="finished"):
        weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
