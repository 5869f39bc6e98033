"""Equivalents, usual doses, late acid and the spent bath."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.acidity import (
    SPENT_STEPS,
    AcidInBath,
    Said,
    bicarbonate_g,
    commonly_said,
    equivalent_g,
    late_acid,
    protons_given,
    usual_acid,
)
from shadewright.core.tables.acid_doses import HABITS, AcidHabit
from shadewright.core.tables.acids import (
    ACETIC,
    AMMONIUM_SULPHATE,
    CITRIC,
    CITRIC_MONO,
    FORMIC,
    SULPHURIC,
    VINEGAR5,
    Acid,
)
from shadewright.errors import NoAnswerError, OutOfRangeError

ACIDS = (CITRIC, CITRIC_MONO, ACETIC, VINEGAR5, FORMIC, SULPHURIC)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("by_ph", "citric_g"),
    [
        # 5 g of acetic acid are 83.26 mmol, at pH 4.5 of which 0.3567 is given
        # up: 29.7 mmol. A citric acid has then given up 1.325 of its three:
        # 22.4 mmol x 192.12 g/mol = 4.3 g. The other rows likewise.
        (4.0, 2.3),
        (4.5, 4.3),
        (5.0, 6.1),
        (5.5, 6.9),
        (None, 5.33),  # 83.26 / 3 x 192.12
    ],
)
def test_citric_acid_for_100_ml_of_vinegar(
    by_ph: float | None, citric_g: float
) -> None:
    found = equivalent_g(pure_g=5.0, have=VINEGAR5, want=CITRIC, by_ph=by_ph)
    assert found == pytest.approx(citric_g, abs=0.05)


@pytest.mark.by_hand
def test_citric_crystals_hold_water() -> None:
    found = equivalent_g(pure_g=5.0, have=VINEGAR5, want=CITRIC_MONO, by_ph=None)
    assert found == pytest.approx(5.83, abs=0.005)  # 83.26 / 3 x 210.14


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("acid", "meq_per_g"), [(ACETIC, 16.65), (CITRIC, 15.61), (CITRIC_MONO, 14.28)]
)
def test_acid_in_a_gram(acid: Acid, meq_per_g: float) -> None:
    # 1000 / 60.05; 3000 / 192.12; 3000 / 210.14
    held = 1000 * protons_given(acid=acid, by_ph=None) / acid.molar_mass_g_per_mol
    assert held == pytest.approx(meq_per_g, abs=0.005)


@given(st.sampled_from(ACIDS), st.sampled_from(ACIDS), st.floats(2.0, 8.0))
def test_there_and_back_is_no_change(have: Acid, want: Acid, by_ph: float) -> None:
    there = equivalent_g(pure_g=2.0, have=have, want=want, by_ph=by_ph)
    back = equivalent_g(pure_g=there, have=want, want=have, by_ph=by_ph)
    assert back == pytest.approx(2.0)


@given(st.sampled_from(ACIDS), st.floats(2.0, 8.0), st.floats(2.0, 8.0))
def test_no_acid_takes_back_what_it_gave(acid: Acid, one: float, other: float) -> None:
    low, high = (protons_given(acid=acid, by_ph=ph) for ph in sorted((one, other)))
    assert low <= high <= protons_given(acid=acid, by_ph=None)


def test_what_is_said_spreads_sixfold() -> None:
    said = commonly_said(pure_g=5.0, have=VINEGAR5, want=CITRIC)
    assert said == Said(least_g=5.0, most_g=30.0)
    back = commonly_said(pure_g=5.0, have=CITRIC, want=VINEGAR5)
    assert back is not None
    assert back.most_g == pytest.approx(5.0)  # 100 ml: 5 g said for 5 g
    assert back.least_g == pytest.approx(5 / 6)
    assert commonly_said(pure_g=5.0, have=FORMIC, want=CITRIC) is None


def test_an_ammonium_salt_stands_for_no_amount_of_acid() -> None:
    with pytest.raises(NoAnswerError, match="ammonia leaves"):
        protons_given(acid=AMMONIUM_SULPHATE, by_ph=None)


@pytest.mark.parametrize("by_ph", [1.9, 8.1, float("nan")])
def test_a_basis_that_cannot_be(by_ph: float) -> None:
    with pytest.raises(OutOfRangeError, match="pH must be from 2 to 8"):
        protons_given(acid=CITRIC, by_ph=by_ph)


@pytest.mark.parametrize("habit", AcidHabit)
def test_no_default_can_burn(habit: AcidHabit) -> None:
    usual = usual_acid(habit=habit, total_depth_percent=1.0)
    assert usual.acid.is_offered
    assert usual.source
    strong = usual.acid.corrosive_from_g_per_100ml
    assert strong is None or (usual.acid.strength_g_per_100ml or 100) < strong


@pytest.mark.parametrize("habit", AcidHabit)
def test_deeper_takes_no_less(habit: AcidHabit) -> None:
    amounts = [
        usual_acid(habit=habit, total_depth_percent=depth).percent_owf
        for depth in (0.1, 0.49, 0.5, 1.5, 1.51, 6.0)
    ]
    assert all(less <= more for less, more in pairwise(amounts))
    assert amounts[0] < amounts[2] == amounts[3] < amounts[5]


@pytest.mark.parametrize("habit", AcidHabit)
def test_a_ph_within_the_range_asks_for_nothing(habit: AcidHabit) -> None:
    facts = HABITS[habit]
    for measured in (facts.ph_from, facts.ph_to, facts.ph_to + 0.3):
        assert late_acid(habit=habit, measured_ph=measured) == ()


@pytest.mark.parametrize("habit", AcidHabit)
def test_late_acid_is_poured_cool_thin_and_aside(habit: AcidHabit) -> None:
    said = " ".join(late_acid(habit=habit, measured_ph=7.9))
    for word in ("heat down", "never water to acid", "away from it", "a quarter"):
        assert word in said
    order = [said.index(word) for word in ("heat down", "never water", "Stir")]
    assert order == sorted(order)


@pytest.mark.parametrize(
    ("habit", "waits"),
    [
        (AcidHabit.LEVELLING, False),
        (AcidHabit.HALF_MILLING, False),
        (AcidHabit.MILLING, True),
        (AcidHabit.SUPER_MILLING, True),
        (AcidHabit.METAL_COMPLEX_1_2, True),
    ],
)
def test_fast_dyes_get_time_before_acid(habit: AcidHabit, *, waits: bool) -> None:
    _first, second, *_rest = late_acid(habit=habit, measured_ph=8.0)
    assert second.startswith("Give it time and temperature first") == waits


def test_a_bath_too_sour_gets_no_more_acid() -> None:
    _first, advice = late_acid(habit=AcidHabit.MILLING, measured_ph=3.5)
    assert advice.startswith("Add no more acid")


@pytest.mark.by_hand
def test_bicarbonate_for_a_spent_bath() -> None:
    two = AcidInBath(acid=ACETIC, pure_g=2.0)
    assert bicarbonate_g(acids=[two]) == pytest.approx(2.8, abs=0.05)
    # 2 x 84.006 / 60.052
    assert bicarbonate_g(acids=[two]) == pytest.approx(2.798, abs=0.001)
    # citric: three protons, 2 x 3 x 84.006 / 192.124; sulphuric two of 98.07
    citric = AcidInBath(acid=CITRIC, pure_g=2.0)
    assert bicarbonate_g(acids=[citric]) == pytest.approx(2.6235, abs=0.001)
    sulphuric = AcidInBath(acid=SULPHURIC, pure_g=1.0)
    assert bicarbonate_g(acids=[sulphuric]) == pytest.approx(1.7131, abs=0.001)
    both = bicarbonate_g(acids=[two, citric])
    assert both == pytest.approx(2.798 + 2.6235, abs=0.002)
    salt = AcidInBath(acid=AMMONIUM_SULPHATE, pure_g=3.0)
    assert bicarbonate_g(acids=[salt]) == 0.0


def test_it_is_added_slowly_and_rules_are_deferred_to() -> None:
    said = " ".join(SPENT_STEPS)
    for word in ("slowly", "foams", "sewer authority", "storm drain"):
        assert word in said
