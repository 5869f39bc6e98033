"""Lots that may share a sweater, and where orders come from."""

import pytest

from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.judging.sharing import recipes_shared, sharing
from tests.workflows.bench import founded
from tests.workflows.judging.checked import check, lot_of
from tests.workflows.pots import ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def test_lots_share_and_orders_come_whole(db: None) -> None:
    del db
    founded()
    pot = ready(bottle_ml=1000.0)
    lots = [lot_of(pot)]
    lots += [lot_of(pot, pot.another(), skeins=count) for count in (6, 3, 2)]
    for number, light in zip(lots, (50.0, 50.7, 51.4), strict=False):
        check(number, f"{light}, 0, 0\n{light}, 0, 0")
    check(lots[3], "#777777", read_by=ReadBy.PHOTO)
    (what,) = recipes_shared()
    found = sharing(recipe_id=what.recipe_id, base_id=what.base_id, wanted=9)
    groups = [[each.number for each in group.lots] for group in found.groups]
    assert groups == [[lots[0], lots[1]], [lots[1], lots[2]]]
    assert [each.number for each in found.unsure] == [lots[3]]
    assert found.groups[0].left == 10
    (asked,) = found.orders
    assert asked.is_mixed
    assert asked.parts == ((lots[1], 6), (lots[2], 3))
    none = sharing(recipe_id=what.recipe_id, base_id=what.base_id, wanted=11)
    assert none.orders[0].parts == ()
