import pytest

from shadewright.core.tables.fibres import FIBRES
from tests.published_cases import PublishedCase, published


@pytest.mark.parametrize("case", published("baths", asks="regain"))
def test_regains(case: PublishedCase) -> None:
    fibre = FIBRES[case.inputs["fibre"]]
    regain = {"astm": fibre.regain_astm_percent, "eu": fibre.regain_eu_percent}
    assert regain[case.inputs["table"]] == pytest.approx(float(case.printed))
