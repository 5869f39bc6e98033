"""An old stock is dyed beside fresh, and its strength follows with its spread."""

from math import sqrt

import pytest

from shadewright.errors import ConflictError, OutOfRangeError
from shadewright.records.models import BottleLine, MeasuringTool
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.bottles import Look, look_at
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.strength_tests import (
    draw_for_test,
    fresh_bottles,
    record_ladder,
    strength_test,
)
from shadewright.workflows.undo import undo
from shadewright.workflows.usual_tools import set_usual_tools
from tests.workflows.bench import entered, founded, made, new_dye, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def dye() -> int:
    return new_dye()


@pytest.fixture
def old(dye: int) -> ShelfBottle:
    return entered(dye)


@pytest.fixture
def fresh(dye: int) -> ShelfBottle:
    return made(dye, powder_g=5.2)  # 1.04 %


def test_only_fresh_or_tested_bottles_are_a_measure(
    dye: int, old: ShelfBottle, fresh: ShelfBottle
) -> None:
    guessed = entered(dye)
    made(new_dye("Kelp"))
    assert [each.code for each in fresh_bottles(old.code)] == [fresh.code]
    with pytest.raises(OutOfRangeError, match="a fresh or tested bottle of Slate"):
        strength_test(code=old.code, fresh_code=guessed.code)


@pytest.mark.by_hand
def test_what_it_takes_is_drawn_from_both(old: ShelfBottle, fresh: ShelfBottle) -> None:
    # 0.05 g are 4.81 ml of 1.04 %; 3.8 doses and 5 % to spare are 19.18 ml, so 20 ml.
    # Of the old one 5 ml and 5 % are 5.25 ml, so 6 ml.
    stamp = now()
    test = draw_for_test(code=old.code, fresh_code=fresh.code, stamp=stamp)
    assert test.plan.fold == 10
    assert shelf_bottle(fresh.code).volume_ml == 480
    assert shelf_bottle(old.code).volume_ml == 494
    undo(deed=stamp.deed, stamp=now())
    assert shelf_bottle(fresh.code).volume_ml == 500.0


@pytest.mark.by_hand
def test_between_two_rungs_makes_a_strength_with_its_spread(
    old: ShelfBottle, fresh: ShelfBottle
) -> None:
    # Between 80 and 90 % of what 1 % should dye: 0.85 %, ± 0.05 as a rectangle.
    tested = record_ladder(
        code=old.code,
        fresh_code=fresh.code,
        low_percent=80,
        high_percent=90,
        stamp=now(),
    )
    assert tested.strength_percent == pytest.approx(0.85)
    assert not tested.is_strength_guess
    assert tested.evidence == "tested"
    line = BottleLine.objects.get(bottle__code=old.code, act="strength tested")
    reading = next(x for x in line.spread if x["name"] == "reading the ladder")
    assert reading["u"] == pytest.approx(0.05 / sqrt(3))
    assert f"of {fresh.code}" in line.note
    assert "what the test’s doses were measured with" in {
        x["name"] for x in line.spread
    }


def _scale(name: str, step_g: float) -> int:
    row = MeasuringTool(name=name, kind=ToolKind.BALANCE, size=2000, readability=step_g)
    row.save()
    return row.pk


def test_skeins_are_weighed_on_the_finer_of_the_usual_scales(
    old: ShelfBottle, fresh: ShelfBottle
) -> None:
    founded()
    set_usual_tools(powder_scale=_scale("Fine", 0.1), yarn_scale=_scale("Coarse", 1.0))
    record_ladder(
        code=old.code,
        fresh_code=fresh.code,
        low_percent=80,
        high_percent=90,
        stamp=now(),
    )
    line = BottleLine.objects.get(bottle__code=old.code, act="strength tested")
    skeins = [abs(x["u"]) for x in line.spread if "skein" in x["name"]]
    assert 0.005 < max(skeins) < 0.05  # of 0.85 %: a 0.1 g step, not one of 1 g


def test_a_settled_bottle_is_not_tested(old: ShelfBottle, fresh: ShelfBottle) -> None:
    look_at(code=old.code, look=Look.SETTLED, stamp=now())
    with pytest.raises(ConflictError, match="would be too pale"):
        strength_test(code=old.code, fresh_code=fresh.code)
