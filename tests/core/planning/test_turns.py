"""Pale before dark, one family at a time."""

import pytest

from shadewright.core.planning.turns import turns_of
from tests.core.planning.test_searching import due_day, planned
from tests.core.planning.test_ways import bath


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("day", "turns"),
    [
        ([("yellow", 1.0), ("yellow", 2.0), ("blue", 0.5), ("black", 3.0)], 0),
        ([("yellow", 2.0), ("yellow", 1.0)], 1),
        ([("blue", 1.0), ("yellow", 1.0)], 1),
        ([("x", 1.0), ("y", 1.0), ("x", 1.0)], 1),
        ([("x", 1.0), ("blue", 0.1)], 0),
    ],
)
def test_steps_back_are_counted(day: list[tuple[str, float]], turns: int) -> None:
    """Paler, a family that comes earlier, a family that was left."""
    baths = [bath(family=family, depth_percent=depth) for family, depth in day]
    assert turns_of(baths) == turns


def test_of_plans_with_one_end_the_pale_one_comes_first() -> None:
    """Two baths in two pots on one source: the file has the dark one first."""
    day = due_day(None, None) | {"end": "18:00"}
    day["people"][0]["to"] = "18:00"
    day["pots"] += [day["pots"][0] | {"name": "P2"}]
    day["baths"][0]["depth_percent"] = 3.0
    answer = planned(day, spots=4000)
    assert [each["name"] for each in answer["baths"]] == ["B1", "B0"]
