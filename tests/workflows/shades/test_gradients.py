"""A row whose steps look equal, kept as recipes."""

from dataclasses import replace

import pytest

from shadewright.errors import ConflictError, InputError, MissingError
from shadewright.records.models import Recipe
from shadewright.workflows.shades.gradients import (
    GradientWish,
    gradient_now,
    keep_gradient,
)
from shadewright.workflows.stamps import stamp_now
from tests.workflows.shades.two_yarns import TwoYarns, two_yarns

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def deep_to_pale(yarns: TwoYarns) -> GradientWish:
    return GradientWish(base_id=yarns.wool, first=yarns.mix(Sloe=1.2, Gorse=0.3))


def test_from_deep_to_pale_in_steps_that_look_equal() -> None:
    """The first is the mix itself, the last a twentieth of it."""
    yarns = two_yarns()
    row = gradient_now(yarns.now, deep_to_pale(yarns))
    assert [step.place for step in row.steps] == [1, 2, 3, 4, 5]
    assert dict(row.steps[0].doses) == {"Sloe": 1.2, "Gorse": 0.3}
    assert dict(row.steps[-1].doses) == pytest.approx({"Sloe": 0.06, "Gorse": 0.015})
    steps = [step.from_before for step in row.steps if step.from_before is not None]
    assert len(steps) == 4
    assert max(steps) - min(steps) < 0.1


def test_between_two_mixes() -> None:
    yarns = two_yarns()
    wish = replace(deep_to_pale(yarns), last=yarns.mix(Rosehip=1.0), steps=7)
    row = gradient_now(yarns.now, wish)
    assert dict(row.steps[0].doses) == {"Sloe": 1.2, "Gorse": 0.3}
    assert dict(row.steps[-1].doses) == {"Rosehip": 1.0}
    assert {*dict(row.steps[3].doses)} == {"Sloe", "Gorse", "Rosehip"}


def test_a_row_is_kept_as_recipes_once() -> None:
    """Each is named with its step; sent twice, it is written once."""
    yarns = two_yarns()
    row = gradient_now(yarns.now, replace(deep_to_pale(yarns), steps=3))
    stamp = stamp_now(by=None)
    kept = keep_gradient(row, name=" Dusk ", stamp=stamp)
    again = keep_gradient(row, name=" Dusk ", stamp=stamp)
    assert [each.recipe_name for each in kept] == [f"Dusk {n} of 3" for n in (1, 2, 3)]
    assert [each.id for each in again] == [each.id for each in kept]
    depths = [kept[1].text.doses[0].depth_percent, row.steps[1].dyes[0].depth_percent]
    assert depths[0] == depths[1]
    assert "Hollow 4-ply" in kept[0].text.notes


def test_bare_yarn_needs_no_recipe() -> None:
    yarns = two_yarns()
    row = gradient_now(yarns.now, replace(deep_to_pale(yarns), palest_share=0.0))
    kept = keep_gradient(row, name="Dusk", stamp=stamp_now(by=None))
    assert [each.recipe_name for each in kept] == [
        f"Dusk {n} of 5" for n in range(1, 5)
    ]


def test_a_name_that_is_taken_keeps_nothing() -> None:
    yarns = two_yarns()
    yarns.recipe("Dusk 2 of 5", Gorse=0.1)
    row = gradient_now(yarns.now, deep_to_pale(yarns))
    with pytest.raises(ConflictError, match="“Dusk 2 of 5” already"):
        keep_gradient(row, name="Dusk", stamp=stamp_now(by=None))
    assert Recipe.objects.count() == 1


def test_what_is_no_row_is_refused() -> None:
    yarns = two_yarns()
    for steps in (1, 13):
        with pytest.raises(InputError, match="number of steps"):
            gradient_now(yarns.now, replace(deep_to_pale(yarns), steps=steps))
    empty = gradient_now(yarns.now, GradientWish(base_id=yarns.wool))
    assert empty.steps == ()
    with pytest.raises(MissingError, match="first mix"):
        keep_gradient(empty, name="Dusk", stamp=stamp_now(by=None))
    row = gradient_now(yarns.now, deep_to_pale(yarns))
    for name in (" ", "D" * 54):
        with pytest.raises(InputError):
            keep_gradient(row, name=name, stamp=stamp_now(by=None))


def test_on_a_base_without_swatches_it_says_so() -> None:
    yarns = two_yarns()
    row = gradient_now(yarns.now, replace(deep_to_pale(yarns), base_id=yarns.nylon))
    assert row.steps == ()
    assert row.why_not.startswith("No swatch on Moss nylon")
