"""Lots that may share a sweater, and where orders come from."""

import pytest

from shadewright.errors import ConflictError
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.days.order_pages import order_now
from shadewright.workflows.days.shares import share_bath
from shadewright.workflows.judging.setting_aside import set_aside
from shadewright.workflows.judging.sharing import recipes_shared, sharing
from shadewright.workflows.undo import undo
from tests.workflows.bench import founded, now
from tests.workflows.days.wanted import ordered
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


def test_an_order_is_set_aside_and_put_back(db: None) -> None:
    del db
    founded()
    pot = ready(bottle_ml=1000.0)
    lots = [lot_of(pot, skeins=4), lot_of(pot, pot.another(), skeins=6)]
    for number in lots:
        check(number, "50, 0, 0\n50, 0, 0")
    (what,) = recipes_shared()
    first, second = (ordered(pot, skeins).pk for skeins in (5, 4))

    def orders() -> list[tuple[int, tuple[tuple[str, int], ...]]]:
        found = sharing(recipe_id=what.recipe_id, base_id=what.base_id)
        return [(each.open, each.aside) for each in found.orders]

    asked = set_aside(first, stamp=now())
    assert (asked.parts, asked.is_mixed) == (((lots[1], 5),), False)
    assert orders() == [(0, ((lots[1], 5),)), (4, ())]
    free = sharing(recipe_id=what.recipe_id, base_id=what.base_id)
    assert [(x.left, x.aside) for x in free.groups[0].lots] == [(4, 0), (6, 5)]
    with pytest.raises(ConflictError, match="has all of its skeins"):
        set_aside(first, stamp=now())
    later = now()
    assert set_aside(second, stamp=later).parts == ((lots[0], 4),)
    third = ordered(pot, 3).pk
    with pytest.raises(ConflictError, match="holds 3 free skeins"):
        set_aside(third, stamp=now())
    undo(deed=later.deed, stamp=now())
    assert orders()[1] == (4, ())
    share_bath(line_id=second, number=lots[0], skeins=1)
    later = now()
    assert set_aside(second, stamp=later).parts == ((lots[0], 3),)
    assert orders()[1] == (0, ((lots[0], 4),))
    undo(deed=later.deed, stamp=now())
    assert orders()[1] == (3, ((lots[0], 1),))


def test_what_is_held_otherwise_by_now_is_not_put_back(db: None) -> None:
    del db
    founded()
    pot = ready(bottle_ml=1000.0)
    lot = lot_of(pot, skeins=6)
    check(lot, "50, 0, 0\n50, 0, 0")
    line, stamp = ordered(pot, 5), now()
    set_aside(line.pk, stamp=stamp)
    (edit,) = order_now(line.order.number).edits
    assert [(x.what, x.was, x.now) for x in edit.changes] == [
        ("Set aside", "", f"5 of {lot}")
    ]
    share_bath(line_id=line.pk, number=lot, skeins=2)
    with pytest.raises(ConflictError, match="Something later rests on this"):
        undo(deed=stamp.deed, stamp=now())
    assert [share.skeins for share in line.baths.all()] == [2]
    share_bath(line_id=line.pk, number=lot, skeins=5)
    undo(deed=stamp.deed, stamp=now())
    assert not line.baths.exists()
    with pytest.raises(ConflictError, match="taken back already"):
        undo(deed=stamp.deed, stamp=now())
