"""The pH of water and acid: hand working without activities, and laws."""

from dataclasses import replace
from math import log10, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.acidity import (
    AcidInBath,
    Solution,
    constants_at,
    pka_at,
    settled,
    water_ph,
)
from shadewright.core.tables.acidity import (
    ACETATE,
    AMMONIA,
    CITRATE,
    MG_CACO3_PER_MEQ,
    SULPHATE,
    AcidFamily,
)
from shadewright.core.tables.acids import (
    ACETIC,
    ACIDS,
    AMMONIUM_ACETATE,
    AMMONIUM_SULPHATE,
    CITRIC,
    CITRIC_MONO,
    FORMIC,
    SULPHURIC,
    VINEGAR5,
    Acid,
)
from shadewright.errors import OutOfRangeError

SOUR = (CITRIC, CITRIC_MONO, ACETIC, VINEGAR5, FORMIC, SULPHURIC)
acid = st.sampled_from(SOUR)
grams = st.floats(0.01, 60.0)
alkalinity = st.floats(0.0, 400.0)
warmth = st.floats(0.0, 100.0)


def ideal_ph(families: dict[AcidFamily, float], other: float = 0.0) -> float:
    """Return the pH with every activity coefficient taken as 1."""
    solution = Solution(mol_per_l=families, other_charge_mol_per_l=other)
    constants = constants_at(solution=solution, temperature_c=25.0)
    return settled(solution=solution, constants=replace(constants, factor=0.0)).ph


def ph(acid: Acid, pure_g: float, alkalinity: float = 0.0, at_c: float = 25.0) -> float:
    return water_ph(
        acids=[AcidInBath(acid=acid, pure_g=pure_g)],
        liquor_ml=3000.0,
        alkalinity_mg_per_l=alkalinity,
        temperature_c=at_c,
    ).ph


@pytest.mark.by_hand
def test_a_weak_acid_without_activities() -> None:
    # x² / (c − x) = K: x = (−K + √(K² + 4 K c)) / 2, c = 5 g / 60.052 / 0.1 l
    constant, amount = 10**-4.756, 0.8326
    h = (-constant + sqrt(constant**2 + 4 * constant * amount)) / 2
    assert ideal_ph({ACETATE: amount}) == pytest.approx(-log10(h), abs=1e-6)
    assert round(-log10(h), 2) == pytest.approx(2.42)


@pytest.mark.by_hand
def test_an_ammonium_salt_without_activities() -> None:
    # 3 % of 100 g in 3 l: 15.1 mmol/l of ammonium. [NH3] = [H+] + [HSO4−], so
    # h² (1 + s/K2) = K1 n, with s = 7.57 mmol/l of sulphate
    n, k1, k2 = 2 * 3 / 132.14 / 3, 10**-9.245, 10**-1.987
    h = sqrt(k1 * n / (1 + n / 2 / k2))
    found = ideal_ph({AMMONIA: n, SULPHATE: n / 2})
    assert found == pytest.approx(-log10(h), abs=0.01)
    # Davies alone would leave 5.53 here only if sulphate took no proton at all
    assert found == pytest.approx(5.65, abs=0.01)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("family", "molar_mass", "expected"),
    [
        # 2 g in 3 l at 0, 50, 150, 250 mg/l: each row closes
        # [H+] + alkalinity = Σ j c_j with the shares of that pH
        (ACETATE, 60.052, (3.36, 3.82, 4.33, 4.67)),
        (CITRATE, 192.124, (2.89, 3.11, 3.78, 4.68)),
    ],
)
def test_alkalinity_takes_up_acid(
    family: AcidFamily, molar_mass: float, expected: tuple[float, ...]
) -> None:
    amount = 2 / molar_mass / 3
    for mg_per_l, wanted in zip((0, 50, 150, 250), expected, strict=True):
        found = ideal_ph({family: amount}, mg_per_l / 50.043 / 1000)
        assert found == pytest.approx(wanted, abs=0.006)
        h = 10**-found
        given_up = sum(
            lost * amount * share for lost, share in enumerate(_shares(family, found))
        )
        assert h + mg_per_l / 50043 == pytest.approx(given_up, rel=1e-6)


def _shares(family: AcidFamily, at_ph: float) -> list[float]:
    h, weights = 10**-at_ph, [1.0]
    for pka in family.pka:
        weights.append(weights[-1] * 10**-pka / h)
    return [weight / sum(weights) for weight in weights]


@pytest.mark.by_hand
def test_a_milliequivalent_of_alkalinity() -> None:
    # (40.078 + 12.011 + 3 x 15.999) / 2
    assert pytest.approx(50.043) == MG_CACO3_PER_MEQ


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("at_c", "pka"), [(25, 9.25), (60, 8.29), (80, 7.83), (98, 7.45)]
)
def test_ammonium_turns_acid_in_the_heat(at_c: float, pka: float) -> None:
    # 9.245 + 51.95 / (0.008314 x 2.3026) x (1/T − 1/298.15)
    assert pka_at(family=AMMONIA, temperature_c=at_c)[0] == pytest.approx(
        pka, abs=0.006
    )


