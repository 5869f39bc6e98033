import numpy as np
import pytest

from shadewright.core.colour import Light, Observer, light_power, weight_table
from shadewright.core.colour.spectra.weights import STEPS_NM
from shadewright.core.tables import lights, observers
from shadewright.errors import OutOfRangeError
from tests.core.colour.oracles import EYES, colour, folded, light_of, weights_of
from tests.published_cases import PublishedCase, published

every_table = pytest.mark.parametrize(
    ("light", "observer", "step_nm"),
    [(light, eye, step) for light in Light for eye in Observer for step in STEPS_NM],
)


@pytest.mark.parametrize("case", published("colour", asks="white"))
def test_weights_add_up_to_the_printed_white(case: PublishedCase) -> None:
    asked = case.inputs
    table = weight_table(light=asked["light"], observer=Observer(asked["observer"]))
    assert case.agrees(getattr(table.white, asked["part"]))


@pytest.mark.parametrize("observer", Observer)
def test_observers_are_those_of_the_cie(observer: Observer) -> None:
    wide = observer is Observer.TEN_DEGREES
    ours = observers.CIE_1964_10_DEGREES if wide else observers.CIE_1931_2_DEGREES
    theirs = colour.MSDS_CMFS[EYES[observer]].values[: len(ours)]
    assert np.array_equal(np.array(ours), theirs)


@pytest.mark.parametrize("light", Light)
def test_lights_are_those_of_the_cie(light: Light) -> None:
    assert np.allclose(light_power(light), light_of(light).values, rtol=1e-12)


def test_light_a_is_its_table_as_well_as_its_formula() -> None:
    table = colour.SDS_ILLUMINANTS["A"]
    ours = np.array(light_power(Light.A))[::5]
    theirs = table.values[table.wavelengths >= 360]
    assert np.allclose(ours, theirs, rtol=5e-6)


def test_tables_of_lights_reach_to_780_nm() -> None:
    tables = (lights.D50_FROM_360, lights.D65_FROM_360)
    assert {len(table) for table in tables} == {85}
    assert len(lights.FL11_FROM_380) == len(lights.LED_B3_FROM_380) == 81


@every_table
def test_weights_are_those_of_astm_e2022(
    light: Light, observer: Observer, step_nm: int
) -> None:
    ours = weight_table(
        light=light, observer=observer, first_nm=360, last_nm=780, step_nm=step_nm
    )
    theirs = weights_of(light, observer, step_nm)
    assert np.abs(ours.rows - theirs).max() < 1e-10


@every_table
def test_ends_are_folded_as_in_astm_e308(
    light: Light, observer: Observer, step_nm: int
) -> None:
    ours = weight_table(light=light, observer=observer, step_nm=step_nm)
    whole = weights_of(light, observer, step_nm)
    theirs = folded(whole, step_nm)
    assert np.abs(ours.rows - theirs).max() < 1e-10
    assert np.allclose(ours.white, whole.sum(axis=0), rtol=1e-12)


@pytest.mark.parametrize(
    ("first_nm", "last_nm", "step_nm", "bands"),
    [(400, 700, 10, 31), (360, 740, 10, 39), (380, 730, 5, 71), (400, 700, 20, 16)],
)
def test_a_table_fits_its_meter(
    first_nm: int, last_nm: int, step_nm: int, bands: int
) -> None:
    table = weight_table(first_nm=first_nm, last_nm=last_nm, step_nm=step_nm)
    assert len(table.rows) == len(table.wavelengths_nm) == bands
    assert table.name == f"E2022 D65/10 {first_nm}-{last_nm}/{step_nm}"


def test_every_table_has_its_own_name() -> None:
    names = [
        weight_table(light=light, observer=eye, step_nm=step).name
        for light in Light
        for eye in Observer
        for step in STEPS_NM
    ]
    assert len(set(names)) == len(names) == 30


def test_a_table_cannot_be_changed() -> None:
    with pytest.raises(ValueError, match="read-only"):
        weight_table().rows[0] = 0.0


@pytest.mark.parametrize(
    ("first_nm", "last_nm", "step_nm", "says"),
    [
        (400, 700, 7, "The step of a spectrum must be 5, 10 or 20 nm; got 7 nm."),
        (405, 700, 5, "got one from 405 to 700 nm."),
        (420, 700, 10, "A spectrum must be one that begins at 360 to 400 nm"),
        (400, 690, 10, "got one from 400 to 690 nm."),
        (395, 705, 10, "whole steps of 10 nm away from 360 nm"),
    ],
)
def test_bands_that_no_meter_has(
    first_nm: int, last_nm: int, step_nm: int, says: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        weight_table(first_nm=first_nm, last_nm=last_nm, step_nm=step_nm)
    assert says in str(refused.value)


@pytest.mark.parametrize(
    ("wavelength_nm", "row"),
    [
        (450, (3.6987, 0.89013, 19.888)),
        (550, (4.7324, 8.8545, 0.0345)),
        (600, (8.6724, 5.0786, 0.0)),
    ],
)
def test_rows_as_another_program_noted_them(
    wavelength_nm: int, row: tuple[float, ...]
) -> None:
    """From colour-science 0.4.7; the standard prints such rows in three digits."""
    table = weight_table()
    found = table.rows[table.wavelengths_nm.index(wavelength_nm)]
    assert found == pytest.approx(row, abs=5e-5, rel=5e-5)
