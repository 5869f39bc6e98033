import pytest

from shadewright.core.baths import dye_mass_g, liquor_ml, regain_from_content_percent
from tests.published_cases import PublishedCase, published


@pytest.mark.parametrize("case", published("baths", asks="bath_g_per_l"))
def test_dye_in_a_litre_of_bath(case: PublishedCase) -> None:
    dye_g = dye_mass_g(fibre_mass_g=1000, depth_percent=case.inputs["depth_percent"])
    bath_ml = liquor_ml(fibre_mass_g=1000, liquor_ratio=case.inputs["liquor_ratio"])
    assert case.agrees(1000 * dye_g / bath_ml)


@pytest.mark.parametrize("case", published("baths", asks="regain_of_content"))
def test_regain_from_moisture_content(case: PublishedCase) -> None:
    assert case.agrees(regain_from_content_percent(**case.inputs))
