"""A bottle is weighed, and what is missing is water."""

import pytest

from shadewright.errors import OutOfRangeError
from shadewright.records.models import BottleLine, MeasuringTool
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.bottles import Look, draw, look_at
from shadewright.workflows.ledger_pages import bottle_page
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.undo import undo
from shadewright.workflows.weighing_bottles import (
    last_weighing,
    loss_since,
    weigh_bottle,
)
from tests.workflows.bench import entered, new_dye, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def bottle() -> ShelfBottle:
    return entered(new_dye(), volume_ml=400.0)


def weigh(bottle: ShelfBottle, gross_g: float, **said: int) -> ShelfBottle:
    return weigh_bottle(
        code=bottle.code,
        gross_g=gross_g,
        scale_id=said.get("scale_id"),
        stamp=now(),
    )


@pytest.mark.by_hand
def test_two_weighings_tell_the_water_that_has_gone(bottle: ShelfBottle) -> None:
    # 460 − 440 = 20 g: 20.04 ml of 400 are gone, and 1 % has grown to
    # 400/379.96 = 1.0527 %.
    assert weigh(bottle, 460.0).volume_ml == 400.0
    found = last_weighing(bottle.code)
    assert found is not None
    assert found.gross_g == 460.0
    now_ = weigh(bottle, 440.0)
    assert now_.volume_ml == pytest.approx(379.96, abs=0.01)
    assert now_.strength_percent == pytest.approx(1.0527, abs=1e-4)
    assert bottle_page(bottle.code).dried_ml == pytest.approx(20.04, abs=0.01)


def test_small_losses_add_up_to_one_that_can_be_seen(bottle: ShelfBottle) -> None:
    for gross_g in (460.0, 459.0, 459.0):
        assert weigh(bottle, gross_g).volume_ml == 400.0
    assert weigh(bottle, 457.0).volume_ml == pytest.approx(400 - 3 / 0.998203)


def test_the_scale_s_own_step_counts(bottle: ShelfBottle) -> None:
    fine = MeasuringTool.objects.create(
        name="Fine scale", kind=ToolKind.BALANCE, readability=0.1
    )
    weigh(bottle, 460.0, scale_id=fine.pk)
    assert weigh(bottle, 459.5, scale_id=fine.pk).volume_ml < 400.0
    line = BottleLine.objects.order_by("-id")[0]
    assert {term["name"] for term in line.spread} == {"weighing the bottle"}
    assert abs(line.spread[0]["u"]) == pytest.approx(0.1 / 6**0.5 / 0.9982, rel=1e-4)


def test_what_was_drawn_since_is_no_loss(bottle: ShelfBottle) -> None:
    weigh(bottle, 460.0)
    look_at(code=bottle.code, look=Look.CLEAR, stamp=now())
    assert last_weighing(bottle.code) is not None
    draw(code=bottle.code, volume_ml=50.0, stamp=now())
    assert last_weighing(bottle.code) is None
    assert loss_since(code=bottle.code, gross_g=409.0, scale_id=None) is None
    assert weigh(bottle, 409.0).volume_ml == 350.0


def test_a_heavier_bottle_is_refused(bottle: ShelfBottle) -> None:
    weigh(bottle, 460.0)
    with pytest.raises(OutOfRangeError, match="Something came in"):
        weigh(bottle, 470.0)


def test_a_weighing_is_undone_like_anything_else(bottle: ShelfBottle) -> None:
    stamp = now()
    weigh_bottle(code=bottle.code, gross_g=460.0, scale_id=None, stamp=stamp)
    undo(deed=stamp.deed, stamp=now())
    assert last_weighing(bottle.code) is None
    assert shelf_bottle(bottle.code).volume_ml == 400.0
