"""What to dye, from orders, the shelf, baths and lots as they are kept."""

from datetime import timedelta

import pytest

from shadewright.records.models import Bath, Recipe
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import Grade
from shadewright.workflows.days.demand import to_dye
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.days.wanted import on_shelf, ordered, par_of, planned, share
from tests.workflows.pots import ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def test_nothing_is_to_be_dyed_where_nobody_wants_anything() -> None:
    ready()
    assert to_dye() == ()


def test_an_order_and_the_shelf_are_dyed_for_together() -> None:
    pot = ready()
    line = ordered(pot, 6, due_on=today() + timedelta(days=9))
    par_of(pot, 4)
    (found,) = to_dye()
    assert (found.recipe_name, found.base_name) == ("Low Tide", "Fell DK")
    assert (found.skeins, found.skein_g) == (11, 100.0)
    assert found.for_lines == ((line.pk, 6),)
    assert found.due_on == today() + timedelta(days=9)
    assert found.why == (
        f"6 for order {line.order.number}, 4 for the shelf, "
        "1 besides, as some turn out seconds"
    )


def test_what_lies_on_the_shelf_and_what_is_planned_is_not_dyed_again() -> None:
    pot = ready()
    line = ordered(pot, 9)
    on_shelf(pot, 3)
    planned(pot, 2)
    planned(pot, 3, line=line)
    (found,) = to_dye()
    assert found.for_lines == ((line.pk, 1),)


@pytest.mark.parametrize("grade", [Grade.SECOND, Grade.ONE_OFF, Grade.SWATCH])
def test_only_first_grade_serves_an_order(grade: Grade) -> None:
    pot = ready()
    line = ordered(pot, 5)
    on_shelf(pot, 5, grade=grade, line=line)
    (found,) = to_dye()
    assert found.for_lines == ((line.pk, 5),)


def test_a_bath_given_up_is_for_nobody() -> None:
    pot = ready()
    line = ordered(pot, 5)
    number = planned(pot, 5, line=line)
    assert to_dye() == ()
    tapped(number, BathAct.GIVEN_UP, "")
    (found,) = to_dye()
    assert found.for_lines == ((line.pk, 5),)


def test_a_bath_that_nobody_began_on_its_day_is_for_nobody() -> None:
    pot = ready()
    line = ordered(pot, 5)
    number = planned(pot, 5, line=line)
    yesterday = today() - timedelta(days=1)
    Bath.objects.filter(number=number).update(dyed_on=yesterday)
    (found,) = to_dye()
    assert found.for_lines == ((line.pk, 5),)


def test_a_lot_that_fell_short_serves_the_most_urgent_line_first() -> None:
    pot = ready()
    late = ordered(pot, 3, due_on=today() + timedelta(days=30))
    soon = ordered(pot, 3, due_on=today() - timedelta(days=2))
    number = planned(pot, 6, line=late)
    Bath.objects.filter(number=number).update(skeins=4)
    share(number, soon, 3)
    (found,) = to_dye()
    assert found.for_lines == ((late.pk, 2),)


def test_a_line_served_by_several_baths_wants_only_the_rest() -> None:
    pot = ready()
    line = ordered(pot, 10)
    planned(pot, 4, line=line)
    on_shelf(pot, 4, line=line, counted=3)
    (found,) = to_dye()
    assert found.for_lines == ((line.pk, 3),)


def test_minis_do_not_serve_who_wants_whole_skeins() -> None:
    pot = ready()
    ordered(pot, 2, skein_g=20.0)
    on_shelf(pot, 5)
    (found,) = to_dye()
    assert (found.skeins, found.skein_g) == (2, 20.0)


def test_closed_orders_and_dropped_lines_want_nothing() -> None:
    pot = ready()
    closed, dropped = ordered(pot, 5), ordered(pot, 5)
    closed.order.is_closed = True
    closed.order.save()
    dropped.is_dropped = True
    dropped.save()
    assert to_dye() == ()


def test_what_a_closed_order_was_to_have_is_free_again() -> None:
    pot = ready()
    line = ordered(pot, 5)
    planned(pot, 5, line=line)
    line.is_dropped = True
    line.save()
    ordered(pot, 5)
    assert to_dye() == ()


def test_incomplete_and_retired_recipes_say_what_stands_in_the_way() -> None:
    pot = ready()
    old = RecipeText(doses=(DoseLine(as_written="2 tsp of my blue"),))
    written = write_recipe(name="Old Blue", text=old, stamp=stamp_now(by=None))
    incomplete, retired = ordered(pot, 1), ordered(pot, 2)
    incomplete.recipe = Recipe.objects.get(versions=written.id)
    incomplete.save()
    retired.recipe.is_retired = True
    retired.recipe.save()
    troubles = {each.recipe_name: each.trouble for each in to_dye()}
    assert troubles["Old Blue"].startswith("Old Blue is incomplete (")
    assert troubles["Low Tide"].startswith("Low Tide is retired")
