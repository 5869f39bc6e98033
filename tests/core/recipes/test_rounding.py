"""Doses in steps of the studio's tools."""

from itertools import product

import pytest

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing import Mix, told_mixes
from shadewright.core.recipes import rounded, step_percent, target_of_labs
from shadewright.errors import OutOfRangeError
from tests.core.recipes.palettes import palette

DOSES = (("d00", 0.237), ("d03", 0.512), ("d05", 0.061))
STEPS = {"d00": 0.05, "d03": 0.05, "d05": 0.02}


def colour(doses: tuple[tuple[str, float], ...]) -> Lab:
    told = told_mixes([Mix(base="wool", doses=doses)], palette=palette())
    return Lab(*told.lab[0].tolist())


@pytest.mark.by_hand
def test_the_step_of_a_syringe_as_a_depth() -> None:
    """0.2 ml of 2 % is 4 mg; on 50 g of yarn 0.008 %."""
    step = step_percent(step_ml=0.2, strength_percent=2.0, fibre_g=50.0)
    assert step == pytest.approx(0.008)


def test_of_all_ways_of_rounding_the_nearest_is_taken() -> None:
    target = colour(DOSES)
    found = rounded(
        palette(),
        base="wool",
        doses=DOSES,
        steps_percent=STEPS,
        target=target_of_labs({Light.D65: target}),
    )
    for dye, depth in found.doses:
        assert depth / STEPS[dye] == pytest.approx(round(depth / STEPS[dye]))
    ways = product((0.20, 0.25), (0.50, 0.55), (0.06, 0.08))
    best = min(
        ciede2000(target, colour(tuple(zip(STEPS, way, strict=True)))) for way in ways
    )
    assert found.de == pytest.approx(best, abs=1e-4)


def test_a_dye_without_a_step_stays_as_it_is() -> None:
    found = rounded(
        palette(),
        base="wool",
        doses=DOSES,
        steps_percent={"d00": 0.05},
        target=target_of_labs({Light.D65: colour(DOSES)}),
    )
    assert dict(found.doses)["d03"] == 0.512


def test_a_step_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="Step of d00"):
        rounded(
            palette(),
            base="wool",
            doses=DOSES,
            steps_percent={"d00": 0.0},
            target=target_of_labs({Light.D65: Lab(50, 0, 0)}),
        )
