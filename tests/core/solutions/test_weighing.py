"""What a coarse scale can weigh."""

import pytest

from shadewright.core.quantities import balance
from shadewright.core.solutions import powder_on_scale
from shadewright.core.solutions.weighing import larger_batch_advice
from shadewright.core.uncertainty.tools import mass_read
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


@pytest.mark.by_hand
def test_twice_the_stock_is_weighed_half_as_unsurely() -> None:
    """A triangle of ±0.1 g: 95 of 100 within 0.1 (1 − √0.05) = 0.0776 g: 7.8 % of 1."""
    kitchen = balance("0.1g", name="Scale")
    read = mass_read(kitchen, 1.0, role="powder", key="tool 1")
    said = larger_batch_advice(powder=read, volume_ml=100.0).replace("\u00a0", " ")
    assert said == (
        "This weighing alone: ± 8 %. Make 200 ml instead: ± 4 %, with the same scale."
    )
    heavy = mass_read(kitchen, 10.0, role="powder", key="tool 1")
    assert not larger_batch_advice(powder=heavy, volume_ml=1000.0)
