"""Against the numbers of colour-science's own examples, and by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import (
    Lab,
    additive_metamerism,
    multiplicative_metamerism,
    weight_table,
)
from shadewright.core.colour.spectra import Light
from tests.core.colour.oracles import colour

labs = st.builds(Lab, st.floats(0, 100), st.floats(-99, 99), st.floats(-99, 99))


def test_additive_as_colour_science_has_it() -> None:
    """Its example after ISO 18314-4; its ratio of Lab is left out: a may be nought."""
    lab = {
        "standard_reference": Lab(39.0908, -21.3269, 22.6657),
        "standard_test": Lab(38.17781, -17.4939, 21.0618),
        "sample_reference": Lab(38.83253, -19.8787, 20.0453),
        "sample_test": Lab(37.9013, -19.56327, 16.9346),
    }
    assert additive_metamerism(**lab) == pytest.approx(3.8267581, abs=5e-8)
    theirs = colour.difference.Lab_to_metamerism_index(
        lab["sample_test"],
        lab["standard_test"],
        lab["sample_reference"],
        lab["standard_reference"],
        correction="additive",
        method="CIE 1976",
    )
    assert additive_metamerism(**lab) == pytest.approx(float(theirs))


def test_multiplicative_as_colour_science_has_it() -> None:
    white = weight_table(light=Light.A).white
    xyz = {
        "standard_reference": (7.6576, 10.7116, 5.0731),
        "standard_test": (8.96442, 10.1878, 1.6663),
        "sample_reference": (7.6933, 10.5616, 5.54474),
        "sample_test": (8.56438, 10.0324, 1.9315),
    }
    ours = multiplicative_metamerism(**xyz, white_test=white)
    theirs = colour.difference.XYZ_to_metamerism_index(
        *([part / 100 for part in xyz[name]] for name in THEIR_ORDER),
        correction="multiplicative",
        method="CIE 1976",
        illuminant=colour.XYZ_to_xy(white),
    )
    assert ours == pytest.approx(float(theirs), abs=1e-9)
    assert ours == pytest.approx(3.7906989, abs=5e-3)


THEIR_ORDER = ("sample_test", "standard_test", "sample_reference", "standard_reference")


@given(labs, labs, labs)
def test_what_changes_alike_is_no_metamerism(one: Lab, other: Lab, step: Lab) -> None:
    shifted = [
        Lab(*(x + y for x, y in zip(lab, step, strict=True))) for lab in (one, other)
    ]
    index = additive_metamerism(
        standard_reference=one,
        sample_reference=other,
        standard_test=shifted[0],
        sample_test=shifted[1],
    )
    assert index == pytest.approx(0.0, abs=1e-9)
