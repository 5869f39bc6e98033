import numpy as np
import pytest

from shadewright.core.colour import (
    Lab,
    Unevenness,
    ciede2000,
    colour_scatter,
    relative_unlevelness,
)
from shadewright.errors import MissingError, OutOfRangeError


def test_equal_spots_are_level() -> None:
    assert relative_unlevelness(np.full((5, 31), 0.3)) == (0.0, Unevenness.EXCELLENT)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("half_width", "word"),
    [(0.001, "excellent"), (0.005, "good"), (0.012, "poor"), (0.03, "bad")],
)
def test_the_index_of_two_kinds_of_spots(half_width: float, word: str) -> None:
    """Two spots 0.3 ± d: s = d √2, so RUI = d √2 / 0.3 · ΣV, and ΣV is 10.685.

    0.05, 0.25, 0.60 and 1.51.
    """
    spots = np.array([[0.3 - half_width] * 31, [0.3 + half_width] * 31])
    index, found = relative_unlevelness(spots)
    assert index == pytest.approx(half_width * 2**0.5 / 0.3 * 10.685, rel=1e-3)
    assert found == word


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("index", "word"),
    [
        (0.199, "excellent"),
        (0.201, "good"),
        (0.499, "good"),
        (0.501, "poor"),
        (0.999, "poor"),
        (1.001, "bad"),
    ],
)
def test_each_word_has_its_limits(index: float, word: str) -> None:
    """As above, d = RUI · 0.3 / (√2 · 10.685)."""
    away = index * 0.3 / (2**0.5 * 10.685)
    spots = np.array([[0.3 - away] * 31, [0.3 + away] * 31])
    assert relative_unlevelness(spots)[1] == word


def test_bands_beyond_those_of_the_index_do_not_count() -> None:
    draw = np.random.default_rng(1992)
    wide = 0.3 + draw.normal(0.0, 0.004, (6, 39))  # 360 to 740 nm
    inside = wide[:, 3:35]  # 390 to 700 nm
    found = relative_unlevelness(wide, first_nm=360)
    assert found[0] == pytest.approx(relative_unlevelness(inside, first_nm=390)[0])


def test_scatter_is_the_mean_distance_from_the_mean() -> None:
    spots = [Lab(50, 10, 10), Lab(51, 10, 10), Lab(52, 10, 10)]
    found = colour_scatter(spots)
    away = [ciede2000(Lab(51, 10, 10), spot) for spot in spots]
    assert found.mean == pytest.approx(sum(away) / 3)
    assert found.most == pytest.approx(max(away))
    assert found.spots == 3


def test_one_spot_says_nothing() -> None:
    with pytest.raises(MissingError) as refused:
        colour_scatter([Lab(50, 0, 0)])
    assert str(refused.value) == (
        "A second spot is missing. Read 5 spots of the skein."
    )
    with pytest.raises(MissingError):
        relative_unlevelness(np.full((1, 31), 0.3))


def test_no_light_at_all_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        relative_unlevelness(np.zeros((5, 31)))
    assert "Reflectance must be above 0" in str(refused.value)
