"""K/S, reflectance and the surface."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.mixing.model.kubelka_munk import (
    ks_of_reflectance,
    reflectance_of_ks,
    slope_of_reflectance,
    with_surface,
)

shares = st.floats(0.001, 0.999)
ratios = st.floats(1e-3, 1e3)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("reflectance", "ks"),
    [(0.2, 1.6), (0.05, 9.025), (0.5, 0.25)],  # (1 − R)² / 2R
)
def test_ks_by_hand(reflectance: float, ks: float) -> None:
    assert ks_of_reflectance(np.array(reflectance)) == pytest.approx(ks, rel=1e-12)


@given(shares)
def test_there_and_back(reflectance: float) -> None:
    ks = ks_of_reflectance(np.array(reflectance))
    assert reflectance_of_ks(ks) == pytest.approx(reflectance, rel=1e-9)


@given(ratios)
def test_slope_is_that_of_small_steps(ks: float) -> None:
    step = ks * 1e-6
    rise = reflectance_of_ks(np.array(ks + step)) - reflectance_of_ks(
        np.array(ks - step)
    )
    assert slope_of_reflectance(np.array(ks)) == pytest.approx(
        rise / (2 * step), rel=1e-5
    )


@pytest.mark.by_hand
def test_the_surface_bounds_how_dark_yarn_gets() -> None:
    deep = reflectance_of_ks(np.array(1e6))
    assert with_surface(deep, surface=0.01) == pytest.approx(0.01, abs=1e-6)
    # 0.01 + 0.99 · 0.5
    assert with_surface(np.array(0.5), surface=0.01) == pytest.approx(0.505)
