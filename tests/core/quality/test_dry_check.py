"""The dry check: words, a distance with its spread, and what becomes of the lot."""

from math import sqrt

import pytest

from shadewright.core.colour import Lab, ciede2000, cmc
from shadewright.core.quality import (
    Band,
    Decision,
    DryCheck,
    Evenness,
    Formula,
    Tolerances,
    decided,
    dry_check,
)
from shadewright.errors import MissingError

STANDARD = Lab(50.0, 0.0, 0.0)
USUAL = Tolerances()


def checked(*spots: Lab, formula: Formula = Formula.CIEDE2000) -> DryCheck:
    """Return the check of some spots against a grey."""
    return dry_check(
        spots, standard=STANDARD, tolerances=USUAL, band=Band(), formula=formula
    )


@pytest.mark.by_hand
def test_a_lot_that_is_lighter_by_two() -> None:
    # L of 51.7, 52.0, 52.3: mean 52, s = 0.3, u = 0.3 / √(3 × 3) = 0.1 in each number.
    # Near L 50 CIEDE2000 counts L as 1, a of greys as 1.5 and b as 1:
    # √(0.1² + 0.15² + 0.1²) = 0.206
    found = checked(Lab(51.7, 0, 0), Lab(52.0, 0, 0), Lab(52.3, 0, 0))
    assert found.mean == Lab(52.0, 0.0, 0.0)
    assert found.difference == pytest.approx(ciede2000(STANDARD, Lab(52.0, 0, 0)))
    assert found.spread == pytest.approx(sqrt(0.01 + 0.0225 + 0.01), rel=0.03)
    assert found.words == "lighter"
    assert found.unevenness == pytest.approx(0.2, abs=0.01)
    assert found.decision is Decision.ALTERNATE


def test_the_formula_is_named() -> None:
    found = checked(Lab(52, 0, 0), Lab(52, 0, 0), formula=Formula.CMC)
    assert found.formula.value == "CMC(2:1)"
    assert found.difference == pytest.approx(cmc(STANDARD, Lab(52, 0, 0)))
    assert found.spread == 0.0


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("difference", "spread", "is_paler", "decision"),
    [
        (0.9, 0.2, True, Decision.MATCH),
        (0.1, 0.3, True, Decision.MATCH),  # together 0.4: it matches all the same
        (0.8, 0.9, True, Decision.CANNOT_TELL),  # together 1.7, past what matches
        (2.5, 2.6, False, Decision.CANNOT_TELL),
        (1.5, 0.2, True, Decision.ALTERNATE),
        (3.0, 0.2, False, Decision.NEW_LOT),
        (5.0, 0.2, True, Decision.CORRECT),
        (5.0, 0.2, False, Decision.ONE_OFF),
    ],
)
def test_what_becomes_of_a_lot(
    difference: float, spread: float, *, is_paler: bool, decision: Decision
) -> None:
    found = decided(
        difference=difference, spread=spread, is_paler=is_paler, tolerances=USUAL
    )
    assert found is decision


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("unevenness", "evenness"),
    [
        (1.0, Evenness.TOO_LEVEL),
        (3.0, Evenness.AS_WANTED),
        (6.0, Evenness.TOO_UNEVEN),
    ],
)
def test_a_tonal_yarn_has_a_band_of_its_own(
    unevenness: float, evenness: Evenness
) -> None:
    assert Band(least=2.0, most=5.0).judged(unevenness) is evenness


def test_one_spot_is_too_few() -> None:
    with pytest.raises(MissingError, match="second spot"):
        checked(Lab(52, 0, 0))
