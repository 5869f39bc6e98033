"""One bath after the other, with a pencil."""

import json
from typing import Any

import pytest

from shadewright.core.planning.beginnings import whole_order
from shadewright.core.planning.sequences import Drawn, Work, drawn
from shadewright.exchange.day_file import read_day


def of_one_pot(*people: str, families: str = "xx") -> Drawn:
    """Return the plan of two baths that are placed before either is rinsed."""
    bath: dict[str, Any] = {
        "depth_percent": 1.0,
        "fibre_g": 200,
        "skeins": 2,
        "liquor_ratio": 20,
        "minutes": {
            "fill": 5,
            "heat": 20,
            "dose": 5,
            "ramp": 30,
            "hold": 30,
            "check": 2,
            "cool": 60,
            "rinse": 10,
        },
    }
    day = {
        "start": "08:00",
        "end": "18:00",
        "people": [{"name": name, "from": "08:00", "to": "18:00"} for name in people],
        "pots": [{"name": "P", "volume_l": 10, "mass_kg": 1, "material": "enamel"}],
        "circuits": [],
        "sources": [{"name": "S", "power_kw": 1.8, "kind": "coil"}],
        "rack_slots": 40,
        "washout_min": 10,
        "baths": [
            bath | {"name": f"B{n}", "family": family}
            for n, family in enumerate(families)
        ],
    }
    work = Work.of(read_day(json.dumps(day)), {})
    return drawn(work, whole_order(work, (0, 1)))


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("people", "families", "fill"),
    [(("a",), "xx", 162), (("a", "b"), "xx", 152), (("a",), "xy", 172)],
)
def test_a_pot_is_filled_once_it_is_rinsed(
    people: tuple[str, ...], families: str, fill: int
) -> None:
    """5 + 87 + 60 = 152 is the rinse; one pair of hands rinses 10, washes out 10."""
    plan = of_one_pot(*people, families=families)
    assert plan.left_out == ()
    first, second = plan.stays
    assert first.rinse is not None
    assert (first.rinse.start, second.fill.start) == (152, fill)
