import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    Amount,
    AmountUnit,
    auxiliary_mass_g,
    liquid_volume_ml,
)
from shadewright.errors import OutOfRangeError, UnitError


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("value", "unit", "mass_g"),
    [
        (2, AmountUnit.PERCENT_OWF, 3),  # 150 x 0.02
        (1.5, AmountUnit.G_PER_L, 6.75),  # 4.5 l x 1.5
        (4, AmountUnit.G, 4),
    ],
)
def test_an_amount_in_grams(value: float, unit: AmountUnit, mass_g: float) -> None:
    found = auxiliary_mass_g(
        amount=Amount(value=value, unit=unit),
        fibre_mass_g=150,
        liquor_volume_ml=4500,
    )
    assert found == pytest.approx(mass_g)


@pytest.mark.by_hand
def test_a_liquid_by_its_strength() -> None:
    # 1.8 g at 5 g/100 ml; 2 g at 56 g/100 ml
    assert liquid_volume_ml(pure_mass_g=1.8, strength_g_per_100ml=5) == pytest.approx(
        36
    )
    assert liquid_volume_ml(pure_mass_g=2, strength_g_per_100ml=56) == pytest.approx(
        3.5714, abs=5e-5
    )


@given(value=st.floats(0.01, 50), fibre_g=st.floats(1, 1000), times=st.floats(0.1, 10))
def test_per_cents_grow_with_the_yarn_and_not_the_water(
    value: float, fibre_g: float, times: float
) -> None:
    amount = Amount(value=value, unit=AmountUnit.PERCENT_OWF)
    once = auxiliary_mass_g(amount=amount, fibre_mass_g=fibre_g, liquor_volume_ml=1000)
    more = auxiliary_mass_g(
        amount=amount, fibre_mass_g=fibre_g * times, liquor_volume_ml=5000
    )
    assert more == pytest.approx(once * times, rel=1e-12)


def test_millilitres_of_a_solid_are_refused() -> None:
    with pytest.raises(UnitError) as caught:
        auxiliary_mass_g(
            amount=Amount(value=5, unit=AmountUnit.ML),
            fibre_mass_g=100,
            liquor_volume_ml=3000,
        )
    assert caught.value.argument == "amount"


@pytest.mark.parametrize(
    ("value", "unit", "allowed"),
    [
        (0, AmountUnit.PERCENT_OWF, "at most 100\u00a0%"),
        (-1, AmountUnit.G, "above 0"),
        (101, AmountUnit.PERCENT_OWF, "at most 100\u00a0%"),
        (201, AmountUnit.G_PER_L, "at most 200\u00a0g/l"),
    ],
)
def test_an_amount_that_cannot_be_is_refused(
    value: float, unit: AmountUnit, allowed: str
) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        auxiliary_mass_g(
            amount=Amount(value=value, unit=unit),
            fibre_mass_g=100,
            liquor_volume_ml=3000,
        )
    assert allowed in caught.value.sentence


def test_a_liquid_heavier_than_any_acid_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as caught:
        liquid_volume_ml(pure_mass_g=1, strength_g_per_100ml=186)
    assert caught.value.argument == "strength_g_per_100ml"
