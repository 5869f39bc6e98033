"""Scales: tared and not, checked and not; and why a spoon is none."""

from math import sqrt

import pytest

from shadewright.core.quantities import NO_BREAK, Balance, measuring_tool
from shadewright.core.uncertainty import Shape, budget, product, quotient, scaled
from shadewright.core.uncertainty.tools import (
    mass_read,
    require_scale_for_powder,
    unchecked_balance,
    volume_read,
)
from shadewright.errors import OutOfRangeError

KITCHEN = Balance(step_g=0.1, error_g=None)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("step_g", "once_g", "tared_g"),
    [(1.0, 0.289, 0.408), (0.1, 0.0289, 0.0408), (0.01, 0.00289, 0.00408)],
)
def test_readings_round(step_g: float, once_g: float, tared_g: float) -> None:
    # d/√12 for one reading, d/√6 for two
    scale = Balance(step_g=step_g, error_g=None)
    once = mass_read(scale, 10.0, role="yarn", key="tool", is_tared=False)
    tared = mass_read(scale, 10.0, role="yarn", key="tool")
    assert once.u == pytest.approx(once_g, rel=2e-3)
    assert tared.u == pytest.approx(tared_g, rel=2e-3)


@pytest.mark.by_hand
def test_the_smallest_mass_for_one_per_cent() -> None:
    # 2 · 0.1/√6 / 0.01 = 8.165 g
    assert 2 * mass_read(KITCHEN, 8.165, role="powder", key="tool").u_rel == (
        pytest.approx(0.01, rel=1e-4)
    )


@pytest.mark.by_hand
def test_a_scales_own_error_counts_once_a_net_mass() -> None:
    # 0.1²/6 + 0.2²/3 = 0.001667 + 0.013333 = 0.015
    scale = Balance(step_g=0.1, error_g=0.2)
    read = mass_read(scale, 1.0, role="powder", key="tool 3")
    assert read.u == pytest.approx(sqrt(0.015))
    assert [(t.name, t.source, t.shape) for t in read.terms] == [
        ("reading the scale, powder", "tool 3 powder reading", Shape.TRIANGULAR),
        ("the scale itself, powder", "tool 3 powder", Shape.RECTANGULAR),
    ]


@pytest.mark.by_hand
def test_one_gram_on_a_kitchen_scale_is_a_poor_gram() -> None:
    # by its display alone 0.0408 g, 4 %; unchecked up to 0.2 g, 20 %
    assert mass_read(KITCHEN, 1.0, role="powder", key="k").u_rel == (
        pytest.approx(0.0408, abs=5e-5)
    )
    assert unchecked_balance(step_g=0.1) == Balance(step_g=0.1, error_g=0.2)


def test_two_roles_of_one_scale_are_two_errors() -> None:
    scale = unchecked_balance(step_g=1.0)
    yarn = mass_read(scale, 100.0, role="yarn", key="tool 3")
    powder = mass_read(scale, 10.0, role="powder", key="tool 3")
    sources = [term.source for term in (*yarn.terms, *powder.terms)]
    assert len(set(sources)) == 4


@pytest.mark.by_hand
def test_the_worked_dose() -> None:
    """10.00 g to a litre; 50.0 ml of it on 100 g: the pour decides."""
    powder = mass_read(
        Balance(step_g=0.01, error_g=None), 10.0, role="powder", key="tool 1"
    )
    litre = measuring_tool("cylinder 1000ml B", name="Vessel")
    stock = scaled(
        quotient(powder, volume_read(litre, 1000.0, role="stock", key="tool 2")), by=100
    )
    # √((0.01/√6/10)² + (10/√3/1000)²) = √(0.0408² + 0.5774²) % = 0.5788 %
    assert stock.u_rel == pytest.approx(0.005788, abs=5e-7)
    hundred = measuring_tool("cylinder 100ml B", name="Measure")
    pour = volume_read(hundred, 50.0, role="Gorse", key="tool 3")
    yarn = mass_read(
        Balance(step_g=1.0, error_g=None), 100.0, role="yarn", key="tool 4"
    )
    depth = quotient(product(stock, pour), yarn)
    # √(0.5788² + (1/√3/50)² + (1/√6/100)²) = √(0.335 + 1.3333 + 0.1667) % = 1.354 %
    assert depth.u_rel == pytest.approx(0.01354, abs=1e-5)
    assert budget(depth)[0].name == f"mark of the 100{NO_BREAK}ml cylinder"


@pytest.mark.parametrize("mass_g", [-0.1, float("nan"), 2e6])
def test_what_is_no_mass_is_refused(mass_g: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        mass_read(KITCHEN, mass_g, role="yarn", key="tool")
    assert refused.value.argument == "mass_g"


def test_nothing_weighed_is_nothing_for_sure() -> None:
    assert mass_read(KITCHEN, 0.0, role="powder", key="tool").terms == ()


@pytest.mark.parametrize(
    ("kind", "said"), [("spoon", "a spoon"), ("bottle-mark", "a mark on a bottle")]
)
def test_powder_is_weighed_and_the_reason_is_said(kind: str, said: str) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        require_scale_for_powder(kind, argument="tool")
    assert f"must be a scale; got {said}." in str(refused.value)
    assert "different weight of each dye" in str(refused.value)
    assert refused.value.argument == "tool"
