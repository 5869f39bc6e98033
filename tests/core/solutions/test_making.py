"""The plan of a stock."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions import paste_water_ml, stock_plan
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
def test_a_plan_by_pencil() -> None:
    plan = stock_plan(volume_ml=500.0, strength_percent=1.0)
    assert plan.powder_g == 5.0
    assert plan.paste_water_ml == 15.0  # 3 ml to a gram: a tablespoon
    # two thirds of 500 ml are 333.3 ml, less the 15 ml of paste
    assert plan.hot_water_ml == pytest.approx(318.33, abs=0.01)
    assert plan.final_volume_ml == 500.0
    assert plan.warnings == ()


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("grams", "millilitres"), [(0.2, 5.0), (1.0, 5.0), (5.0, 15.0), (20.0, 60.0)]
)
def test_paste_water(grams: float, millilitres: float) -> None:
    assert paste_water_ml(powder_g=grams) == millilitres


@given(
    st.floats(min_value=1.0, max_value=20_000.0),
    st.floats(min_value=0.01, max_value=50.0),
)
def test_paste_and_hot_water_always_fit(volume: float, strength: float) -> None:
    plan = stock_plan(volume_ml=volume, strength_percent=strength)
    assert plan.hot_water_ml >= 0.0
    assert plan.paste_water_ml + plan.hot_water_ml == pytest.approx(2 * volume / 3)


def test_a_strong_stock_has_little_room_for_paste() -> None:
    plan = stock_plan(volume_ml=500.0, strength_percent=40.0)
    assert plan.paste_water_ml == pytest.approx(1000.0 / 3.0)
    assert any("little room" in warning for warning in plan.warnings)


def test_a_strength_above_the_solubility_is_refused_with_what_is_possible() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        stock_plan(
            volume_ml=500.0,
            strength_percent=4.0,
            solubility_g_per_l=27.0,
            solubility_at_c=20.0,
        )
    sentence = refused.value.sentence.replace("\u00a0", " ")
    assert "at most 2.7 %" in sentence
    assert "27 g/l dissolve at 20 °C" in sentence
    assert refused.value.argument == "strength_percent"


def test_all_that_dissolves_is_allowed_and_above_half_is_warned_of() -> None:
    full = stock_plan(volume_ml=500.0, strength_percent=2.7, solubility_g_per_l=27.0)
    assert any("100\u00a0%" in warning for warning in full.warnings)
    half = stock_plan(volume_ml=500.0, strength_percent=1.35, solubility_g_per_l=27.0)
    assert half.warnings == ()
    more = stock_plan(volume_ml=500.0, strength_percent=1.36, solubility_g_per_l=27.0)
    assert len(more.warnings) == 1


@pytest.mark.by_hand
def test_a_thinned_powder_reaches_its_solubility_earlier() -> None:
    # 2 % from a powder of 50 % takes 40 g of powder to the litre.
    with pytest.raises(OutOfRangeError, match=r"at most 1\.5"):
        stock_plan(
            volume_ml=1000.0,
            strength_percent=2.0,
            powder_strength_percent=50.0,
            solubility_g_per_l=30.0,
        )


def test_more_powder_than_the_jar_holds_is_refused_with_the_largest_volume() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        stock_plan(volume_ml=500.0, strength_percent=1.0, powder_left_g=3.2)
    sentence = refused.value.sentence.replace("\u00a0", " ")
    assert "at most the 3.2 g that the jar holds" in sentence
    assert "enough for 320 ml" in sentence
    assert refused.value.argument == "volume_ml"
    just = stock_plan(volume_ml=320.0, strength_percent=1.0, powder_left_g=3.2)
    assert just.powder_g == pytest.approx(3.2)


def test_an_empty_jar_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="the jar holds"):
        stock_plan(volume_ml=500.0, strength_percent=1.0, powder_left_g=0.0)


def test_the_dye_brings_its_warnings() -> None:
    plan = stock_plan(
        volume_ml=500.0, strength_percent=1.0, mix_fresh=True, is_metal_complex=True
    )
    fresh, metal = plan.warnings
    assert "mixed fresh" in fresh
    assert "never poured away" in metal
    assert "bleach" in metal


@pytest.mark.parametrize(
    ("argument", "bad"),
    [
        ("volume_ml", 0.0),
        ("volume_ml", -5.0),
        ("volume_ml", float("nan")),
        ("strength_percent", 60.0),
        ("powder_strength_percent", 0.0),
        ("solubility_g_per_l", 0.0),
        ("powder_left_g", -1.0),
    ],
)
def test_what_cannot_be_is_refused(argument: str, bad: float) -> None:
    given_numbers = {"volume_ml": 500.0, "strength_percent": 1.0, argument: bad}
    with pytest.raises(OutOfRangeError) as refused:
        stock_plan(**given_numbers)  # type: ignore[arg-type]
    assert refused.value.argument == argument
