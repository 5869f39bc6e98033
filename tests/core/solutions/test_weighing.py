"""What a coarse scale can weigh."""

import pytest

from shadewright.core.solutions import powder_on_scale
from shadewright.errors import OutOfRangeError


def test_a_fine_scale_needs_no_warning() -> None:
    shown = powder_on_scale(powder_g=5.37, step_g=0.1, volume_ml=537.0)
    assert shown.powder_g == 5.4
    assert not shown.warning


@pytest.mark.by_hand
def test_a_coarse_scale_is_met_with_another_volume() -> None:
    # 2.4 g shown as 2 g: 240 ml × 2/2.4 = 200 ml keeps the strength.
    shown = powder_on_scale(powder_g=2.4, step_g=1.0, volume_ml=240.0)
    assert shown.powder_g == 2.0
    assert shown.make_up_to_ml == pytest.approx(200.0)
    assert "200\u00a0ml" in shown.warning


@pytest.mark.by_hand
def test_less_than_a_step_is_refused_with_what_is_possible() -> None:
    # 0.5 g in 50 ml: a whole gram makes 100 ml.
    with pytest.raises(OutOfRangeError, match="at least 100\u00a0ml"):
        powder_on_scale(powder_g=0.5, step_g=1.0, volume_ml=50.0)
