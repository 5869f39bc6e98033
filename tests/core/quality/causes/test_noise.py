"""The noise band: from steps, deaf to a drift, a jar that stays and a slip."""

from random import Random

import pytest

from shadewright.core.colour import Lab
from shadewright.core.quality.causes.matrices import determinant
from shadewright.core.quality.causes.noise import noise_of


def noisy(count: int, *, drift: float = 0.0) -> list[Lab]:
    """Return lots with a noise of 0.2 and a drift from lot to lot."""
    draws = Random(7)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    return [
        Lab(
            50 + draws.gauss(0, 0.2) + n * drift,
            draws.gauss(0, 0.2),
            draws.gauss(0, 0.2),
        )
        for n in range(count)
    ]


@pytest.mark.by_hand
def test_two_equal_steps() -> None:
    # Steps (0.6, 0, 0) and (-0.6, 0, 0): each h is 0.18 at L, so S is 0.18 at L,
    # s^2 = 0.06; no scatter of h, so nothing is drawn in: lambda 0. With the guess of
    # 0.09 for two more steps: at L (2 x 0.18 + 2 x 0.09) / 4 = 0.135, at a and b
    # (0 + 0.18) / 4 = 0.045; the mean of the three 0.075.
    noise = noise_of([Lab(50, 0, 0), Lab(50.6, 0, 0), Lab(50, 0, 0)])
    assert noise.covariance[0][0] == pytest.approx(0.135)
    assert noise.covariance[1][1] == pytest.approx(0.045)
    assert noise.variance == pytest.approx(0.075)
    assert noise.freedom == pytest.approx(2 * 2 / 3 + 2)


def test_lots_that_differ_in_one_number_alone_have_a_band_in_all() -> None:
    lots = [Lab(50.0 + n % 2, 0, 0) for n in range(60)]
    assert determinant(noise_of(lots).covariance) > 1e-6


def test_many_lots_tell_the_noise() -> None:
    assert noise_of(noisy(400)).variance == pytest.approx(0.04, rel=0.15)


def test_a_drift_is_not_noise() -> None:
    """Ten times the noise over all lots, a twentieth of it from one to the next."""
    drifting = noise_of(noisy(200, drift=0.01)).variance
    assert drifting == pytest.approx(noise_of(noisy(200)).variance, rel=0.02)


def test_one_slip_hardly_widens_the_band() -> None:
    lots = noisy(12)
    slipped = [*lots[:6], Lab(58.0, 3.0, 0.0), *lots[6:]]
    assert noise_of(slipped).variance < 2.2 * noise_of(lots).variance


@pytest.mark.parametrize("count", [0, 1, 2, 3])
def test_few_lots_have_a_band_too(count: int) -> None:
    noise = noise_of([Lab(50, 0, 0)] * count)
    assert 0.01 < noise.variance < 0.091
    assert determinant(noise.covariance) > 0.0
