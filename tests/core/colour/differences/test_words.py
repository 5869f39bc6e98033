import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import Lab, difference_words
from shadewright.core.colour.differences.words import UNSEEN

RED, YELLOW = Lab(45, 55, 5), Lab(75, 5, 70)
GREEN, BLUE = Lab(50, -45, 5), Lab(40, 0, -45)
labs = st.builds(Lab, st.floats(0, 100), st.floats(-128, 128), st.floats(-128, 128))


@pytest.mark.parametrize(
    ("standard", "sample", "words"),
    [
        (RED, Lab(47, 55, 5), "lighter"),
        (RED, Lab(44.4, 55, 5), "a trace darker"),
        (RED, Lab(36, 55, 5), "much darker"),
        (RED, Lab(45, 53, 12), "yellower"),
        (RED, Lab(45, 54, -2), "bluer"),
        (RED, Lab(45, 59.5, 5.4), "a little brighter"),
        (RED, Lab(45, 44, 4), "duller"),
        (YELLOW, Lab(75, -4, 70), "much greener"),
        (YELLOW, Lab(75, 10, 69.5), "redder"),
        (GREEN, Lab(50, -44.8, -1), "bluer"),
        (GREEN, Lab(50, -44, 11), "yellower"),
        (BLUE, Lab(40, 5, -44.7), "redder"),
        (BLUE, Lab(40, -5, -44.7), "greener"),
        (Lab(50, 0, 0), Lab(50, 1.5, 0), "redder"),
        (Lab(50, 0, 0), Lab(50, 0, -1.2), "a little bluer"),
        (Lab(50, 0, 0), Lab(10, 0, 0), "very much darker"),
        (RED, RED, "no difference to be seen"),
        (RED, Lab(45.1, 55, 5), "no difference to be seen"),
    ],
)
def test_a_difference_has_its_word(standard: Lab, sample: Lab, words: str) -> None:
    assert difference_words(standard, sample).split(", ")[0] == words


@pytest.mark.parametrize(
    ("step", "words"),
    [
        (0.29, "no difference to be seen"),
        (0.31, "a trace lighter"),
        (0.69, "a trace lighter"),
        (0.71, "a little lighter"),
        (1.49, "a little lighter"),
        (1.51, "lighter"),
        (3.99, "lighter"),
        (4.01, "much lighter"),
        (9.99, "much lighter"),
        (10.01, "very much lighter"),
    ],
)
def test_each_amount_has_its_limits(step: float, words: str) -> None:
    """About L 50 a step of lightness counts as it is."""
    half = step / 2
    assert difference_words(Lab(50 - half, 0, 0), Lab(50 + half, 0, 0)) == words


@pytest.mark.parametrize(("chroma", "word"), [(3.99, "redder"), (4.01, "brighter")])
def test_a_grey_is_a_grey_up_to_its_chroma(chroma: float, word: str) -> None:
    stretch = 1.5  # of a near grey, (1 + G)
    a = chroma / stretch
    assert word in difference_words(Lab(50, a, 0), Lab(50, a + 1, 0))


@pytest.mark.by_hand
def test_a_step_beside_grey_counts_by_its_chroma() -> None:
    """C = 3.9 and 5.7, mean 4.8: S_C = 1.216, so 1.8 counts as 1.48, a little."""
    words = difference_words(Lab(50, 3.9 / 1.5, 0), Lab(50, 5.7 / 1.5, 0))
    assert words == "a little redder"


def test_the_greatest_part_comes_first() -> None:
    words = difference_words(RED, Lab(39, 54.8, 7))
    assert words == "much darker, a little yellower"


OPPOSITES = {
    "lighter": "darker",
    "brighter": "duller",
    "redder": "greener",
    "yellower": "bluer",
}


@given(st.floats(20, 80), st.floats(-1, 1), st.floats(-1, 1), st.floats(-9, 9))
def test_beside_grey_the_way_back_has_the_other_words(
    light: float, a: float, b: float, step: float
) -> None:
    one, two = Lab(light, a, b), Lab(light + step, b, a)
    there, back = difference_words(one, two), difference_words(two, one)
    for word, other in OPPOSITES.items():
        there = there.replace(word, "#").replace(other, word).replace("#", other)
    assert there == back


@given(labs, labs)
def test_there_is_always_something_to_say(one: Lab, other: Lab) -> None:
    words = difference_words(one, other)
    assert words
    assert UNSEEN < 1.0
