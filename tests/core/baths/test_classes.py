import pytest

from shadewright.core.baths import class_caution
from shadewright.core.tables.dye_classes import DyeClass


@pytest.mark.parametrize(
    "classes",
    [
        [],
        [None, None],
        [DyeClass.MILLING, None],
        [DyeClass.LEVELLING, DyeClass.LEVELLING],
    ],
)
def test_one_class_or_none_known_asks_for_no_caution(
    classes: list[DyeClass | None],
) -> None:
    assert class_caution(dye_classes=classes) is None


def test_two_classes_are_named_with_the_ph_of_each() -> None:
    said = class_caution(dye_classes=[DyeClass.MILLING, None, DyeClass.LEVELLING])
    assert said is not None
    assert "levelling wants pH 2 to 4, milling wants pH 5 to 7" in said
