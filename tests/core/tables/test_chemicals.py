import pytest

from shadewright.core.tables import atoms
from shadewright.core.tables.acids import ACIDS, Acid
from shadewright.core.tables.salts import SALTS, Salt
from tests.published_cases import PublishedCase, published


@pytest.mark.parametrize("case", published("baths", asks="atomic_weight"))
def test_atomic_weights_round_the_standard(case: PublishedCase) -> None:
    weight = getattr(atoms, f"{case.inputs['element']}_G_PER_MOL")
    assert weight == pytest.approx(float(case.printed), rel=1e-12)
    assert (
        case.inputs["least"] - case.half_a_digit
        <= weight
        <= case.inputs["most"] + case.half_a_digit
    )


@pytest.mark.parametrize("case", published("baths", asks="molar_mass"))
def test_molar_masses(case: PublishedCase) -> None:
    chemicals: dict[str, Acid | Salt] = {**ACIDS, **SALTS}
    assert case.agrees(chemicals[case.inputs["chemical"]].molar_mass_g_per_mol)


@pytest.mark.by_hand
def test_the_molar_masses_that_no_book_was_at_hand_for() -> None:
    # C 12.011 + 2 H 2.016 + 2 O 31.998; 2 H 2.016 + S 32.06 + 4 O 63.996
    assert ACIDS["formic"].molar_mass_g_per_mol == pytest.approx(46.025)
    assert ACIDS["sulphuric"].molar_mass_g_per_mol == pytest.approx(98.072)
    # citric acid 192.123 and one water, 18.015
    assert ACIDS["citric-mono"].molar_mass_g_per_mol == pytest.approx(210.138)


def test_keys_are_the_words_typed() -> None:
    assert all(acid.key == key for key, acid in ACIDS.items())
    assert all(salt.key == key for key, salt in SALTS.items())
    assert set(SALTS) == {"glauber-anhydrous", "glauber-decahydrate"}
