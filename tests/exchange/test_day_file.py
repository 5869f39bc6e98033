"""A day's file is read whole, or refused in one sentence that names the field."""

import json

import pytest

from shadewright.core.planning import Stage
from shadewright.errors import StudioError
from shadewright.exchange.day_file import read_day
from tests.core.planning.test_searching import due_day


def changed(**fields: object) -> str:
    """Return a day with some of its fields otherwise."""
    return json.dumps(due_day(None) | fields)


def with_bath(**fields: object) -> str:
    """Return a day whose bath is otherwise."""
    day = due_day(None)
    day["baths"] = [day["baths"][0] | fields]
    return json.dumps(day)


def test_times_count_from_the_start() -> None:
    """08:00 is nought; what may be left out has its usual value."""
    day = read_day(json.dumps(due_day("11:45")))
    assert (day.length, day.sinks, day.ticks_per_min) == (240, 1, 1)
    assert day.baths[0].due == 225
    assert day.baths[0].cools_on_source is None


def test_half_minutes_are_counted() -> None:
    """A tick is then half a minute."""
    minutes = due_day(None)["baths"][0]["minutes"] | {"check": 2.5}
    day = read_day(with_bath(minutes=minutes))
    assert day.ticks_per_min == 2
    assert day.baths[0].minutes[Stage.CHECK] == 5
    assert day.length == 480


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[]", "no JSON object"),
        ("{", "no JSON object"),
        (changed(start="8am"), "start of the day"),
        (changed(end="07:00"), "not after the start"),
        (changed(rack_slots=None), "rack_slots of the day"),
        (changed(rack_slots=2.5), "no whole number"),
        (changed(washout_min=-1), "washout_min"),
        (changed(pots=[{"name": "P", "volume_l": "ten"}]), "volume_l of pot P"),
        (changed(people=[1]), "people of the day"),
        (with_bath(fibre_g=0), "fibre_g of bath B0"),
        (with_bath(minutes={"fill": 5}), "of minutes of bath B0"),
        (with_bath(overnight=True, due="11:00"), "cools overnight and is due"),
        (with_bath(pinned={"pot": "P9"}), "P9"),
        (with_bath(touches=[{"stage": "rinse", "at_min": 0, "minutes": 1}]), "touch"),
        (with_bath(touches=[{"stage": "hold", "at_min": 39, "minutes": 3}]), "touch"),
    ],
)
def test_what_cannot_be_is_refused(text: str, said: str) -> None:
    """One sentence, naming the field."""
    with pytest.raises(StudioError, match=said):
        read_day(text)
