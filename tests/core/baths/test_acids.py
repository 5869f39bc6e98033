import pytest

from shadewright.core.baths import (
    AcidDose,
    Amount,
    AmountUnit,
    acid_cautions,
    acid_dose,
)
from shadewright.core.tables.acids import (
    ACETIC,
    ACIDS,
    AMMONIUM_SULPHATE,
    CITRIC,
    FORMIC,
    SULPHURIC,
    VINEGAR5,
    Acid,
)
from shadewright.errors import MissingError, OutOfRangeError, UnitError


def dose(
    acid: Acid,
    value: float,
    unit: AmountUnit,
    *,
    strength_g_per_100ml: float | None = None,
) -> AcidDose:
    return acid_dose(
        acid=acid,
        amount=Amount(value=value, unit=unit),
        fibre_mass_g=100,
        liquor_volume_ml=3000,
        strength_g_per_100ml=strength_g_per_100ml,
    )


@pytest.mark.by_hand
def test_a_solid_is_weighed() -> None:
    citric = dose(CITRIC, 2, AmountUnit.PERCENT_OWF)  # 100 x 0.02
    assert citric.pure_g == pytest.approx(2)
    assert citric.volume_ml is None


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("value", "unit", "pure_g", "ml"),
    [
        (2, AmountUnit.PERCENT_OWF, 2, 40),  # 2 g at 5 g/100 ml
        (30, AmountUnit.ML, 1.5, 30),
        (1, AmountUnit.G_PER_L, 3, 60),  # 3 l x 1 g
    ],
)
def test_vinegar_is_poured(
    value: float, unit: AmountUnit, pure_g: float, ml: float
) -> None:
    vinegar = dose(VINEGAR5, value, unit)
    assert vinegar.pure_g == pytest.approx(pure_g)
    assert vinegar.volume_ml == pytest.approx(ml)


@pytest.mark.by_hand
def test_a_liquid_of_labelled_strength() -> None:
    acetic = dose(ACETIC, 2.8, AmountUnit.PERCENT_OWF, strength_g_per_100ml=56)
    assert acetic.volume_ml == pytest.approx(5)  # 2.8 g at 56 g/100 ml


def test_a_liquid_of_unknown_strength_comes_as_pure_acid() -> None:
    acetic = dose(ACETIC, 2, AmountUnit.G)
    assert acetic.pure_g == pytest.approx(2)
    assert acetic.volume_ml is None


def test_millilitres_need_a_strength() -> None:
    with pytest.raises(MissingError) as caught:
        dose(ACETIC, 5, AmountUnit.ML)
    assert caught.value.argument == "acid"
    assert "acetic@56%" in caught.value.sentence


@pytest.mark.parametrize(
    ("acid", "unit"), [(CITRIC, AmountUnit.ML), (VINEGAR5, AmountUnit.G)]
)
def test_a_unit_that_does_not_fit_is_refused(acid: Acid, unit: AmountUnit) -> None:
    with pytest.raises(UnitError) as caught:
        dose(acid, 5, unit)
    assert caught.value.argument == "acid"


def test_a_solid_has_no_strength() -> None:
    with pytest.raises(UnitError) as caught:
        dose(CITRIC, 2, AmountUnit.PERCENT_OWF, strength_g_per_100ml=50)
    assert caught.value.argument == "acid"


def test_less_than_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as caught:
        dose(VINEGAR5, -1, AmountUnit.ML)
    assert caught.value.argument == "acid"
    assert "−1\u00a0ml" in caught.value.sentence


@pytest.mark.parametrize("acid", [ACETIC, VINEGAR5, FORMIC, SULPHURIC])
def test_every_liquid_goes_into_the_water(acid: Acid) -> None:
    cautions = acid_cautions(acid=acid, strength_g_per_100ml=5)
    assert cautions[0] == "Add the acid to the water, never water to acid."
    assert "safety data sheet" in cautions[-1]


@pytest.mark.parametrize(
    ("acid", "strength", "is_strong"),
    [
        (VINEGAR5, 5, False),
        (ACETIC, 24.9, False),
        (ACETIC, 25, True),
        (FORMIC, 10, True),
        (SULPHURIC, 10, False),
        (SULPHURIC, None, True),
        (ACETIC, None, True),
    ],
)
def test_strong_acid_is_left_to_licensed_hands(
    acid: Acid, strength: float | None, *, is_strong: bool
) -> None:
    cautions = acid_cautions(acid=acid, strength_g_per_100ml=strength)
    assert ("licensed" in " ".join(cautions)) is is_strong


def test_a_solid_has_one_caution() -> None:
    (caution,) = acid_cautions(acid=AMMONIUM_SULPHATE, strength_g_per_100ml=None)
    assert "safety data sheet" in caution


def test_no_default_offers_a_strong_acid() -> None:
    offered = {key for key, acid in ACIDS.items() if acid.is_offered}
    assert offered == {
        "citric",
        "citric-mono",
        "vinegar5",
        "ammonium-sulphate",
        "ammonium-acetate",
    }
