import pytest

from shadewright.core.baths.acidity import (
    Settled,
    Solution,
    constants_at,
    debye_huckel_factor,
    pkw_at,
    settled,
)
from shadewright.core.tables import acidity as table
from tests.published_cases import PublishedCase, published


def at_rest(case: PublishedCase) -> Settled:
    solution = Solution(
        mol_per_l={
            getattr(table, name): amount
            for name, amount in case.inputs["mol_per_l"].items()
        },
        other_charge_mol_per_l=case.inputs.get("other_charge", 0.0),
    )
    constants = constants_at(solution=solution, temperature_c=25.0)
    return settled(solution=solution, constants=constants)


@pytest.mark.parametrize("case", published("acidity", asks="table"))
def test_plain_acids(case: PublishedCase) -> None:
    assert case.agrees(at_rest(case).ph)


@pytest.mark.parametrize("case", published("acidity", asks="measured"))
def test_plain_acids_as_once_measured(case: PublishedCase) -> None:
    assert case.agrees(at_rest(case).ph)


@pytest.mark.parametrize("case", published("acidity", asks="acetate"))
def test_acetate_buffers(case: PublishedCase) -> None:
    assert case.agrees(at_rest(case).ph)


@pytest.mark.parametrize("case", published("acidity", asks="citrate"))
def test_citrate_buffers(case: PublishedCase) -> None:
    assert case.agrees(at_rest(case).ph)


@pytest.mark.parametrize("case", published("acidity", asks="standard"))
def test_standards_of_ph(case: PublishedCase) -> None:
    assert case.agrees(at_rest(case).ph)


@pytest.mark.parametrize("case", published("acidity", asks="debye_huckel"))
def test_factor_of_the_limiting_law(case: PublishedCase) -> None:
    assert case.agrees(debye_huckel_factor(**case.inputs))


@pytest.mark.parametrize("case", published("acidity", asks="pkw"))
def test_ion_product_of_water(case: PublishedCase) -> None:
    assert case.agrees(pkw_at(**case.inputs))
