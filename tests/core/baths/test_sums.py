from dataclasses import replace

import pytest

from shadewright.core.baths import (
    AcidWanted,
    Amount,
    AmountUnit,
    BathWanted,
    Dose,
    SaltWanted,
    bath_sum,
)
from shadewright.core.tables.acids import CITRIC, VINEGAR5
from shadewright.core.tables.dye_classes import DyeClass
from shadewright.core.tables.salts import GLAUBER_ANHYDROUS
from shadewright.errors import MissingError, OutOfRangeError

GORSE = Dose(dye="Gorse", depth_percent=0.6, strength_percent=1)
SLATE = Dose(dye="Slate", depth_percent=0.4, strength_percent=1)
TWO_DYES = BathWanted(fibre_mass_g=100, doses=(GORSE, SLATE), liquor_ratio=30)


@pytest.mark.by_hand
def test_two_dyes_in_a_bath() -> None:
    bath = bath_sum(wanted=TWO_DYES)
    assert [dose.stock_ml for dose in bath.doses] == pytest.approx([60, 40])
    assert bath.total_depth_percent == pytest.approx(1)
    assert bath.water.liquor_ml == pytest.approx(3000)  # 100 x 30
    assert bath.water.fresh_water_ml == pytest.approx(2900)  # 3000 - 60 - 40
    assert bath.warnings == ()


@pytest.mark.by_hand
def test_vinegar_and_wet_yarn_count_as_liquor() -> None:
    vinegar = AcidWanted(
        acid=VINEGAR5, amount=Amount(value=2, unit=AmountUnit.PERCENT_OWF)
    )
    bath = bath_sum(wanted=replace(TWO_DYES, acid=vinegar, wet_yarn_g=200))
    # 3000 - 100 of stock - 40 of vinegar - 100 in the yarn
    assert bath.water.fresh_water_ml == pytest.approx(2760)
    assert bath.acid is not None
    assert bath.acid.volume_ml == pytest.approx(40)


def test_solids_take_no_room() -> None:
    five = Amount(value=5, unit=AmountUnit.PERCENT_OWF)
    bath = bath_sum(
        wanted=replace(
            TWO_DYES,
            acid=AcidWanted(acid=CITRIC, amount=five),
            salt=SaltWanted(salt=GLAUBER_ANHYDROUS, amount=five),
        )
    )
    assert bath.water.fresh_water_ml == pytest.approx(2900)
    assert bath.salt is not None
    assert bath.salt.mass_g == pytest.approx(5)


def test_the_salt_is_cautioned_by_class() -> None:
    salt = SaltWanted(
        salt=GLAUBER_ANHYDROUS, amount=Amount(value=5, unit=AmountUnit.PERCENT_OWF)
    )
    milling = replace(TWO_DYES, salt=salt, dye_class=DyeClass.MILLING)
    (warning,) = bath_sum(wanted=milling).warnings
    assert warning.startswith("Leave the Glauber’s salt out")
    levelling = replace(milling, dye_class=DyeClass.LEVELLING)
    assert bath_sum(wanted=levelling).warnings == ()


def test_dry_dye_brings_the_powder_caution_first() -> None:
    dry = replace(
        TWO_DYES,
        doses=(replace(GORSE, strength_percent=None),),
        acid=AcidWanted(acid=CITRIC, amount=Amount(value=2, unit=AmountUnit.G)),
    )
    assert bath_sum(wanted=dry).water.fresh_water_ml == pytest.approx(3000, abs=1e-9)
    first, second = bath_sum(wanted=dry).warnings
    assert "N95/FFP2 respirator" in first
    assert second.startswith("Keep the dust out of eyes")


@pytest.mark.by_hand
def test_a_bath_that_stock_alone_overfills() -> None:
    # 6 % on 97 g from a 1 % stock is 582 ml, in a liquor of 485 ml: 6 to 1
    deep = replace(GORSE, depth_percent=6)
    bath = bath_sum(
        wanted=replace(TWO_DYES, fibre_mass_g=97, doses=(deep,), liquor_ratio=5)
    )
    assert bath.water.fresh_water_ml == 0
    (warning,) = bath.warnings
    assert "alone are 582\u00a0ml, more than the liquor of 485\u00a0ml" in warning
    assert "The ratio will be 6." in warning


def test_more_stock_than_a_studio_holds_names_the_doses() -> None:
    thin = replace(GORSE, strength_percent=0.001)
    with pytest.raises(OutOfRangeError) as caught:
        bath_sum(wanted=replace(TWO_DYES, fibre_mass_g=10_000, doses=(thin,)))
    assert caught.value.argument == "doses"  # 10 kg × 0.6 % / 0.001 % = 6000 l


def test_a_very_deep_bath_is_cautioned() -> None:
    deep = replace(GORSE, depth_percent=6.5)
    (warning,) = bath_sum(wanted=replace(TWO_DYES, doses=(deep,))).warnings
    assert warning.startswith("All dyes together are 6.5\u00a0%")


def test_a_bath_without_dye_is_refused() -> None:
    with pytest.raises(MissingError) as caught:
        bath_sum(wanted=replace(TWO_DYES, doses=()))
    assert caught.value.argument == "doses"
