"""The library of invented spectra, and the prior that it makes."""

import numpy as np
import pytest

from shadewright.core.mixing.model.shapes import (
    BANDS,
    leading_factor,
    nearness,
    shape_library,
    usual_prior,
    wavelengths_nm,
)


def test_every_shape_peaks_near_one_on_a_low_floor() -> None:
    shapes = shape_library()
    assert shapes.shape == (3000, BANDS)
    assert np.all(shapes.max(1) <= 1.02 + 1e-9)
    assert np.all(shapes.max(1) >= 1.0)
    assert np.all(shapes.min(1) >= 0.0008)


def test_nobody_can_change_the_library() -> None:
    with pytest.raises(ValueError, match="read-only"):
        shape_library()[0, 0] = 2.0


def test_a_whole_factor_gives_the_covariance_back() -> None:
    nm = wavelengths_nm()
    covariance = nearness(nm, nm, length=50.0) + 0.1 * np.eye(BANDS)
    factor = leading_factor(covariance, rank=BANDS)
    np.testing.assert_allclose(factor @ factor.T, covariance, atol=1e-9)


def test_the_prior_knows_little_and_is_the_same_for_each_dye() -> None:
    prior = usual_prior(dyes=3)
    np.testing.assert_array_equal(prior.mean[0], prior.mean[2])
    sd = np.sqrt((prior.factor[0] ** 2).sum(1))
    assert np.all(sd > 0.5)  # a factor of e^0.5 and more is open at each band
    off = np.abs(np.log(shape_library()) - prior.mean[0]) / sd
    assert 0.6 < (off < 1).mean() < 0.8  # as a normal error has it
