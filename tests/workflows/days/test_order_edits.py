"""An order's ledger: who changed what, from what to what, and back."""

from dataclasses import replace
from datetime import timedelta

import pytest
from django.db import connection

from shadewright.errors import ConflictError
from shadewright.records.models import OrderEdit
from shadewright.records.writes import keep_line
from shadewright.workflows.days.order_edits import EditNow
from shadewright.workflows.days.order_pages import order_now
from shadewright.workflows.days.orders import (
    Closing,
    LineWish,
    OrderWish,
    change_order,
    close_order,
    open_order_again,
    promise,
    write_order,
)
from shadewright.workflows.people import add_person
from shadewright.workflows.recipes import version
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.undo import undo
from tests.workflows.asked import asked_by
from tests.workflows.bench import founded
from tests.workflows.pots import ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def wish() -> OrderWish:
    pot = ready()
    recipe = version(pot.version).recipe_id
    line = LineWish(recipe_id=recipe, base_id=pot.base, skeins=6, skein_g=100.0)
    return OrderWish(for_whom="The wool shop", lines=(line,))


def written(wish: OrderWish) -> int:
    return write_order(wish=wish, stamp=stamp_now(by=None))


def changed(number: int, wish: OrderWish, *, by: int | None = None) -> EditNow:
    seen = order_now(number).seen
    assert change_order(number=number, wish=wish, seen=seen, stamp=stamp_now(by=by))
    return order_now(number).edits[0]


def taken_back(edit: EditNow) -> None:
    undo(deed=edit.deed, stamp=stamp_now(by=None))


def words(edit: EditNow) -> list[tuple[str, object, object]]:
    return [(each.what, each.was, each.now) for each in edit.changes]


def test_an_edit_says_who_when_from_what_and_to_what(wish: OrderWish) -> None:
    number = written(wish)
    assert order_now(number).edits == ()
    person = add_person("Ines")
    soon = today() + timedelta(days=9)
    line = replace(wish.lines[0], skeins=4)
    edit = changed(number, replace(wish, lines=(line,), due_on=soon), by=person.id)
    assert edit.by == "Ines"
    assert words(edit) == [
        ("Wanted by", None, soon),
        (
            "Line 1",
            "6 × Low Tide on Fell DK, 100\xa0g",
            "4 × Low Tide on Fell DK, 100\xa0g",
        ),
    ]


def test_edits_are_taken_back_the_newest_first(wish: OrderWish) -> None:
    number = written(wish)
    line = replace(wish.lines[0], as_said="the moody one")
    two = replace(wish, lines=(*wish.lines, line))
    first = changed(number, two)
    second = changed(number, replace(two, for_whom="The fair"))
    with pytest.raises(ConflictError, match="Something later rests on this"):
        taken_back(first)
    assert order_now(number).for_whom == "The fair"
    taken_back(second)
    assert order_now(number).for_whom == "The wool shop"
    taken_back(first)
    now = order_now(number)
    assert [each.skeins for each in now.wanted] == [6]
    assert len(now.lines) == 2  # a line is never lost
    assert [each.is_counter for each in now.edits] == [True, True, False, False]
    assert not any(each.may_undo for each in now.edits)
    with pytest.raises(ConflictError, match="taken back already"):
        taken_back(first)


def test_a_line_of_the_ledger_changes_nothing_by_itself(wish: OrderWish) -> None:
    number = written(wish)
    changed(number, replace(wish, for_whom="The fair"))
    keep_line(OrderEdit.objects.get().counter(), stamp_now(by=None))
    assert order_now(number).for_whom == "The fair"


def test_an_edit_is_taken_back_under_the_lock_that_every_change_takes(
    wish: OrderWish,
) -> None:
    founded()
    number = written(wish)
    edit = changed(number, replace(wish, for_whom="The fair"))
    tables = ('FROM "records_studio"', 'FROM "records_order"')
    asked = asked_by(lambda: taken_back(edit))
    first = next(sql for sql in asked if any(table in sql for table in tables))
    assert tables[0] in first
    assert ("FOR UPDATE" in first) is connection.features.has_select_for_update


def test_a_promise_is_an_edit_too_and_the_same_one_is_none(wish: OrderWish) -> None:
    number = written(wish)
    told = today() + timedelta(days=5)
    for is_new in (True, False):
        stamp = stamp_now(by=None)
        assert promise(number=number, promised_on=told, stamp=stamp) is is_new
    (edit,) = order_now(number).edits
    assert words(edit) == [("Promised for", None, told)]
    taken_back(edit)
    assert order_now(number).promised_on is None


def test_how_it_ended_stands_in_the_ledger_and_is_changed_on_its_page(
    wish: OrderWish,
) -> None:
    number = written(wish)
    stamp = stamp_now(by=None)
    close_order(number=number, how=Closing.CALLED_OFF, stamp=stamp)
    (edit,) = order_now(number).edits
    assert words(edit) == [("How it ended", None, "Called off")]
    assert not edit.may_undo
    with pytest.raises(ConflictError):
        taken_back(edit)
    assert order_now(number).is_closed
    open_order_again(number=number, stamp=stamp_now(by=None))
    assert words(order_now(number).edits[0]) == [("How it ended", "Called off", None)]
