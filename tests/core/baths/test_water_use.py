"""The water of a bath, with its soak and its rinses."""

import pytest

from shadewright.core.baths.water_use import water_use
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
def test_two_kilograms_in_a_day() -> None:
    # soak 2 kg x 10 l; bath 2 kg x 30 l; three rinses of 25 l/kg: 20 + 60 + 150 = 230 l
    use = water_use(fibre_mass_g=2000.0, fresh_water_ml=60_000.0, rinses=3)
    assert use.soak_ml == 20_000.0
    assert use.bath_ml == 60_000.0
    assert use.rinse_ml == 150_000.0
    assert use.whole_ml == 230_000.0


def test_what_was_not_rinsed_takes_no_water_for_it() -> None:
    assert water_use(fibre_mass_g=50.0, fresh_water_ml=0.0, rinses=0).rinse_ml == 0.0


@pytest.mark.parametrize(
    ("wrong", "name"),
    [
        ({"fibre_mass_g": 0.0}, "fibre_mass_g"),
        ({"fresh_water_ml": -1.0}, "fresh_water_ml"),
        ({"rinses": -1}, "rinses"),
        ({"rinses": 101}, "rinses"),
    ],
)
def test_what_cannot_be(wrong: dict[str, float], name: str) -> None:
    asked: dict[str, float] = {
        "fibre_mass_g": 100.0,
        "fresh_water_ml": 3000.0,
        "rinses": 3,
    }
    with pytest.raises(OutOfRangeError) as refused:
        water_use(**(asked | wrong))  # type: ignore[arg-type]
    assert refused.value.argument == name
