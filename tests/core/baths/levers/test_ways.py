"""A dose, and whether it can be measured in a way."""

from dataclasses import replace
from math import sqrt

import pytest

from shadewright.core.baths.levers.ways import (
    Way,
    can_be_done,
    dose_g,
    dose_ml,
    reach_rel,
    way_depth,
)
from shadewright.core.uncertainty import budget
from tests.core.baths.levers.studio import (
    CYLINDER,
    KITCHEN,
    SMALL,
    STRONG,
    SYRINGE,
    WEAK,
    wanted,
    ware,
)


@pytest.mark.by_hand
def test_a_pour_from_a_syringe() -> None:
    # 0.02 % of 100 g is 0.02 g: 2 ml of 1 %; below half of the syringe it may be off
    # by 0.3 + 0.02 = 0.32 ml, 16 %; 0.95 of that is 15.2 %; the bottle adds nothing
    way = Way(stock=STRONG, device=SYRINGE)
    assert dose_ml(wanted=wanted(), stock=STRONG) == 2.0
    depth = way_depth(wanted=wanted(), way=way)
    assert depth.value == pytest.approx(0.02)
    assert depth.u_rel == pytest.approx(sqrt(0.16**2 + 0.01**2) / sqrt(3))
    assert reach_rel(depth) == pytest.approx(0.152, abs=1e-3)
    name = budget(depth)[0].name.replace("\u00a0", " ")
    assert name == "each pour of the 20 ml syringe"


@pytest.mark.by_hand
def test_a_dose_by_weight_with_the_yarn() -> None:
    # 60 ml of 1 %: 60 × 0.99821 + 0.6 = 60.49 g; u of the scale √(0.1²/6 + 0.2²/3);
    # the room of the dye 0.01/1.00821/√3; yarn √(1/6 + 4/3)/100
    dose = wanted(depth=0.6, yarn_scale=KITCHEN)
    assert dose_g(wanted=dose, stock=STRONG) == pytest.approx(60.493, abs=1e-3)
    depth = way_depth(wanted=dose, way=Way(stock=STRONG, device=SMALL))
    squares = [
        (0.01 / 6 + 0.04 / 3) / 60.493**2,
        (0.01 / 1.00821) ** 2 / 3,
        1.5 / 100**2,
        0.01**2 / 3,
    ]
    assert depth.u_rel == pytest.approx(sqrt(sum(squares)), rel=1e-4)


@pytest.mark.parametrize(
    ("way", "depth", "can"),
    [
        (Way(stock=STRONG, device=SYRINGE), 0.8, True),  # 80 ml: four fills
        (Way(stock=STRONG, device=SYRINGE), 0.81, False),
        (Way(stock=STRONG, device=CYLINDER), 4.0, True),  # 400 ml: all of it
        (Way(stock=STRONG, device=CYLINDER), 4.01, False),
        (Way(stock=WEAK, device=CYLINDER), 0.4, True),
        (Way(stock=replace(WEAK, usable_ml=1e4), device=CYLINDER), 0.401, False),
        (
            Way(stock=replace(WEAK, usable_ml=1e4), device=ware("jug 1000ml")),
            0.75,
            True,
        ),
        (
            Way(stock=replace(WEAK, usable_ml=1e4), device=ware("jug 1000ml")),
            0.76,
            False,
        ),
        (Way(stock=STRONG, device=ware("flask 100ml")), 1.0, False),
        (Way(stock=STRONG, device=SMALL), 0.005, True),  # 0.504 g: five steps
        (Way(stock=STRONG, device=SMALL), 0.0049, False),
        (Way(stock=STRONG, device=replace(SMALL, most_g=200.0)), 1.9, True),
        (Way(stock=STRONG, device=replace(SMALL, most_g=200.0)), 2.0, False),
    ],
)
def test_what_can_be_done(way: Way, depth: float, can: bool) -> None:  # ruff: ignore[boolean-type-hint-positional-argument]
    assert can_be_done(wanted=wanted(depth=depth), way=way) is can
