"""Water that has gone, by weighing the bottle."""

from math import hypot, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions.keeping import evaporated, weight_lost_g
from shadewright.core.uncertainty import Term, Value, exact
from shadewright.errors import OutOfRangeError


def loss(before_g: float, now_g: float, step_g: float = 1.0) -> Value:
    return weight_lost_g(
        before_g=before_g, now_g=now_g, step_g=step_g, source="weighing T7K"
    )


@pytest.mark.by_hand
def test_sixty_of_six_hundred() -> None:
    # 600 ml of 1 % hold 6 g; 540 ml are left: 600/540 = 1.111 %.
    gone = evaporated(
        lost_g=exact(60 * 0.9982),
        volume_ml=exact(600),
        strength_percent=exact(1),
        step_g=1,
    )
    assert gone.lost_ml.value == pytest.approx(60, rel=1e-4)
    assert gone.volume_ml.value == pytest.approx(540, rel=1e-4)
    assert gone.strength_percent.value == pytest.approx(600 / 540, rel=1e-4)
    assert gone.is_seen


@pytest.mark.by_hand
def test_spread_of_the_loss_and_of_what_it_does() -> None:
    # d = 1 g: u = 1/√6 = 0.41 g of 8 g; on 392 ml that is 0.1 % of the strength.
    lost = loss(412, 404)
    assert lost.u == pytest.approx(1 / sqrt(6))
    gone = evaporated(
        lost_g=lost, volume_ml=exact(400), strength_percent=exact(1), step_g=1
    )
    ml = 0.408248 / 0.9982
    assert gone.strength_percent.u_rel == pytest.approx(ml / 391.986, rel=1e-3)


@pytest.mark.by_hand
def test_a_mark_filled_wrong_counts_once() -> None:
    # c = m/V and V share the mark's error; the dye c V does not have it at all. So
    # what is left of it comes from V' = V − w alone: u(V)/V'.
    mark = Term(name="mark", source="mark", u=5.0)
    strength = Value(value=1.0, terms=(Term(name="mark", source="mark", u=-5.0 / 500),))
    gone = evaporated(
        lost_g=exact(99.82),
        volume_ml=Value(value=500.0, terms=(mark,)),
        strength_percent=strength,
        step_g=1,
    )
    assert gone.strength_percent.u_rel == pytest.approx(5 / 400, rel=1e-3)


def test_a_step_heavier_is_no_loss_and_more_is_refused() -> None:
    assert loss(412, 413).value == 0
    with pytest.raises(OutOfRangeError, match="at most the 412"):
        loss(412, 415)


def test_no_more_goes_than_there_was() -> None:
    with pytest.raises(OutOfRangeError, match="less than the 50"):
        evaporated(
            lost_g=exact(60),
            volume_ml=exact(50),
            strength_percent=exact(1),
            step_g=1,
        )


def test_a_loss_within_a_step_is_not_seen() -> None:
    args = {"volume_ml": exact(400), "strength_percent": exact(1), "step_g": 1.0}
    assert not evaporated(lost_g=loss(412, 411), **args).is_seen  # type: ignore[arg-type]
    assert evaporated(lost_g=loss(412, 410), **args).is_seen  # type: ignore[arg-type]


@given(
    volume_ml=st.floats(50, 2000),
    percent=st.floats(0.01, 5),
    share=st.floats(0, 0.9),
    u=st.floats(0, 0.05),
)
def test_law_the_dye_stays(
    volume_ml: float, percent: float, share: float, u: float
) -> None:
    strength = Value(
        value=percent, terms=(Term(name="powder", source="powder", u=u * percent),)
    )
    lost = loss(5000, 5000 - share * volume_ml)
    gone = evaporated(
        lost_g=lost, volume_ml=exact(volume_ml), strength_percent=strength, step_g=1
    )
    dye = gone.strength_percent.value * gone.volume_ml.value
    assert dye == pytest.approx(percent * volume_ml)
    assert gone.strength_percent.value >= percent * (1 - 1e-9)
    expected = hypot(u, lost.u / 0.998203 / gone.volume_ml.value)
    assert gone.strength_percent.u_rel == pytest.approx(expected, rel=1e-4, abs=1e-9)
