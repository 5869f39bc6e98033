"""A number as it stands on a page, with how far it may be off."""

import pytest

from shadewright.core.uncertainty import Shape, bounded, exact
from shadewright.web.parts import measured_value


@pytest.mark.by_hand
def test_a_spread_is_said_in_the_unit_of_its_number_and_in_a_word() -> None:
    """A rectangle of ±0.05: 95 of 100 lie within 0.0475, which is 4.75 % of 1."""
    value = bounded(
        1.0, half_width=0.05, shape=Shape.RECTANGULAR, name="mark", source="mark"
    )
    shown = measured_value(value, "%")
    assert (shown.number, shown.spread, shown.unit) == ("1", "0.05", "%")
    assert shown.relative_spread == pytest.approx(0.0475, abs=1e-4)
    assert shown.how_sure == "fair"


def test_a_number_of_unknown_spread_says_nothing_of_it() -> None:
    shown = measured_value(exact(1.0), "%")
    assert (shown.spread, shown.relative_spread, shown.how_sure) == ("", None, "")
