"""Orders as they are written down, changed, promised, shared out and closed."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records.models import Base, Order, OrderLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import Grade
from shadewright.workflows.days.demand import to_dye
from shadewright.workflows.days.order_pages import order_now, orders
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
from shadewright.workflows.days.pars import keep_par, pars
from shadewright.workflows.days.shares import share_bath
from shadewright.workflows.days.yields import yield_of, yields_of
from shadewright.workflows.lot_skeins import Sending, send_out
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.days.wanted import on_shelf, ordered, planned, recipe_of
from tests.workflows.pots import Ready, ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def six(pot: Ready, **other: object) -> LineWish:
    said = {"skeins": 6, "skein_g": 100.0} | other
    return LineWish(recipe_id=recipe_of(pot).pk, base_id=pot.base, **said)  # type: ignore[arg-type]


def wish(*lines: LineWish, **other: object) -> OrderWish:
    return OrderWish(for_whom="Wool Week stall", lines=lines, **other)  # type: ignore[arg-type]


def written(*lines: LineWish, **other: object) -> int:
    return write_order(wish=wish(*lines, **other), stamp=stamp_now(by=None))


def test_an_order_sent_twice_is_written_once() -> None:
    pot, stamp = ready(), stamp_now(by=None)
    first = write_order(wish=wish(six(pot)), stamp=stamp)
    assert write_order(wish=wish(six(pot)), stamp=stamp) == first
    assert Order.objects.count() == 1
    assert written(six(pot)) == first + 1


def test_the_skein_is_as_heavy_as_the_base_says() -> None:
    pot = ready()
    Base.objects.filter(pk=pot.base).update(skein_g=115.0)
    number = written(six(pot, skein_g=None))
    assert order_now(number).lines[0].skein_g == 115.0


def test_a_base_without_skein_weight_asks_for_it() -> None:
    pot = ready()
    with pytest.raises(MissingError, match="Fell DK has none written down") as caught:
        written(six(pot), six(pot, skein_g=None))
    assert caught.value.argument == "skein_g_2"


@pytest.mark.parametrize("skeins", [0, 10_001])
def test_an_order_of_no_or_too_many_skeins_is_refused(skeins: int) -> None:
    pot = ready()
    with pytest.raises(OutOfRangeError, match="must be from 1 to 10 000"):
        written(six(pot, skeins=skeins))


def test_an_order_needs_a_name_and_a_colourway_or_words() -> None:
    pot = ready()
    with pytest.raises(MissingError, match="For whom it is is missing"):
        write_order(
            wish=OrderWish(for_whom=" ", lines=(six(pot),)), stamp=stamp_now(by=None)
        )
    with pytest.raises(MissingError, match="The colourway is missing"):
        written()
    number = written(notes="Seven skeins like her grey cat")
    assert order_now(number).lines == ()


def test_an_order_that_is_late_already_can_be_written_but_no_slip_of_the_year() -> None:
    pot = ready()
    number = written(six(pot), due_on=today() - timedelta(days=3))
    assert order_now(number).is_late
    with pytest.raises(OutOfRangeError, match="within a year of today"):
        written(six(pot), due_on=today() - timedelta(days=400))


def test_orders_stand_by_the_day_they_are_wanted() -> None:
    pot = ready()
    some_day = written(six(pot))
    late = written(six(pot), due_on=today() + timedelta(days=20))
    soon = written(six(pot), due_on=today() + timedelta(days=30))
    promise(
        number=soon, promised_on=today() + timedelta(days=2), stamp=stamp_now(by=None)
    )
    assert [each.number for each in orders()] == [soon, late, some_day]
    assert [each.number for each in orders(query="wool tide")] == [soon, late, some_day]
    assert orders(query="moss") == ()


def test_an_order_is_changed_and_a_line_dropped_never_lost() -> None:
    pot = ready()
    number = written(six(pot), six(pot, skeins=2))
    seen = order_now(number).seen
    new = wish(six(pot, is_dropped=True), six(pot, skeins=3, as_said="the moody one"))
    assert change_order(number=number, wish=new, seen=seen, stamp=stamp_now(by=None))
    assert not change_order(
        number=number, wish=new, seen=seen, stamp=stamp_now(by=None)
    )
    now = order_now(number)
    assert [line.skeins for line in now.wanted] == [3]
    assert len(now.lines) == 2
    with pytest.raises(ConflictError, match="A line of the order is missing"):
        change_order(
            number=number, wish=wish(six(pot)), seen=now.seen, stamp=stamp_now(by=None)
        )


def test_two_who_change_an_order_see_it() -> None:
    pot = ready()
    number = written(six(pot))
    seen = order_now(number).seen
    change_order(
        number=number,
        wish=wish(six(pot, skeins=5)),
        seen=seen,
        stamp=stamp_now(by=None),
    )
    with pytest.raises(ConflictError, match="Somebody changed this order"):
        change_order(
            number=number,
            wish=wish(six(pot, skeins=9)),
            seen=seen,
            stamp=stamp_now(by=None),
        )
    assert order_now(number).skeins == 5


def test_a_promise_is_of_today_or_later() -> None:
    pot = ready()
    number = written(six(pot))
    with pytest.raises(OutOfRangeError, match="from today to a year from now"):
        promise(
            number=number,
            promised_on=today() - timedelta(days=1),
            stamp=stamp_now(by=None),
        )
    promise(number=number, promised_on=today(), stamp=stamp_now(by=None))
    assert order_now(number).wanted_by == today()
    promise(number=number, promised_on=None, stamp=stamp_now(by=None))
    assert order_now(number).wanted_by is None


def test_a_lot_is_taken_for_an_order_and_let_go_again() -> None:
    pot = ready()
    number = written(six(pot))
    lot = on_shelf(pot, 4)
    (line,) = order_now(number).lines
    assert [(each.given.number, each.skeins) for each in line.offers] == [(lot, 4)]
    for _twice in range(2):
        share_bath(line_id=line.id, number=lot, skeins=4)
    (line,) = order_now(number).lines
    assert (line.on_shelf, line.to_dye, line.offers) == (4, 2, ())
    with pytest.raises(OutOfRangeError, match="at most 4"):
        share_bath(line_id=line.id, number=lot, skeins=5)
    share_bath(line_id=line.id, number=lot, skeins=0)
    assert order_now(number).lines[0].shares == ()


def test_what_cannot_serve_an_order_says_why() -> None:
    pot = ready()
    number = written(six(pot))
    seconds, over = on_shelf(pot, 4, grade=Grade.SECOND), planned(pot, 2)
    tapped(over, BathAct.GIVEN_UP, "")
    line = order_now(number).lines[0]
    with pytest.raises(ConflictError, match="is graded “Second”, not first"):
        share_bath(line_id=line.id, number=seconds, skeins=1)
    with pytest.raises(ConflictError, match="It was given up"):
        share_bath(line_id=line.id, number=over, skeins=1)


def test_what_is_sent_leaves_the_lot_and_comes_back_with_the_order() -> None:
    pot = ready()
    number = written(six(pot))
    lot = on_shelf(pot, 8)
    share_bath(line_id=order_now(number).lines[0].id, number=lot, skeins=6)
    assert order_now(number).is_all_there
    stamp = stamp_now(by=None, deed=uuid4())
    for _twice in range(2):
        close_order(number=number, how=Closing.SENT, stamp=stamp)
    assert order_now(number).why_closed == "Sent"
    assert yield_of(lot).free == 2
    open_order_again(number=number, stamp=stamp_now(by=None))
    assert (yield_of(lot).skeins, yield_of(lot).free) == (8, 2)


def test_what_an_order_that_is_called_off_was_to_have_is_free() -> None:
    pot = ready()
    number = written(six(pot))
    lot = on_shelf(pot, 8)
    share_bath(line_id=order_now(number).lines[0].id, number=lot, skeins=6)
    close_order(number=number, how=Closing.CALLED_OFF, stamp=stamp_now(by=None))
    assert yield_of(lot).free == 8
    assert [each.number for each in orders(is_closed=True)] == [number]


def test_a_par_level_counts_what_is_free_and_goes_with_nothing() -> None:
    pot = ready()
    recipe_id = recipe_of(pot).pk
    for skeins in (5, 9):
        keep_par(recipe_id=recipe_id, base_id=pot.base, skeins=skeins, skein_g=100.0)
    on_shelf(pot, 2)
    planned(pot, 3)
    (par,) = pars()
    assert (par.skeins, par.on_shelf, par.coming, par.short) == (9, 2, 3, 4)
    assert to_dye()[0].for_shelf == 4
    keep_par(recipe_id=recipe_id, base_id=pot.base, skeins=0)
    assert pars() == ()


def test_the_shelf_is_as_short_as_there_is_to_dye_for_it() -> None:
    """An order that nobody took skeins for yet would have them before the shelf."""
    pot = ready()
    keep_par(recipe_id=recipe_of(pot).pk, base_id=pot.base, skeins=6, skein_g=100.0)
    ordered(pot, 5)
    on_shelf(pot, 4)
    planned(pot, 2)
    (par,) = pars()
    assert (par.on_shelf, par.coming, par.short) == (0, 1, 5)
    assert to_dye()[0].for_shelf == par.short


def test_an_order_takes_no_more_than_it_asked_for() -> None:
    pot = ready()
    number = written(six(pot))
    lots = [on_shelf(pot, 4), on_shelf(pot, 4)]
    for lot in lots:
        share_bath(line_id=order_now(number).lines[0].id, number=lot, skeins=4)
    close_order(number=number, how=Closing.SENT, stamp=stamp_now(by=None))
    assert [yield_of(lot).skeins for lot in lots] == [0, 2]


def test_skeins_that_went_out_for_a_line_are_not_dyed_again() -> None:
    pot = ready()
    order_now(written(six(pot)))
    lot = on_shelf(pot, 8)
    line = OrderLine.objects.get()
    share_bath(line_id=line.pk, number=lot, skeins=6)
    said = Sending(skeins=4, to_whom="Bo", line_id=line.pk)
    send_out(number=lot, said=said, stamp=stamp_now(by=None))
    assert yield_of(lot).skeins == 4
    found = yields_of(recipe_ids={line.recipe_id}, base_ids={line.base_id})
    assert {each.number: each.free for each in found}[lot] == 2
    assert to_dye() == ()
    order = order_now(line.order.number)
    assert (order.gone, order.is_all_there) == (4, True)
    send_out(number=lot, said=replace(said, skeins=2), stamp=stamp_now(by=None))
    order = order_now(line.order.number)
    assert (order.gone, order.is_all_there, order.to_dye) == (6, True, 0)
