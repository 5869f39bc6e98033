import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import XYZ, Lab, lab_of_xyz, xyz_of_lab
from tests.core.colour.oracles import colour

WHITE = XYZ(94.811, 100.0, 107.304)
shares = st.floats(0.0, 1.2)


def test_colour_science_agrees_from_black_to_white() -> None:
    draw = np.random.default_rng(1976)
    xyz = draw.uniform(0.0, 1.0, (500, 3)) ** 3 * np.array(WHITE)
    theirs = colour.XYZ_to_Lab(xyz / 100.0, colour.XYZ_to_xy(np.array(WHITE)))
    ours = [lab_of_xyz(row.tolist(), white=WHITE) for row in xyz]
    assert np.abs(np.array(ours) - theirs).max() < 1e-9


@given(shares, shares, shares)
def test_there_and_back_is_no_change(x: float, y: float, z: float) -> None:
    xyz = XYZ(x * WHITE.X, y * WHITE.Y, z * WHITE.Z)
    back = xyz_of_lab(lab_of_xyz(xyz, white=WHITE), white=WHITE)
    assert back == pytest.approx(xyz, abs=1e-9)


@pytest.mark.by_hand
def test_a_grey_by_hand() -> None:
    """Y/Yn = 0.125, ∛ = 0.5: L = 58 − 16 = 42; (6/29)³ apart all is straight."""
    grey = lab_of_xyz([part / 8 for part in WHITE], white=WHITE)
    assert grey == pytest.approx(Lab(42.0, 0.0, 0.0))
    assert lab_of_xyz((0.0, 0.0, 0.0), white=WHITE) == pytest.approx(Lab(0, 0, 0))


@pytest.mark.by_hand
def test_chroma_and_hue_by_hand() -> None:
    """3, 4, 5; tan h = 4/3 is 53.13°."""
    assert Lab(50, 3, 4).chroma == 5.0
    assert Lab(50, 3, 4).hue_degrees == pytest.approx(53.1301, abs=1e-4)
    assert Lab(50, 3, -4).hue_degrees == pytest.approx(360 - 53.1301, abs=1e-4)
    assert Lab(50, 0, 0).hue_degrees == 0.0
