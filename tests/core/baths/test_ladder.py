"""The strength test: little skeins with more and less of fresh stock."""

from math import hypot, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.doses import LEAST_DOSE_ML
from shadewright.core.baths.ladder import (
    RUNGS_PERCENT,
    ladder,
    ladder_reading,
    ladder_strength_percent,
)
from shadewright.core.uncertainty import Term, Value, exact
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
def test_five_grams_at_one_per_cent() -> None:
    # 5 g at 1 % want 0.05 g: 5 ml of a 1 % stock, 50 ml of it thinned tenfold.
    # Fresh in all (0.8 + 0.9 + 1.0 + 1.1) · 5 = 19 ml, with 5 % to spare 19.95 ml: 20.
    test = ladder(fresh_percent=1.0, old_percent=1.0)
    assert [rung.volume_ml for rung in test.rungs] == pytest.approx([40, 45, 50, 55])
    assert test.tested_ml == pytest.approx(50)
    assert test.fold == 10
    assert test.fresh_ml == 20
    assert "thin both stocks tenfold" in test.warnings[0]


@pytest.mark.by_hand
def test_stocks_of_different_strength_get_different_ml() -> None:
    # 0.05 g are 50 ml of 0.1 % and 25 ml of 0.2 %: nothing needs thinning.
    test = ladder(fresh_percent=0.1, old_percent=0.2)
    assert [rung.volume_ml for rung in test.rungs] == pytest.approx([40, 45, 50, 55])
    assert test.tested_ml == pytest.approx(25)
    assert test.fold == 1
    assert not test.warnings


def test_what_cannot_be_measured_even_thinned_is_said() -> None:
    test = ladder(fresh_percent=20.0, old_percent=1.0)
    assert "thin both more" in test.warnings[0]


@pytest.mark.by_hand
def test_between_two_rungs() -> None:
    # Between 80 and 90: 0.85 of 1 %, half a rung = 0.05, as a rectangle 0.05/√3.
    strength = ladder_strength_percent(
        reading=ladder_reading(low_percent=80, high_percent=90),
        fresh_percent=exact(1.0),
        fresh_ml=exact(5.0),
        old_ml=exact(5.0),
    )
    assert strength.value == pytest.approx(0.85)
    assert strength.u == pytest.approx(0.05 / sqrt(3))


@pytest.mark.by_hand
def test_both_pours_and_the_fresh_stock_widen_it() -> None:
    def read(value: float, rel: float, source: str) -> Value:
        return Value(
            value=value, terms=(Term(name=source, source=source, u=rel * value),)
        )

    strength = ladder_strength_percent(
        reading=ladder_reading(low_percent=90, high_percent=90),
        fresh_percent=read(1.04, 0.01, "fresh bottle"),
        fresh_ml=read(48.0, 0.015, "pour of the fresh"),
        old_ml=read(50.0, 0.015, "pour of the old"),
        fresh_yarn_g=read(5.0, 0.02, "fresh skein"),
        old_yarn_g=read(5.0, 0.02, "old skein"),
    )
    assert strength.value == pytest.approx(0.9 * 1.04 * 48 / 50)
    reading = 0.05 / sqrt(3) / 0.9
    expected = hypot(reading, 0.01, 0.015, 0.015, 0.02, 0.02)
    assert strength.u_rel == pytest.approx(expected)


@pytest.mark.parametrize(("low", "high"), [(80, 100), (90, 80), (85, 85), (70, 80)])
def test_only_a_rung_or_two_neighbours_are_a_reading(low: float, high: float) -> None:
    with pytest.raises(OutOfRangeError, match="two side by side"):
        ladder_reading(low_percent=low, high_percent=high)


@given(fresh=st.floats(0.05, 4), old=st.floats(0.05, 4))
def test_law_every_dose_can_be_measured_or_it_is_said(fresh: float, old: float) -> None:
    test = ladder(fresh_percent=fresh, old_percent=old)
    least = min(test.tested_ml, *(rung.volume_ml for rung in test.rungs))
    assert least >= LEAST_DOSE_ML * (1 - 1e-9) or "thin both more" in test.warnings[0]
    assert [rung.share_percent for rung in test.rungs] == list(RUNGS_PERCENT)


@given(old=st.floats(0.05, 4), factor=st.sampled_from(RUNGS_PERCENT))
def test_law_the_rung_it_matches_is_its_share_of_the_label(
    old: float, factor: float
) -> None:
    test = ladder(fresh_percent=1.0, old_percent=old)
    strength = ladder_strength_percent(
        reading=ladder_reading(low_percent=factor, high_percent=factor),
        fresh_percent=exact(1.0),
        fresh_ml=exact(test.rungs[2].volume_ml),
        old_ml=exact(test.tested_ml),
    )
    assert strength.value == pytest.approx(old * factor / 100)
