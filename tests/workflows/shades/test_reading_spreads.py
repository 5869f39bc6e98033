"""How far off a reading usually is."""

from math import pi, sqrt

import pytest

from shadewright.core.colour import Lab
from shadewright.workflows.shades.kinds import ReadBy
from shadewright.workflows.shades.reading_spreads import usually_off

GREY, VIVID = Lab(50.0, 0.0, 0.0), Lab(70.0, 10.0, 65.0)


@pytest.mark.by_hand
def test_on_a_mid_grey_it_is_the_mean_length_of_a_normal_step() -> None:
    """At L 50 on grey S_L = 1 and S_C = S_H = 1; but a counts 1.5 there (G = 0.5).

    Per axis sd/√3: the mean length of steps (1, 1.5, 1) s lies between the mean of
    three equal ones, 2 √(2/π) s = 1.596 s, and 1.5 times that.
    """
    off = usually_off(GREY, ReadBy.METER, sd=sqrt(3.0) * 0.2, repeat=1)
    assert off is not None
    assert 2.0 * sqrt(2.0 / pi) * 0.2 < off < 1.5 * 2.0 * sqrt(2.0 / pi) * 0.2


def test_four_readings_are_half_as_far_off_as_one() -> None:
    one = usually_off(GREY, ReadBy.METER, sd=1.2, repeat=1)
    four = usually_off(GREY, ReadBy.METER, sd=1.2, repeat=4)
    assert one == pytest.approx(2.0 * (four or 0.0), rel=0.02)


def test_many_readings_of_a_meter_are_not_surer_than_a_fit_takes_them_for() -> None:
    twenty = usually_off(GREY, ReadBy.METER, sd=0.1, repeat=20)
    assert twenty == usually_off(GREY, ReadBy.METER, sd=0.3, repeat=1)


def test_on_a_vivid_colour_the_same_error_is_seen_less() -> None:
    grey = usually_off(GREY, ReadBy.EYE, sd=None, repeat=1)
    vivid = usually_off(VIVID, ReadBy.EYE, sd=None, repeat=1)
    assert vivid is not None
    assert grey is not None
    assert vivid < 0.7 * grey


def test_of_a_chart_nobody_knows() -> None:
    assert usually_off(GREY, ReadBy.CHART, sd=None, repeat=1) is None
