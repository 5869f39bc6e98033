import pytest

from shadewright.core.tables.dye_classes import CLASS_FACTS, DyeClass
from tests.published_cases import PublishedCase, published


@pytest.mark.parametrize("case", published("baths", asks="ph_from"))
def test_the_lower_ph(case: PublishedCase) -> None:
    facts = CLASS_FACTS[DyeClass(case.inputs["dye_class"])]
    assert facts.ph_from == pytest.approx(float(case.printed))


@pytest.mark.parametrize("case", published("baths", asks="ph_to"))
def test_the_upper_ph(case: PublishedCase) -> None:
    facts = CLASS_FACTS[DyeClass(case.inputs["dye_class"])]
    assert facts.ph_to == pytest.approx(float(case.printed))


def test_every_class_has_its_facts() -> None:
    assert set(CLASS_FACTS) == set(DyeClass)
