import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    Amount,
    AmountUnit,
    anhydrous_mass_g,
    decahydrate_mass_g,
    salt_caution,
    salt_dose,
)
from shadewright.core.tables.dye_classes import DyeClass
from shadewright.core.tables.salts import GLAUBER_ANHYDROUS, GLAUBER_DECAHYDRATE, Salt
from shadewright.errors import UnitError

FIVE_PERCENT = Amount(value=5, unit=AmountUnit.PERCENT_OWF)


@given(mass_g=st.floats(0.01, 10_000))
def test_there_and_back_is_no_change(mass_g: float) -> None:
    crystals_g = decahydrate_mass_g(anhydrous_mass_g=mass_g)
    assert crystals_g > 2 * mass_g
    assert anhydrous_mass_g(decahydrate_mass_g=crystals_g) == pytest.approx(
        mass_g, rel=1e-12
    )


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("salt", "anhydrous_g", "decahydrate_g"),
    [
        (GLAUBER_ANHYDROUS, 5, 11.3417),  # 5 x 322.19 / 142.04
        (GLAUBER_DECAHYDRATE, 2.2043, 5),  # 5 x 142.04 / 322.19
    ],
)
def test_the_amount_counts_the_form_in_the_jar(
    salt: Salt, anhydrous_g: float, decahydrate_g: float
) -> None:
    dose = salt_dose(
        salt=salt, amount=FIVE_PERCENT, fibre_mass_g=100, liquor_volume_ml=3000
    )
    assert dose.mass_g == pytest.approx(5)
    assert dose.anhydrous_g == pytest.approx(anhydrous_g, abs=5e-4)
    assert dose.decahydrate_g == pytest.approx(decahydrate_g, abs=5e-4)


@pytest.mark.parametrize("dye_class", [DyeClass.LEVELLING, DyeClass.HALF_MILLING])
def test_classes_that_take_the_salt(dye_class: DyeClass) -> None:
    assert salt_caution(dye_class=dye_class) is None


@pytest.mark.parametrize("dye_class", [DyeClass.MILLING, DyeClass.SUPER_MILLING])
def test_classes_that_must_not_meet_it(dye_class: DyeClass) -> None:
    caution = salt_caution(dye_class=dye_class)
    assert caution is not None
    assert caution.startswith("Leave the Glauber’s salt out")
    assert dye_class in caution


def test_an_unnamed_class_is_to_be_looked_up() -> None:
    caution = salt_caution(dye_class=None)
    assert caution is not None
    assert "Look up your dye’s class" in caution


def test_salt_is_weighed_and_never_poured() -> None:
    with pytest.raises(UnitError) as caught:
        salt_dose(
            salt=GLAUBER_ANHYDROUS,
            amount=Amount(value=5, unit=AmountUnit.ML),
            fibre_mass_g=100,
            liquor_volume_ml=3000,
        )
    assert caught.value.argument == "salt"
