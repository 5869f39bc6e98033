"""Liquor ratios in their three spellings."""

import pytest

from shadewright.core.quantities import liquor_ratio_ml_per_g
from shadewright.errors import StudioError


@pytest.mark.parametrize("text", ["30", "1:30", "30:1", " 1 : 30 ", "30,0"])
def test_a_ratio_is_read(text: str) -> None:
    assert liquor_ratio_ml_per_g(text, name="Liquor ratio") == 30.0


def test_one_to_one_is_a_ratio() -> None:
    assert liquor_ratio_ml_per_g("1:1", name="Liquor ratio") == 1.0


@pytest.mark.parametrize("text", ["", "0", "-3", "2:60", "1:2:3", "30 l", "1:", "a"])
def test_what_is_no_ratio_is_refused(text: str) -> None:
    with pytest.raises(StudioError) as refused:
        liquor_ratio_ml_per_g(text, name="Liquor ratio", argument="ratio")
    assert refused.value.argument == "ratio"
