"""The share of dye left, by two cups: thinning, photos, what tells nothing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.cups import depth_on_yarn_percent, left_percent
from shadewright.errors import UnreadableError


@pytest.mark.by_hand
def test_what_is_on_the_yarn() -> None:
    on_yarn = depth_on_yarn_percent(depth_percent=1.2, left_percent=25.0)
    assert on_yarn == pytest.approx(0.9)  # 1.2 x 0.75


@given(
    first=st.tuples(*[st.floats(0.05, 0.8)] * 3),
    share=st.floats(0.0, 1.0),
    lamp=st.tuples(*[st.floats(0.3, 1.0)] * 3),
)
def test_a_thinned_cup_says_how_far_it_was_thinned(
    first: tuple[float, ...], share: float, lamp: tuple[float, ...]
) -> None:
    """Thinned to a share x, what a cup lets through is the first's to the power x."""
    strong = [one * white for one, white in zip(first, lamp, strict=True)]
    weak = [one**share * white for one, white in zip(first, lamp, strict=True)]
    found = left_percent(first=strong, now=weak, white=lamp)
    assert found == pytest.approx(100 * share, abs=1e-6)


@pytest.mark.by_hand
def test_more_than_at_first_is_all_of_it_and_paler_than_white_is_nothing() -> None:
    white = [1.0] * 3
    assert left_percent(first=[0.5] * 3, now=[0.1] * 3, white=white) == 100.0
    assert left_percent(first=[0.5] * 3, now=[1.1] * 3, white=white) == 0.0


@pytest.mark.parametrize("cup", [0.99, 0.01])
def test_a_first_cup_that_tells_nothing_is_refused(cup: float) -> None:
    with pytest.raises(UnreadableError):
        left_percent(first=[cup] * 3, now=[1.0] * 3, white=[1.0] * 3)
