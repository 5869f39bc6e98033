import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import liquor_ml, water_balance, water_in_wet_yarn_ml
from shadewright.errors import OutOfRangeError

liquids_ml = st.floats(min_value=0, max_value=5000)


@pytest.mark.by_hand
def test_fresh_water_is_what_is_left() -> None:
    # 30 l/kg on 100 g: 3000; less 100 of stock, 40 of vinegar, 100 in the yarn
    bath = water_balance(
        fibre_mass_g=100, liquor_ratio=30, stock_ml=100, other_ml=40, wet_yarn_ml=100
    )
    assert bath.liquor_ml == pytest.approx(3000)
    assert bath.fresh_water_ml == pytest.approx(2760)
    assert bath.excess_ml == 0
    assert bath.liquor_ratio == pytest.approx(30)


@pytest.mark.by_hand
def test_too_much_stock_leaves_no_water_and_says_what_ratio_results() -> None:
    # 300 ml asked; 250 + 150 = 400 ml brought to 100 g
    bath = water_balance(
        fibre_mass_g=100, liquor_ratio=3, stock_ml=250, wet_yarn_ml=150
    )
    assert bath.fresh_water_ml == 0
    assert bath.excess_ml == pytest.approx(100)
    assert bath.liquor_ratio == pytest.approx(4)


def test_what_is_not_named_is_not_there() -> None:
    bath = water_balance(fibre_mass_g=100, liquor_ratio=30)
    assert bath.fresh_water_ml == bath.liquor_ml
    assert (bath.stock_ml, bath.other_ml, bath.wet_yarn_ml) == (0, 0, 0)


@given(
    fibre_g=st.floats(1, 2000),
    ratio=st.floats(1, 100),
    stock=liquids_ml,
    other=liquids_ml,
    wet=liquids_ml,
)
def test_the_water_balance_closes(
    fibre_g: float, ratio: float, stock: float, other: float, wet: float
) -> None:
    bath = water_balance(
        fibre_mass_g=fibre_g,
        liquor_ratio=ratio,
        stock_ml=stock,
        other_ml=other,
        wet_yarn_ml=wet,
    )
    poured = stock + other + wet + bath.fresh_water_ml
    assert poured - bath.excess_ml == pytest.approx(bath.liquor_ml)
    assert poured / fibre_g == pytest.approx(bath.liquor_ratio)
    assert bath.fresh_water_ml == 0 or bath.excess_ml == 0


@given(fibre_g=st.floats(1, 2000), ratio=st.floats(1, 40), times=st.floats(0.1, 10))
def test_twice_the_yarn_takes_twice_the_liquor(
    fibre_g: float, ratio: float, times: float
) -> None:
    once = liquor_ml(fibre_mass_g=fibre_g, liquor_ratio=ratio)
    more = liquor_ml(fibre_mass_g=fibre_g * times, liquor_ratio=ratio)
    assert more == pytest.approx(once * times, rel=1e-12)


def test_wet_yarn_carries_what_it_weighs_more() -> None:
    assert water_in_wet_yarn_ml(wet_mass_g=200, fibre_mass_g=100) == 100
    assert water_in_wet_yarn_ml(wet_mass_g=100, fibre_mass_g=100) == 0


def test_wet_yarn_lighter_than_its_fibre_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as caught:
        water_in_wet_yarn_ml(wet_mass_g=90, fibre_mass_g=100)
    assert caught.value.argument == "wet_mass_g"
    assert "at least the fibre’s own 100\u00a0g" in caught.value.sentence


@pytest.mark.parametrize("ratio", [0, -1, 1001, float("nan")])
def test_a_ratio_that_cannot_be_is_refused(ratio: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        liquor_ml(fibre_mass_g=100, liquor_ratio=ratio)
    assert caught.value.argument == "liquor_ratio"


@pytest.mark.parametrize("argument", ["stock_ml", "other_ml", "wet_yarn_ml"])
def test_liquid_below_nothing_is_refused(argument: str) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        water_balance(fibre_mass_g=100, liquor_ratio=30, **{argument: -1.0})
    assert caught.value.argument == argument


def test_a_bath_that_no_studio_has_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="at most 1000\u00a0l; got 30000\u00a0l"):
        liquor_ml(fibre_mass_g=1_000_000, liquor_ratio=30)
