"""The stocks that a set of swatches is drawn from."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as some

from shadewright.core.baths import Candidate, dye_mass_g
from shadewright.core.baths.new_stocks import Bench, NewStock
from shadewright.core.baths.small_doses import (
    SmallDoses,
    least_weighed_ml,
    small_doses,
)
from shadewright.errors import OutOfRangeError

G4R = Candidate(
    code="G4R", strength_percent=1.0, usable_ml=400, age_days=4, is_good=True
)
JAR_ML = 500.0


def drawn(*dyes_g: float, bottles: tuple[Candidate, ...] = (G4R,)) -> SmallDoses:
    return small_doses(dyes_g=dyes_g, liquor_ml=JAR_ML, bottles=bottles)


def test_bottles_that_suit_come_before_anything_new() -> None:
    """10 g at 4, 2, 1 and 0.5 %: 40, 20, 10 and 5 ml of 1 %."""
    depths = (4.0, 2.0, 1.0, 0.5)
    dyes_g = [dye_mass_g(fibre_mass_g=10.0, depth_percent=d) for d in depths]
    found = drawn(*dyes_g)
    assert found.first == ()
    assert [each.volume_ml for each in found.drawn] == pytest.approx([40, 20, 10, 5])
    assert {each.code for each in found.drawn} == {"G4R"}


def test_a_weak_stock_is_thinned_from_the_bottle() -> None:
    """0.01 g from 0.1 % are 10 ml; 0.1 g are 100 ml; with a tenth to spare 121 ml."""
    found = drawn(0.1, 0.01)
    assert found.first == (
        NewStock(
            strength_percent=0.1,
            volume_ml=250.0,
            from_code="G4R",
            from_percent=1.0,
            taken_ml=25.0,
        ),
    )


def test_two_bottles_at_hand_beat_one_new_stock() -> None:
    weak = replace(G4R, code="K9W", strength_percent=0.1)
    found = drawn(0.1, 0.01, bottles=(G4R, weak))
    assert found.first == ()
    assert {each.code for each in found.drawn} <= {"G4R", "K9W"}
    assert all(each.is_suiting for each in found.drawn)


def test_a_bottle_gives_no_more_than_it_holds() -> None:
    low = replace(G4R, usable_ml=30.0)
    found = drawn(0.25, 0.25, bottles=(low, replace(G4R, code="K9W", usable_ml=30.0)))
    assert sorted(each.code for each in found.drawn) == ["G4R", "K9W"]


def test_a_bottle_that_may_not_be_used_is_not() -> None:
    found = drawn(0.1, bottles=(replace(G4R, is_good=False),))
    assert not found.drawn[0].code
    assert found.first[0].powder_g == pytest.approx(2.0)


def test_of_equals_the_first_to_expire_is_drawn() -> None:
    old = replace(G4R, code="K9W", age_days=40)
    assert drawn(0.1, bottles=(G4R, old)).drawn[0].code == "K9W"


def test_powder_too_little_to_weigh_is_thinned_from_a_stock_made_first() -> None:
    """0.1 g of powder is ten steps of a scale of 0.01 g; 1 g is a hundred."""
    bench = Bench(least_powder_g=0.5)
    found = small_doses(dyes_g=[0.005], liquor_ml=20.0, bottles=(), bench=bench)
    assert [(x.strength_percent, x.volume_ml) for x in found.first] == [
        (1.0, 100.0),
        (0.1, 100.0),
    ]
    assert [x.powder_g for x in found.first] == pytest.approx([1.0, 0.0])
    assert found.first[1].from_percent == 1.0
    assert found.first[1].taken_ml == pytest.approx(10.0)


def test_what_is_thinned_can_be_measured() -> None:
    """100 ml of 0.01 % would take 1 ml of 1 %; 500 ml take 5 ml."""
    found = drawn(0.0005)
    assert [(x.volume_ml, x.taken_ml) for x in found.first] == [(500.0, 5.0)]


def test_a_dose_that_suits_nothing_says_so() -> None:
    """3 g of dye are 150 ml of 2 %; the jar has room for 125 ml."""
    (dose,) = drawn(3.0).drawn
    assert not dose.is_suiting
    assert drawn(2.5).drawn[0].is_suiting


def test_by_weight_the_scale_says_what_is_too_little() -> None:
    """Fifty steps of 0.01 g are 0.5 g: 0.01 g of dye in 1 ml of 1 % can be weighed."""
    bench = Bench(least_ml=least_weighed_ml(step_g=0.01))
    found = small_doses(dyes_g=[0.01], liquor_ml=JAR_ML, bottles=[G4R], bench=bench)
    assert found.first == ()
    assert found.drawn[0].volume_ml == pytest.approx(1.0)


def test_out_of_range_is_told() -> None:
    with pytest.raises(OutOfRangeError, match="Dye must be"):
        drawn(0.0)
    with pytest.raises(OutOfRangeError, match="Bath of a swatch"):
        small_doses(dyes_g=[0.1], liquor_ml=0.0, bottles=[])


@given(
    depths=some.lists(some.floats(0.05, 4.0), min_size=1, max_size=12),
    yarn_g=some.sampled_from([5.0, 10.0, 20.0]),
    strength=some.sampled_from([0.1, 0.5, 1.0, 2.0]),
    holds_ml=some.floats(0.0, 500.0),
)
def test_every_dose_can_be_measured_and_carries_its_dye(
    depths: list[float], yarn_g: float, strength: float, holds_ml: float
) -> None:
    dyes_g = [dye_mass_g(fibre_mass_g=yarn_g, depth_percent=d) for d in depths]
    bottle = replace(G4R, strength_percent=strength, usable_ml=holds_ml)
    liquor_ml = 50 * yarn_g
    found = small_doses(dyes_g=dyes_g, liquor_ml=liquor_ml, bottles=[bottle])
    new = {each.strength_percent: each for each in found.first}
    from_new = dict.fromkeys(new, 0.0)
    from_bottle = sum(x.taken_ml for x in found.first if x.from_code)
    for dye_g, dose in zip(dyes_g, found.drawn, strict=True):
        assert dose.is_suiting
        assert dose.volume_ml * dose.strength_percent / 100 == pytest.approx(dye_g)
        assert 5.0 * (1 - 1e-9) <= dose.volume_ml <= liquor_ml / 4 * (1 + 1e-9)
        if dose.code:
            from_bottle += dose.volume_ml
        else:
            from_new[dose.strength_percent] += dose.volume_ml
    assert from_bottle <= holds_ml * (1 + 1e-9)
    for strength_percent, volume_ml in from_new.items():
        assert new[strength_percent].volume_ml >= volume_ml
