"""Sharma's pairs in every step, and two other programs on 100 000 random pairs."""

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from shadewright.core.colour import Lab, ciede2000, ciede2000_arrays, ciede2000_terms
from tests.core.colour.oracles import Floats, colour, skimage_color
from tests.published_cases import PublishedCase, published

PAIRS = 100_000
ROUNDED = {"pair 21", "pair 22", "pair 23", "pair 24"}
ROUNDED_HALF = 0.0012  # their colours were rounded for the page, their steps not
# a subnormal b has no hue: its arctangent is nought
across = st.floats(-128, 128, allow_subnormal=False)
labs = st.builds(Lab, st.floats(0, 100), across, across)


@pytest.mark.parametrize("case", published("sharma2005", asks="ciede2000"))
def test_a_pair_of_sharma_comes_out_as_printed(case: PublishedCase) -> None:
    one, two = Lab(*case.inputs["one"]), Lab(*case.inputs["two"])
    assert case.agrees(ciede2000(one, two))
    assert case.agrees(ciede2000(two, one))
    rows = np.array([[one, two], [two, one]])
    for distance in ciede2000_arrays(rows[0], rows[1]):
        assert case.agrees(float(distance))


@pytest.mark.parametrize("case", published("sharma2005", asks="ciede2000"))
def test_each_step_of_sharma_comes_out_as_printed(case: PublishedCase) -> None:
    steps = case.inputs
    half = ROUNDED_HALF if case.id in ROUNDED else 5.0001e-5
    terms = ciede2000_terms(Lab(*steps["one"]), Lab(*steps["two"]))
    names = ("h_mean", "g", "t", "s_l", "s_c", "s_h")
    found = [getattr(terms, name) for name in names] + [-terms.r_t]
    printed = [steps[name] for name in names] + [steps["r_t"]]
    for index, lab in enumerate((terms.one, terms.two)):
        found += [lab.chroma, lab.hue_degrees]
        printed += [steps["chroma"][index], steps["hue"][index]]
    away = np.abs(np.array(found) - np.array(printed, dtype=float))
    assert away.max() <= half


@pytest.fixture(scope="module")
def pairs() -> tuple[Floats, Floats]:
    """Pairs far apart and close together, some of them grey."""
    draw = np.random.default_rng(2005)
    low, high = (0.0, -128.0, -128.0), (100.0, 128.0, 128.0)
    ones, others = draw.uniform(low, high, (2, PAIRS, 3))
    half = PAIRS // 2
    others[:half] = ones[:half] + draw.normal(0.0, 2.0, (half, 3))
    ones[::50, 1:] *= 0.01
    others[::50, 1:] *= 0.01
    ones[::500, 1:] = 0.0
    return ones, others


def test_colour_science_agrees_on_100_000_pairs(pairs: tuple[Floats, Floats]) -> None:
    theirs = colour.difference.delta_E_CIE2000(*pairs)
    assert np.abs(ciede2000_arrays(*pairs) - theirs).max() < 1e-6


def test_scikit_image_agrees_on_100_000_pairs(pairs: tuple[Floats, Floats]) -> None:
    theirs = skimage_color.deltaE_ciede2000(*pairs)
    assert np.abs(ciede2000_arrays(*pairs) - theirs).max() < 1e-6


def test_lightness_can_count_half(pairs: tuple[Floats, Floats]) -> None:
    ours = ciede2000_arrays(*pairs, k_lightness=2.0)
    theirs = skimage_color.deltaE_ciede2000(*pairs, kL=2)
    assert np.abs(ours - theirs).max() < 1e-6


def test_the_fast_one_is_the_plain_one(pairs: tuple[Floats, Floats]) -> None:
    ones, others = (each[::37] for each in pairs)
    plain = [ciede2000(Lab(*a), Lab(*b)) for a, b in zip(ones, others, strict=True)]
    assert np.abs(ciede2000_arrays(ones, others) - plain).max() < 1e-8


@given(labs, labs)
def test_the_way_back_is_as_long(one: Lab, other: Lab) -> None:
    assert ciede2000(one, other) == pytest.approx(ciede2000(other, one), abs=1e-9)


@given(labs)
def test_nothing_is_far_from_itself(lab: Lab) -> None:
    assert ciede2000(lab, lab) == 0.0
    assert ciede2000_arrays(np.array(lab), np.array(lab)) == 0.0


@example(Lab(0.0, -1.0, 0.0), Lab(0.0, 1.0, -1e-31))  # 180° and just below 360°
@example(Lab(0.0, -1.0, 1e-31), Lab(0.0, 1.0, 1e-31))  # both just above the axis
@given(labs, labs)
def test_the_fast_one_follows_to_any_corner(one: Lab, other: Lab) -> None:
    fast = float(ciede2000_arrays(np.array(one), np.array(other)))
    assert fast == pytest.approx(ciede2000(one, other), abs=1e-6)


@pytest.mark.parametrize("a", [2.49, 60.0])
@pytest.mark.parametrize("b", [-0.001, 0.0, 31.7])
def test_exactly_opposite_hues_take_the_plain_mean(a: float, b: float) -> None:
    """Row 10 of the paper, at other places: no rounding decides."""
    one, two = Lab(50.0, a, b), Lab(50.0, -a, -b)
    hues = (one.hue_degrees, two.hue_degrees)
    mean = ciede2000_terms(one, two).h_mean
    assert abs(mean - (min(hues) + 90.0)) < 30.0
    fast = float(ciede2000_arrays(np.array(one), np.array(two)))
    assert fast == pytest.approx(ciede2000(one, two), abs=1e-9)
    assert fast == pytest.approx(ciede2000(two, one), abs=1e-9)


def test_shapes_are_broadcast() -> None:
    standard = np.array([50.0, 10.0, 10.0])
    found = ciede2000_arrays(standard, np.zeros((4, 2, 3)))
    assert found.shape == (4, 2)
    assert ciede2000_arrays(np.zeros((0, 3)), standard).shape == (0,)
