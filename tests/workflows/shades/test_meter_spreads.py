"""What one reading of a meter is worth."""

import pytest

from shadewright.errors import InputError
from shadewright.workflows.shades.meter_spreads import spread_of_spot


@pytest.mark.by_hand
def test_from_five_readings_by_hand() -> None:
    # Mean 50, 10, 20; squares 4 · 0.2² = 0.16, by 4: 0.04.
    lines = "50.2 10 20\n49,8 10 20\n50 10.2 20\n50 9.8 20\n50 10 20"
    assert spread_of_spot(lines) == 0.2


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("50 10 20\n50 10 20.1", "at least 5 readings; got 2"),
        ("50 10 20\n" * 5, "The spread of these readings must be from"),
        ("50 10 20\n" * 4 + "50 10 60", "look for a slip"),
        ("50 10 20\n" * 4 + "50 10", "Reading 5, “50 10”, cannot be read"),
    ],
)
def test_what_tells_no_spread_is_refused(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        spread_of_spot(text)
    assert sentence in caught.value.sentence.replace("\u00a0", " ")
    assert caught.value.argument == "spot"
