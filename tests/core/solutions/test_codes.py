"""A bottle's short code."""

from itertools import count
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions.codes import (
    CODE_DIGITS,
    CODE_LETTERS,
    typed_code,
    unused_code,
)
from shadewright.errors import OutOfRangeError

SHORT = [a + d + b for a in CODE_LETTERS for d in CODE_DIGITS for b in CODE_LETTERS]
ONE = Random(1)  # ruff: ignore[suspicious-non-cryptographic-random-usage] - a draw
ALIKE = ("0O", "1I", "2Z", "5S", "8B")


class Counting:
    """Draws 0, 1, 2, ... in turn."""

    def __init__(self) -> None:
        self.numbers = count()

    def randrange(self, stop: int, /) -> int:
        return next(self.numbers) % stop


@pytest.mark.by_hand
def test_there_are_as_many_as_the_chapter_says() -> None:
    assert len(set(SHORT)) == 2205  # 21 letters × 5 digits × 21 letters


@pytest.mark.parametrize("pair", ALIKE)
def test_no_sign_has_a_look_alike(pair: str) -> None:
    signs = set(CODE_LETTERS + CODE_DIGITS)
    assert len(signs & set(pair)) == 0


@given(numbers=st.randoms(), number=st.integers(min_value=0, max_value=1000))
def test_law_a_drawn_code_is_new_and_reads_back(numbers: Random, number: int) -> None:
    taken = SHORT[:number]
    code = unused_code(taken=taken, numbers=numbers)
    assert code not in taken
    assert len(code) == 3
    assert typed_code(code) == code
    assert typed_code(f" {code.lower()[:2]}-{code.lower()[2:]} ") == code


def test_a_taken_code_is_passed_over() -> None:
    first = unused_code(taken=[], numbers=Counting())
    assert first == "A4D"  # letter 0, digit 1, letter 2
    assert unused_code(taken=[first], numbers=Counting()) != first


def test_a_crowded_shelf_gets_a_fourth_letter() -> None:
    half = SHORT[: len(SHORT) // 2]
    assert len(unused_code(taken=half, numbers=ONE)) == 3
    crowded = unused_code(taken=SHORT[: len(SHORT) // 2 + 1], numbers=ONE)
    assert len(crowded) == 4
    assert typed_code(crowded) == crowded


@pytest.mark.parametrize(
    "text",
    ["", "T", "T7", "77K", "TKK", "T7K7", "T7KAA", "O7K", "T0K", "T5K", "<b>", "т7к"],
)
def test_what_is_no_code_is_refused(text: str) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        typed_code(text)
    assert "letter, digit, letter" in refused.value.sentence
    assert refused.value.argument == "code"


def test_a_long_text_is_not_echoed_whole() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        typed_code("x" * 500)
    assert "x" * 21 not in refused.value.sentence
