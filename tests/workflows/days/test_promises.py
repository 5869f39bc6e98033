"""When an order can be ready, against dates worked out on paper.

Usual values: 20 to 25 skeins a dye day, 3.5 to 7 days from one to the next, a night in
the pot, 24 to 48 h on the rack, 2 days to pack: 4 to 5 days after the dye day.
"""

from datetime import timedelta

import pytest

from shadewright.errors import NotFoundError, OutOfRangeError
from shadewright.records.models import Bath, DyeDay
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.closed_days import (
    close_days,
    closed_on,
    closed_to_come,
    open_days_again,
)
from shadewright.workflows.days.order_pages import order_now
from shadewright.workflows.days.pace import coming_dye_day
from shadewright.workflows.days.promises import Promise
from shadewright.workflows.stamps import today
from tests.workflows.days.wanted import on_shelf, ordered, planned
from tests.workflows.pots import ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def promised(number: int) -> Promise:
    found = order_now(number).promise
    assert found is not None
    return found


def days(found: Promise) -> tuple[int, int]:
    return (found.soonest - today()).days, (found.latest - today()).days


def test_a_promise_without_any_dye_day_rests_on_usual_values() -> None:
    line = ordered(ready(), 6)
    found = promised(line.order.number)
    # soonest: 3.5 days to the dye day, up to 4, and 4; latest: 7, 5 and 7 in hand
    assert days(found) == (8, 19)
    assert found.is_guess
    assert any("too few dye days yet to tell" in each for each in found.reasons)


def test_the_next_dye_day_that_is_known_goes_before_a_usual_one() -> None:
    line = ordered(ready(), 6)
    DyeDay.objects.create(day=today() + timedelta(days=2))
    assert days(promised(line.order.number)) == (6, 14)  # 2 + 4, 2 + 5 + 7


def closed(first: int, last: int, why: str = "") -> None:
    close_days(
        first_on=today() + timedelta(days=first),
        last_on=today() + timedelta(days=last),
        why=why,
    )


def test_closed_days_are_passed_over_and_named() -> None:
    line = ordered(ready(), 6)
    closed(4, 5, "Holidays")
    closed(300, 300)
    found = promised(line.order.number)
    # the soonest dye day, in 4 days, is put off to the 6th: 6 + 4; the latest as before
    assert days(found) == (10, 19)
    assert found.reasons[-1].startswith("Closed ")
    assert found.reasons[-1].endswith(": Holidays.")


def test_nobody_is_promised_a_closed_day() -> None:
    pot = ready()
    line = ordered(pot, 3)
    on_shelf(pot, 5)
    closed(0, 1)
    assert days(promised(line.order.number)) == (4, 4)  # packed on days 3 and 4
    assert coming_dye_day() == today() + timedelta(days=2)


def test_days_close_once_and_open_again() -> None:
    close_days(first_on=today(), why="Fair")
    kept = close_days(first_on=today(), why="Wool fair")
    assert [each.why for each in closed_to_come()] == ["Wool fair"]
    assert closed_on(today()) == kept
    assert closed_on(today() + timedelta(days=1)) is None
    open_days_again(kept.id)
    assert closed_to_come() == ()
    with pytest.raises(NotFoundError, match="Perhaps it is open again"):
        open_days_again(kept.id)


@pytest.mark.parametrize(("first", "last"), [(3, 2), (-5, -1), (0, 400), (800, 801)])
def test_closed_days_that_cannot_be_meant_are_refused(first: int, last: int) -> None:
    with pytest.raises(OutOfRangeError, match="The last closed day must be"):
        closed(first, last)


def test_whoever_is_due_sooner_is_dyed_first() -> None:
    pot = ready()
    line = ordered(pot, 6, due_on=today() + timedelta(days=40))
    ordered(pot, 22, due_on=today() + timedelta(days=9))
    # 28 skeins: two dye days; soonest 7 + 4, latest 14 + 5 + 7
    found = promised(line.order.number)
    assert days(found) == (11, 26)
    before = "6 skeins to dye; before them 22 skeins for orders that are due sooner."
    assert before in found.reasons


def test_yarn_on_the_shelf_is_only_packed() -> None:
    pot = ready()
    line = ordered(pot, 3)
    on_shelf(pot, 5)
    found = promised(line.order.number)
    assert days(found) == (2, 2)
    assert not found.is_guess
    assert found.reasons[0] == "3 skeins on the shelf."


def test_yarn_that_has_its_lot_but_hangs_wet_is_not_on_the_shelf_yet() -> None:
    pot = ready()
    line = ordered(pot, 3)
    number = on_shelf(pot, 3)
    tapped(number, BathAct.HUNG, "rack")
    order = order_now(line.order.number)
    assert (order.on_shelf, order.coming, order.is_all_there) == (0, 3, False)
    assert order.lines[0].offers[0].given.is_drying
    assert days(promised(line.order.number)) == (4, 5)
    tapped(number, BathAct.DRY, "rack")
    assert order_now(line.order.number).on_shelf == 3
    assert days(promised(line.order.number)) == (2, 2)


def test_a_planned_bath_gives_the_day() -> None:
    pot = ready()
    line = ordered(pot, 3)
    number = planned(pot, 3, line=line)
    in_three = today() + timedelta(days=3)
    Bath.objects.filter(number=number).update(dyed_on=in_three)
    assert days(promised(line.order.number)) == (7, 8)


def test_the_pace_is_learned_from_dye_days_that_were() -> None:
    pot = ready()
    for weeks, number in enumerate([on_shelf(pot, 8) for _each in range(5)], start=1):
        past = today() - timedelta(days=7 * weeks)
        Bath.objects.filter(number=number).update(dyed_on=past)
    line = ordered(pot, 40 + 8)
    found = promised(line.order.number)
    # 8 still to dye: one dye day of 8, 7 days on; 4 after it, or 9 on, 5, and 9 in hand
    assert days(found) == (11, 23)
    assert not found.is_guess
    assert any("your last 5 dye days" in each for each in found.reasons)


def test_a_colourway_that_cannot_be_planned_says_so_before_all_else() -> None:
    line = ordered(ready(), 3)
    line.recipe.is_retired = True
    line.recipe.save()
    found = promised(line.order.number)
    assert found.is_blocked
    assert found.reasons[0].startswith("Low Tide is retired")