@given(acid, grams, st.floats(1.01, 3.0), alkalinity, warmth)
def test_more_acid_is_never_less_sour(
    kind: Acid, pure_g: float, more: float, mg_per_l: float, at_c: float
) -> None:
    assert ph(kind, pure_g * more, mg_per_l, at_c) < ph(kind, pure_g, mg_per_l, at_c)


@given(acid, grams, alkalinity, st.floats(1.0, 100.0), warmth)
def test_more_alkalinity_is_never_sourer(
    kind: Acid, pure_g: float, mg_per_l: float, more: float, at_c: float
) -> None:
    assert ph(kind, pure_g, mg_per_l + more, at_c) > ph(kind, pure_g, mg_per_l, at_c)


@given(acid, grams, st.sampled_from((AMMONIUM_SULPHATE, AMMONIUM_ACETATE)), alkalinity)
def test_acid_beside_an_ammonium_salt_makes_it_sourer(
    kind: Acid, pure_g: float, salt: Acid, mg_per_l: float
) -> None:
    beside = AcidInBath(acid=salt, pure_g=3.0)
    both = [beside, AcidInBath(acid=kind, pure_g=pure_g)]
    with_acid, alone = (
        water_ph(acids=acids, liquor_ml=3000.0, alkalinity_mg_per_l=mg_per_l).ph
        for acids in (both, [beside])
    )
    assert with_acid < alone


@given(st.sampled_from(sorted(ACIDS)), grams, alkalinity)
def test_two_halves_are_one(key: str, pure_g: float, mg_per_l: float) -> None:
    half = AcidInBath(acid=ACIDS[key], pure_g=pure_g / 2)
    twice = water_ph(
        acids=[half, half], liquor_ml=3000.0, alkalinity_mg_per_l=mg_per_l
    ).ph
    assert twice == pytest.approx(ph(ACIDS[key], pure_g, mg_per_l), abs=1e-9)


@given(grams, alkalinity)
def test_crystals_count_as_the_citric_acid_in_them(
    pure_g: float, mg_per_l: float
) -> None:
    crystals = pure_g * CITRIC_MONO.molar_mass_g_per_mol / CITRIC.molar_mass_g_per_mol
    assert ph(CITRIC_MONO, crystals, mg_per_l) == pytest.approx(
        ph(CITRIC, pure_g, mg_per_l), abs=1e-9
    )


def test_water_alone_is_neutral() -> None:
    found = water_ph(acids=[], liquor_ml=1000.0, temperature_c=25.0)
    assert found.ph == pytest.approx(13.995 / 2, abs=0.001)


def test_what_is_left_out_is_said() -> None:
    bath = AcidInBath(acid=CITRIC, pure_g=2.0)
    found = water_ph(acids=[bath], liquor_ml=3000.0)
    assert found.note == "Water only, no fibre: the bath reads higher."
    assert (found.u_ph, found.why) == (0.2, "")
    salt = AcidInBath(acid=AMMONIUM_SULPHATE, pure_g=3.0)
    assert "ammonia leaves" in water_ph(acids=[salt], liquor_ml=3000.0).note


def test_a_number_that_is_only_a_guess_has_no_spread() -> None:
    little = AcidInBath(acid=CITRIC, pure_g=0.1)
    hard = water_ph(acids=[little], liquor_ml=3000.0, alkalinity_mg_per_l=200.0)
    assert hard.u_ph is None
    assert "alkalinity" in hard.why
    assert hard.why in hard.note
    strong = AcidInBath(acid=SULPHURIC, pure_g=300.0)
    assert "guess" in water_ph(acids=[strong], liquor_ml=3000.0).why


@pytest.mark.parametrize(
    ("wrong", "argument"),
    [
        ({"liquor_ml": 0.0}, "water"),
        ({"alkalinity_mg_per_l": -1.0}, "alkalinity_mg_per_l"),
        ({"alkalinity_mg_per_l": 2001.0}, "alkalinity_mg_per_l"),
        ({"temperature_c": 101.0}, "temperature_c"),
        ({"acids": [AcidInBath(acid=CITRIC, pure_g=0.0)]}, "acid"),
        ({"acids": [AcidInBath(acid=CITRIC, pure_g=201.0)]}, "acid"),
    ],
)
def test_what_cannot_be_is_refused(wrong: dict[str, object], argument: str) -> None:
    asked: dict[str, object] = {"acids": [], "liquor_ml": 1000.0} | wrong
    with pytest.raises(OutOfRangeError) as refused:
        water_ph(**asked)  # type: ignore[arg-type]
    assert refused.value.argument == argument
