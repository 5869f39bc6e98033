import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import Lab, cmc
from tests.core.colour.oracles import skimage_color

labs = st.builds(Lab, st.floats(0, 100), st.floats(-128, 128), st.floats(-128, 128))


@pytest.mark.parametrize("lightness", [1.0, 2.0])
def test_scikit_image_agrees(lightness: float) -> None:
    draw = np.random.default_rng(1984)
    ones = draw.uniform((0, -100, -100), (100, 100, 100), (3000, 3))
    others = ones + draw.normal(0.0, 3.0, ones.shape)
    theirs = skimage_color.deltaE_cmc(ones, others, kL=lightness)
    ours = [
        cmc(Lab(*a), Lab(*b), lightness=lightness)
        for a, b in zip(ones, others, strict=True)
    ]
    assert np.abs(np.array(ours) - theirs).max() < 1e-9


@pytest.mark.parametrize(
    ("standard", "sample", "lightness", "expected"),
    [
        (Lab(50, 20, 20), Lab(52, 22, 18), 2, 3.482736),
        (Lab(50, 20, 20), Lab(52, 22, 18), 1, 3.8291),
        (Lab(20, 5, -10), Lab(21, 6, -11), 2, 1.452535),
        (Lab(20, 5, -10), Lab(21, 6, -11), 1, 2.0382),
    ],
)
def test_values_on_which_four_programs_agree(
    standard: Lab, sample: Lab, lightness: float, expected: float
) -> None:
    """Given by colour-science, scikit-image, coloraide and culori; printed nowhere."""
    found = cmc(standard, sample, lightness=lightness)
    assert found == pytest.approx(expected, abs=5e-5)


@given(labs)
def test_nothing_is_far_from_itself(lab: Lab) -> None:
    assert cmc(lab, lab) == 0.0


def test_the_standard_comes_first() -> None:
    pale, deep = Lab(80, 5, 5), Lab(75, 30, 30)
    assert cmc(pale, deep) > 2 * cmc(deep, pale)


@pytest.mark.by_hand
def test_a_dark_standard_has_one_weight_for_lightness() -> None:
    """S_L = 0.511 below L 16: 1.022 / (1 · 0.511) = 2."""
    found = cmc(Lab(10, 0, 0), Lab(11.022, 0, 0), lightness=1.0)
    assert found == pytest.approx(2.0)
