"""A settled bottle gives nothing until it was re-warmed and looked at."""

from collections.abc import Callable

import pytest

from shadewright.errors import ConflictError
from shadewright.workflows.bottles import Look, draw, look_at
from shadewright.workflows.filling import Particulars
from shadewright.workflows.mending import add_stock, dilute, merge
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from tests.workflows.bench import entered, new_dye, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def dye() -> int:
    return new_dye()


@pytest.fixture
def settled(dye: int) -> ShelfBottle:
    bottle = entered(dye, strength_percent=2.0)
    return look_at(code=bottle.code, look=Look.SETTLED, stamp=now())


TAKING: dict[str, Callable[[str, str], ShelfBottle]] = {
    "drawn": lambda code, _: draw(code=code, volume_ml=10.0, stamp=now()),
    "poured over": lambda code, other: add_stock(
        code=other, from_code=code, volume_ml=10.0, stamp=now()
    ),
    "merged": lambda code, other: merge(code=other, from_codes=[code], stamp=now()),
    "thinned": lambda code, _: dilute(
        code=code, want_percent=0.5, volume_ml=100.0, stamp=now(), about=Particulars()
    ),
}


@pytest.mark.parametrize("taken", TAKING)
def test_nothing_is_taken_from_it(taken: str, dye: int, settled: ShelfBottle) -> None:
    other = entered(dye).code
    with pytest.raises(ConflictError, match="re-warm it, stir, cool, and look"):
        TAKING[taken](settled.code, other)
    assert shelf_bottle(settled.code).volume_ml == settled.volume_ml


def test_warm_alone_is_not_enough_and_a_look_alone_neither(
    settled: ShelfBottle,
) -> None:
    with pytest.raises(ConflictError, match="not re-warmed since"):
        look_at(code=settled.code, look=Look.CLEAR, stamp=now())
    look_at(code=settled.code, look=Look.REWARMED, stamp=now())
    with pytest.raises(ConflictError, match="First look at it"):
        draw(code=settled.code, volume_ml=10.0, stamp=now())
    look_at(code=settled.code, look=Look.CLEAR, stamp=now())
    left = draw(code=settled.code, volume_ml=10.0, stamp=now())
    assert left.volume_ml == settled.volume_ml - 10.0


def test_a_draw_that_was_written_stays_written(dye: int) -> None:
    bottle, stamp = entered(dye), now()
    draw(code=bottle.code, volume_ml=10.0, stamp=stamp)
    look_at(code=bottle.code, look=Look.SETTLED, stamp=now())
    again = draw(code=bottle.code, volume_ml=10.0, stamp=stamp)
    assert again.volume_ml == bottle.volume_ml - 10.0
