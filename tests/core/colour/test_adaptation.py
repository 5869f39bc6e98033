import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import XYZ, Lab, adapted_lab, adapted_xyz
from tests.core.colour.oracles import colour

D50 = XYZ(96.422, 100.0, 82.521)
D65 = XYZ(95.047, 100.0, 108.883)


def test_colour_science_agrees_from_d50_to_d65() -> None:
    xyz = np.random.default_rng(50).uniform(1.0, 90.0, (200, 3))
    theirs = colour.adaptation.chromatic_adaptation_VonKries(
        xyz, np.array(D50), np.array(D65), transform="Bradford"
    )
    ours = [adapted_xyz(row.tolist(), from_white=D50, to_white=D65) for row in xyz]
    assert np.abs(np.array(ours) - theirs).max() < 1e-9


@given(st.floats(0, 100), st.floats(-60, 60), st.floats(-60, 60))
def test_there_and_back_is_no_change(light: float, a: float, b: float) -> None:
    lab = Lab(light, a, b)
    seen = adapted_lab(lab, from_white=D50, to_white=D65)
    back = adapted_lab(seen, from_white=D65, to_white=D50)
    assert back == pytest.approx(lab, abs=1e-9)


@pytest.mark.parametrize("light", [0.0, 35.0, 100.0])
def test_greys_stay_grey(light: float) -> None:
    grey = Lab(light, 0.0, 0.0)
    assert adapted_lab(grey, from_white=D50, to_white=D65) == pytest.approx(grey)
