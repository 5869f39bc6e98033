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
    could_be,
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
    # ΔE is 1.97: within 0.21 lies the tolerance of 2, so two things may become of it
    assert found.decision is Decision.CANNOT_TELL
    assert found.could_be == (Decision.ALTERNATE, Decision.NEW_LOT)


def test_the_formula_is_named() -> None:
    found = checked(Lab(52, 0, 0), Lab(52, 0, 0), formula=Formula.CMC)
    assert found.formula.value == "CMC(2:1)"
    assert found.difference == pytest.approx(cmc(STANDARD, Lab(52, 0, 0)))
    assert found.spread == 0.0


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("difference", "spread", "is_paler", "decisions"),
    [
        (0.9, 0.05, True, [Decision.MATCH]),
        (0.1, 0.3, True, [Decision.MATCH]),  # together 0.4: it matches all the same
        (1.0, 0.0, True, [Decision.MATCH]),
        (0.8, 0.9, True, [Decision.MATCH, Decision.ALTERNATE]),  # 0 to 1.7
        (2.5, 0.2, False, [Decision.NEW_LOT]),
        (2.5, 0.6, False, [Decision.ALTERNATE, Decision.NEW_LOT, Decision.ONE_OFF]),
        (1.5, 0.2, True, [Decision.ALTERNATE]),
        (5.0, 0.2, True, [Decision.CORRECT]),
        (5.0, 0.2, False, [Decision.ONE_OFF]),
    ],
)
def test_what_becomes_of_a_lot(
    difference: float, spread: float, *, is_paler: bool, decisions: list[Decision]
) -> None:
    found = could_be(
        difference=difference, spread=spread, is_paler=is_paler, tolerances=USUAL
    )
    assert list(found) == decisions


@pytest.mark.by_hand
def test_the_standard_and_the_meter_are_in_doubt_too() -> None:
    # u² = (0.3² + 0.4²) / 3 = 0.5² / 3; greys count about 1, 1.5 and 1, the root of
    # whose squares is 2.06: 0.5 × 2.06 / √3 = 0.595
    found = dry_check(
        [Lab(52.0, 0, 0)],
        standard=STANDARD,
        tolerances=USUAL,
        band=Band(),
        u_read=0.3,
        u_standard=0.4,
    )
    assert found.spread == pytest.approx(0.595, rel=0.03)
    assert (found.unevenness, found.evenness) == (None, None)


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
