"""A recipe on another yarn."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.mixing import Evidence, Palette, learn
from shadewright.core.recipes import carried
from shadewright.errors import NotFoundError
from tests.core.mixing.worlds import Lab as Bench
from tests.core.mixing.worlds import ladder, ternaries
from tests.core.recipes.palettes import lab, named, truth

FACTOR = 1.2


@cache
def two_bases() -> Palette:
    """Return a palette whose second base takes each dye a fifth stronger."""
    bench = Bench(truth(), np.random.default_rng(5))
    first = bench.read(ladder(7), Evidence.THREE_LIGHTS, 0.3)
    stronger = replace(truth(), gains=truth().gains * FACTOR)
    other = Bench(stronger, np.random.default_rng(6))
    second = other.read(ladder(7, (0.3, 1.0)), Evidence.THREE_LIGHTS, 0.3)
    return learn([*first, *(replace(each, base="silk") for each in second)]).palette


def test_it_comes_out_alike_on_both() -> None:
    stronger = replace(truth(), gains=truth().gains * FACTOR)
    away = []
    for row in ternaries(np.random.default_rng(8), 7, 4):
        found = carried(two_bases(), doses=named(row), from_base="wool", to_base="silk")
        there = np.zeros(7)
        for dye, depth in found.doses:
            there[int(dye[1:])] = depth
        assert {*dict(found.doses)} <= {*dict(named(row))}
        away.append(
            ciede2000(lab(truth().lab(row[None])[0]), lab(stronger.lab(there[None])[0]))
        )
        assert there.sum() < row.sum()
    assert np.mean(away) < 0.6


def test_to_its_own_base_it_stays_as_it_is() -> None:
    doses = (("d00", 0.4), ("d02", 0.3))
    found = carried(two_bases(), doses=doses, from_base="wool", to_base="wool")
    assert dict(found.doses) == pytest.approx(dict(doses), rel=1e-3)
    assert found.de < 1e-3
    assert found.expected_de > 0


def test_a_base_that_nobody_dyed_is_told() -> None:
    with pytest.raises(NotFoundError, match="no base in this palette “nylon”"):
        carried(two_bases(), doses=(("d00", 0.4),), from_base="wool", to_base="nylon")
