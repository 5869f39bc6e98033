"""What a reading is worth, and what cannot be one."""

from dataclasses import replace
from math import sqrt

import pytest

from shadewright.core.mixing.bands import bands_of
from shadewright.core.mixing.swatches import (
    Evidence,
    Reading,
    Swatch,
    checked_swatch,
)
from shadewright.errors import InputError, OutOfRangeError

LAB = Reading(evidence=Evidence.LAB, values=(50.0, 1.0, 2.0), sd=0.9, repeat=9)


@pytest.mark.by_hand
def test_noise_falls_with_the_root_of_the_readings() -> None:
    assert LAB.noise == pytest.approx(0.3 / sqrt(3.0))  # 0.9 / √9, a channel 1/√3
    one = replace(LAB, repeat=1)
    assert one.noise == pytest.approx(0.9 / sqrt(3.0))
    assert replace(LAB, sd=None).noise == replace(LAB, sd=0.01).noise > 0


def test_a_chart_is_trusted_least() -> None:
    chart = replace(LAB, evidence=Evidence.SCREEN, sd=None)
    photo = replace(chart, sd=2.0, repeat=1)
    assert chart.noise > photo.noise > replace(LAB, repeat=1).noise
    assert chart.dose_error == 0.5
    assert photo.dose_error == LAB.dose_error == 0.02
    assert Evidence.SCREEN.rank < Evidence.LAB.rank < Evidence.SPECTRUM.rank


@pytest.mark.by_hand
def test_a_cubic_is_filled_in_exactly() -> None:
    wide = tuple(range(400, 701, 20))
    cubic = [((nm - 500) / 300) ** 3 + 0.5 for nm in range(400, 701, 10)]
    found = bands_of(
        wavelengths_nm=wide,
        values=tuple(((nm - 500) / 300) ** 3 + 0.5 for nm in wide),
    )
    assert found == pytest.approx(cubic, abs=1e-12)


def test_bands_of_five_are_thinned_and_wider_ones_cut() -> None:
    fine = tuple(range(360, 751, 5))
    found = bands_of(wavelengths_nm=fine, values=tuple(nm / 1000 for nm in fine))
    assert found == pytest.approx([nm / 1000 for nm in range(400, 701, 10)])


@pytest.mark.parametrize("nm", [(400, 410, 430, 700), (420, 700), (400,), (400, 700)])
def test_bands_that_are_none_are_refused(nm: tuple[int, ...]) -> None:
    with pytest.raises(OutOfRangeError, match="even steps"):
        bands_of(wavelengths_nm=nm, values=(0.5,) * len(nm))


@pytest.mark.parametrize(
    ("values", "doses", "base"),
    [
        ((150.0, 0.0, 0.0), (), "wool"),
        ((50.0, 200.0, 0.0), (), "wool"),
        ((50.0, 0.0, float("nan")), (), "wool"),
        ((50.0, 0.0, 0.0), (("Gorse", 0.0),), "wool"),
        ((50.0, 0.0, 0.0), (("Gorse", 50.0),), "wool"),
        ((50.0, 0.0, 0.0), (), ""),
    ],
)
def test_what_cannot_be_a_swatch(
    values: tuple[float, ...], doses: tuple[tuple[str, float], ...], base: str
) -> None:
    reading = replace(LAB, values=values)
    with pytest.raises(InputError):
        checked_swatch(Swatch(number=1, base=base, doses=doses, reading=reading))
