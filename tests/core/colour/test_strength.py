import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import StrengthBy, relative_strength_percent, weight_table
from shadewright.errors import OutOfRangeError
from tests.core.colour.oracles import Floats

BANDS = np.arange(400.0, 701.0, 10.0)
GROUND = 0.75 - 0.3 * np.exp(-(BANDS - 400.0) / 60.0)
DYE = 4.0 * np.exp(-(((BANDS - 520.0) / 45.0) ** 2)) + 0.02
WEIGHTS = weight_table()
every_way = pytest.mark.parametrize("by", StrengthBy)


def dyed(depth: float) -> Floats:
    """Return what the yarn reflects with so much of the dye, by Kubelka and Munk."""
    ks = (1.0 - GROUND) ** 2 / (2.0 * GROUND) + depth * DYE
    reflectance: Floats = 1.0 + ks - np.sqrt(ks * ks + 2.0 * ks)
    return reflectance


def strength(depth: float, by: StrengthBy) -> float:
    """Return the strength of a swatch against one of depth 1."""
    return relative_strength_percent(
        dyed(depth), standard=dyed(1.0), ground=GROUND, by=by, weights=WEIGHTS
    )


@every_way
@given(depth=st.floats(0.05, 3.0))
def test_so_much_more_dye_is_so_much_stronger(by: StrengthBy, depth: float) -> None:
    assert strength(depth, by) == pytest.approx(100.0 * depth, rel=1e-6)


@every_way
def test_a_tenth_more_is_110_percent(by: StrengthBy) -> None:
    assert strength(1.1, by) == pytest.approx(110.0)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("reflectance", "ks"), [(0.2, 1.6), (0.05, 9.025), (0.5, 0.25)]
)
def test_ratio_of_k_over_s_by_hand(reflectance: float, ks: float) -> None:
    """(1 − 0.2)²/0.4 = 1.6; 0.95²/0.1 = 9.025; 0.25/1 = 0.25; white yarn has none."""
    found = relative_strength_percent(
        np.full(31, reflectance),
        standard=np.full(31, 0.5),
        ground=np.ones(31),
        by=StrengthBy.SUM,
        weights=WEIGHTS,
    )
    assert found == pytest.approx(100.0 * ks / 0.25)


def test_the_three_part_where_the_shade_does() -> None:
    """A dull second dye adds off the peak: SWL sees nothing of it, SUM most."""
    ks = (1.0 - dyed(1.0)) ** 2 / (2.0 * dyed(1.0)) + 0.5 * (BANDS > 600.0)
    other = 1.0 + ks - np.sqrt(ks * ks + 2.0 * ks)
    found = {
        by: relative_strength_percent(
            other, standard=dyed(1.0), ground=GROUND, by=by, weights=WEIGHTS
        )
        for by in StrengthBy
    }
    assert found[StrengthBy.SWL] == pytest.approx(100.0)
    assert 100.5 < found[StrengthBy.WSUM] < found[StrengthBy.SUM]


def test_a_standard_without_dye_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        relative_strength_percent(
            dyed(1.0),
            standard=GROUND,
            ground=GROUND,
            by=StrengthBy.SUM,
            weights=WEIGHTS,
        )
    assert "above that of the bare yarn" in str(refused.value)


@pytest.mark.parametrize("wrong", [0.0, -0.1, 60.0])
def test_a_reflectance_that_is_none_is_refused(wrong: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        relative_strength_percent(
            np.full(31, wrong),
            standard=dyed(1.0),
            ground=GROUND,
            by=StrengthBy.SUM,
            weights=WEIGHTS,
        )
    assert "Reflectance must be above 0 and at most 1" in str(refused.value)
