"""Heat into the pot: by hand, and its laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.heating import Load, evaporation_kwh, heat_kwh
from shadewright.core.baths.heating.energy import water_heat_kj_per_kg
from shadewright.core.tables.heat import Material
from shadewright.errors import OutOfRangeError

LOAD = Load(water_ml=4000.0, fibre_g=100.0, vessel_kg=2.0)
degrees = st.floats(0.0, 100.0)
loads = st.builds(
    Load,
    water_ml=st.floats(1.0, 50_000.0),
    fibre_g=st.floats(0.0, 5000.0).filter(lambda g: g == 0 or g > 1e-3),
    vessel_kg=st.floats(0.0, 20.0).filter(lambda kg: kg == 0 or kg > 1e-3),
    material=st.sampled_from(Material),
)


@pytest.mark.by_hand
def test_a_small_pot() -> None:
    """4 l x 0.9982 x 4.187 x 75 = 1254 kJ; 0.1 x 1.36 x 75 = 10.2; 2 x 0.5 x 75 = 75.

    1339 kJ / 3600 = 0.372 kWh.
    """
    assert heat_kwh(load=LOAD, start_c=20.0, top_c=95.0) == pytest.approx(
        0.372, abs=5e-4
    )


@pytest.mark.by_hand
def test_water_alone() -> None:
    """10 l x 0.9991 x 4.187 x 80 = 3347 kJ = 0.930 kWh."""
    found = heat_kwh(load=Load(water_ml=10_000.0), start_c=15.0, top_c=95.0)
    assert found == pytest.approx(0.930, abs=1e-3)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("material", "kj"),
    # 2 kg x 10 K x 0.50, 0.46, 0.90, 0.84
    [
        (Material.STAINLESS, 10.0),
        (Material.ENAMEL, 9.2),
        (Material.ALUMINIUM, 18.0),
        (Material.GLASS, 16.8),
    ],
)
def test_what_the_pot_itself_takes(material: Material, kj: float) -> None:
    bare = heat_kwh(load=Load(water_ml=1000.0), start_c=20.0, top_c=30.0)
    load = Load(water_ml=1000.0, vessel_kg=2.0, material=material)
    potted = heat_kwh(load=load, start_c=20.0, top_c=30.0)
    assert 3600 * (potted - bare) == pytest.approx(kj)


@given(loads, degrees, degrees, degrees)
def test_two_steps_make_one_but_for_the_waters_weight(
    load: Load, one: float, two: float, three: float
) -> None:
    """Warm water of the same volume weighs less: at most 4.2 % from 0 to 100 °C."""
    low, mid, high = sorted((one, two, three))
    whole = heat_kwh(load=load, start_c=low, top_c=high)
    first = heat_kwh(load=load, start_c=low, top_c=mid)
    second = heat_kwh(load=load, start_c=mid, top_c=high)
    assert first + second == pytest.approx(whole, rel=0.045, abs=1e-12)


@given(degrees, degrees, degrees)
def test_heat_of_a_kilogram_adds_up(one: float, two: float, three: float) -> None:
    there = water_heat_kj_per_kg(start_c=one, top_c=two)
    onwards = water_heat_kj_per_kg(start_c=two, top_c=three)
    whole = water_heat_kj_per_kg(start_c=one, top_c=three)
    assert there + onwards == pytest.approx(whole, abs=1e-9)


@given(loads, degrees, degrees)
def test_twice_of_all_takes_twice_the_heat(load: Load, one: float, two: float) -> None:
    low, high = sorted((one, two))
    double = Load(
        water_ml=2 * load.water_ml,
        fibre_g=2 * load.fibre_g,
        vessel_kg=2 * load.vessel_kg,
        material=load.material,
    )
    once = heat_kwh(load=load, start_c=low, top_c=high)
    assert heat_kwh(load=double, start_c=low, top_c=high) == pytest.approx(2 * once)


@pytest.mark.by_hand
def test_half_a_litre_boiled_away() -> None:
    """0.4991 kg x 2256.5 / 3600 = 0.3128 kWh."""
    assert evaporation_kwh(water_ml=500.0) == pytest.approx(0.3128, abs=1e-4)


@pytest.mark.parametrize(
    ("load", "start_c", "top_c", "argument"),
    [
        (Load(water_ml=0.0), 20.0, 95.0, "water_ml"),
        (Load(water_ml=float("nan")), 20.0, 95.0, "water_ml"),
        (Load(water_ml=100.0, fibre_g=-1.0), 20.0, 95.0, "fibre_g"),
        (Load(water_ml=100.0, vessel_kg=-1.0), 20.0, 95.0, "vessel_kg"),
        (LOAD, -1.0, 95.0, "start_c"),
        (LOAD, 20.0, 101.0, "top_c"),
        (LOAD, 60.0, 40.0, "top_c"),
    ],
)
def test_what_cannot_be_heated(
    load: Load, start_c: float, top_c: float, argument: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        heat_kwh(load=load, start_c=start_c, top_c=top_c)
    assert refused.value.argument == argument


def test_no_water_below_nothing_boils_away() -> None:
    with pytest.raises(OutOfRangeError):
        evaporation_kwh(water_ml=-1.0)
