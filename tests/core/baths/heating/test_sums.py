"""All of a heating together."""

from dataclasses import replace

import pytest

from shadewright.core.baths.heating import HeatWanted, Load, heat_sum
from shadewright.core.tables.heat import Source
from shadewright.errors import OutOfRangeError

WANTED = HeatWanted(
    load=Load(water_ml=4000.0, fibre_g=100.0, vessel_kg=2.0),
    start_c=20.0,
    top_c=95.0,
    power_kw=1.8,
    source=Source.INDUCTION,
)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("source", "input_kwh", "minutes"),
    # 0.372/0.32 = 1.162, /0.75 = 0.496, /0.85 = 0.438; 60 x that / 1.8
    [
        (Source.GAS, 1.162, 38.7),
        (Source.COIL, 0.496, 16.5),
        (Source.INDUCTION, 0.438, 14.6),
    ],
)
def test_a_small_pot_on_each_source(
    source: Source, input_kwh: float, minutes: float
) -> None:
    found = heat_sum(wanted=replace(WANTED, source=source))
    assert found.energy_kwh == pytest.approx(0.372, abs=5e-4)
    assert found.input_kwh == pytest.approx(input_kwh, abs=1e-3)
    assert found.minutes == pytest.approx(minutes, abs=0.06)
    assert found.fastest_rise_c_per_min == pytest.approx(75 / found.minutes)


def test_a_steamer_heats_no_pot() -> None:
    steamer = replace(WANTED, source=Source.STEAMER)
    with pytest.raises(OutOfRangeError, match="time it and give its minutes"):
        heat_sum(wanted=steamer)


def test_what_to_mind() -> None:
    light = heat_sum(wanted=WANTED).warnings
    assert any("guess" in told for told in light)
    assert any("nothing left unwatched" in told for told in light)
    assert not any("heavy" in told for told in light)
    heavy = replace(WANTED, load=Load(water_ml=9000.0, vessel_kg=2.0))
    assert any("heavy" in told for told in heat_sum(wanted=heavy).warnings)


def test_the_boil_can_be_aimed_at() -> None:
    assert heat_sum(wanted=replace(WANTED, top_c=100.0)).minutes > 14.6
    below_the_sea = replace(WANTED, top_c=101.0, altitude_m=-400.0)
    assert heat_sum(wanted=below_the_sea).boils_at_c > 101.0


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"top_c": 20.0}, "above the start"),
        ({"top_c": 10.0}, "above the start"),
        ({"top_c": 101.0}, "where water boils at sea level"),
        ({"top_c": 98.0, "altitude_m": 1600.0}, "94.6"),
    ],
)
def test_an_aim_that_cannot_be(changed: dict[str, float], words: str) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        heat_sum(wanted=replace(WANTED, **changed))  # type: ignore[arg-type]
    assert refused.value.argument == "top_c"
    assert words in str(refused.value)


def test_no_power_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        heat_sum(wanted=replace(WANTED, power_kw=0.0))
    assert refused.value.argument == "power_kw"
