"""What is learned is least squares with a prior: the same by another way."""

import numpy as np
import pytest

from shadewright.core.quality.causes.features import Features, features_of, scales_of
from shadewright.core.quality.causes.history import Factor, PastLot
from shadewright.core.quality.causes.learning import (
    NAME_SD,
    NOISE_SHARE,
    learned_from,
    paler_than,
)

PALER = paler_than((50.0, 20.0, 10.0))
POT_Y: Features = {(Factor.POT, "Y"): 1.0, (Factor.POT, "X"): -1.0}
HOLD: Features = {(Factor.HOLD, ""): 1.0}


def pots(names: str) -> list[Features]:
    """Return lots that were dyed in some pots."""
    return [
        features_of(PastLot(number=f"{n}", pot=name), {})
        for n, name in enumerate(names)
    ]


def test_shifts_are_those_of_ridge_regression() -> None:
    """Widths of factors are learned too; where they are known, numpy gives the same."""
    names, shifts = "XYXYYX", [0.0, 0.5, 0.1, 0.6, 0.4, -0.1]
    learned = learned_from(
        pots(names), [(x, 0.0, 0.0) for x in shifts], variance=0.04, paler=PALER
    )
    width = learned.widths[Factor.POT]
    design = np.array([[10.0, width * (n == "X"), width * (n == "Y")] for n in names])
    noise = NOISE_SHARE * 0.04
    inner = design.T @ design + noise * np.eye(3)
    found = width * np.linalg.solve(inner, design.T @ np.array(shifts))
    effect = learned.effect(POT_Y)
    assert effect.shift[0] == pytest.approx(found[2] - found[1])
    way = np.array([0.0, -width, width])
    assert effect.variance == pytest.approx(noise * way @ np.linalg.inv(inner) @ way)


def test_a_factor_that_moved_much_is_believed_to_move_much() -> None:
    still = learned_from(
        pots("XXXYXX"), [(0.0, 0.0, 0.0)] * 6, variance=0.04, paler=PALER
    )
    moved: list[tuple[float, float, float]] = [(0.0, 0.0, 0.0)] * 6
    moved[3] = (3.0, 0.0, 0.0)
    found = learned_from(pots("XXXYXX"), moved, variance=0.04, paler=PALER)
    assert still.widths[Factor.POT] < NAME_SD < found.widths[Factor.POT]
    assert found.effect(POT_Y).shift[0] == pytest.approx(3.0, abs=0.3)


def test_a_short_hold_is_expected_to_dye_paler_before_any_lot_says_so() -> None:
    learned = learned_from([{(None, ""): 1.0}], [(0, 0, 0)], variance=0.04, paler=PALER)
    shift = learned.effect(HOLD).shift
    assert sum(x * way for x, way in zip(shift, PALER, strict=True)) < 0.0


def test_lots_can_teach_the_other_way() -> None:
    steps = [-2.0, -1.0, 0.0, 1.0, 2.0] * 4
    lots: list[Features] = [{(None, ""): 1.0, (Factor.HOLD, ""): x} for x in steps]
    learned = learned_from(
        lots, [(0.5 * x, 0.0, 0.0) for x in steps], variance=0.04, paler=PALER
    )
    assert learned.effect(HOLD).shift[0] == pytest.approx(0.5, abs=0.05)


@pytest.mark.by_hand
def test_a_number_is_counted_in_thirds_of_what_is_usual() -> None:
    # Mean of 40 and 50 is 45, a step 15; 30 is one step down, of which 10/15 lie
    # below the least so far.
    lots = [PastLot(number="1", hold_min=40.0), PastLot(number="2", hold_min=50.0)]
    scale = scales_of(lots, [True, True])[Factor.HOLD]
    assert scale.steps(30.0) == pytest.approx(-1.0)
    assert scale.beyond(30.0) == pytest.approx(-10 / 15)
    assert scale.beyond(45.0) == scale.beyond(None) == 0.0
