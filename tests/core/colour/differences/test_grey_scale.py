import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import Lab, grey_scale
from tests.published_cases import PublishedCase, published

labs = st.builds(Lab, st.floats(0, 100), st.floats(-128, 128), st.floats(-128, 128))


@pytest.mark.parametrize("case", published("colour", asks="grey_scale"))
def test_the_greys_of_the_scale_have_their_grades(case: PublishedCase) -> None:
    distance = case.inputs["distance"]
    found = grey_scale(Lab(40, 0, 0), Lab(40 + distance, 0, 0))
    assert case.agrees(found.rating)
    assert found.step == case.inputs["step"]


@pytest.mark.by_hand
def test_a_change_of_colour() -> None:
    """C 36.0555 to 30, mean 33.0278; ΔC −6.0555, ΔH² = 40 − 36.6692 = 3.3308.

    ΔC_F = −6.0555 / (1 + 0.660556²) = −4.2159; ΔH_F = 1.8250 / 1.109085 = 1.6455;
    ΔE_F = 4.5257; GS = 5 − log2(4.5257 / 0.85) = 2.5874.
    """
    found = grey_scale(Lab(50, 30, 20), Lab(50, 24, 18))
    assert found.distance == pytest.approx(4.5257, abs=5e-5)
    assert found.rating == pytest.approx(2.5874, abs=5e-5)
    assert not found.is_vivid_blue


@given(labs, labs)
def test_a_grade_lies_between_1_and_5(one: Lab, other: Lab) -> None:
    assert 1.0 <= grey_scale(one, other).rating <= 5.0
    assert grey_scale(one, one).rating == 5.0


@pytest.mark.parametrize(
    ("limit", "better", "worse"),
    [
        (0.40, "5", "4-5"),
        (1.25, "4-5", "4"),
        (2.10, "4", "3-4"),
        (2.95, "3-4", "3"),
        (4.10, "3", "2-3"),
        (5.80, "2-3", "2"),
        (8.20, "2", "1-2"),
        (11.60, "1-2", "1"),
    ],
)
def test_each_grade_has_its_limits(limit: float, better: str, worse: str) -> None:
    """The table of ISO 105-A05, from memory."""
    steps = [
        grey_scale(Lab(40, 0, 0), Lab(40 + limit + away, 0, 0)).step
        for away in (-0.005, 0.005)
    ]
    assert steps == [better, worse]


def test_vivid_blue_is_marked() -> None:
    assert grey_scale(Lab(40, 10, -56), Lab(40, 8, -50)).is_vivid_blue


@pytest.mark.parametrize("lab", [Lab(40, 1, -3), Lab(40, 50, 20), Lab(40, -50, -5)])
def test_other_colours_are_not(lab: Lab) -> None:
    assert not grey_scale(lab, lab).is_vivid_blue
