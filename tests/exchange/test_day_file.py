"""A day's file is read whole, or refused in one sentence that names the field."""

import json

import pytest

from shadewright.core.planning import Going, PlaceBefore, Stage
from shadewright.errors import StudioError
from shadewright.exchange.day_file import read_before, read_day
from tests.core.planning.test_searching import due_day


def changed(**fields: object) -> str:
    """Return a day with some of its fields otherwise."""
    return json.dumps(due_day(None) | fields)


def with_bath(**fields: object) -> str:
    """Return a day whose bath is otherwise."""
    day = due_day(None)
    day["baths"] = [day["baths"][0] | fields]
    return json.dumps(day)


IN = {"name": "first", "from": "08:00", "to": "12:00"}
STEAM = {stage: 5 for stage in Stage if stage is not Stage.RAMP}
BACKWARDS = {
    "pot": "P1",
    "source": "S1",
    "fill_start_min": -10,
    "heat_start_min": -20,
}


def test_somebody_may_come_twice() -> None:
    """At hours that do not meet."""
    evening = IN | {"from": "12:00", "to": "12:30"}
    assert len(read_day(changed(people=[IN, evening])).people) == 2


def test_what_has_begun_is_read() -> None:
    """Minutes count from the start, and below it for yesterday."""
    going = {"pot": "P1", "source": "S1", "fill_start_min": -30, "heat_start_min": 4.5}
    text = with_bath(going=going).replace('"end"', '"now": "08:05", "end"')
    day = read_day(text)
    assert (day.now, day.ticks_per_min) == (10, 2)
    assert day.baths[0].going == Going(
        pot="P1", source="S1", fill_start=-60, heat_start=9
    )


def test_the_plan_before_is_read() -> None:
    """By name; without one there is none."""
    before = [{"name": "B0", "pot": "P1", "source": "S1", "start_min": 20}]
    assert read_before(changed()) == {}
    assert read_before(changed(before=before)) == {
        "B0": PlaceBefore(pot="P1", source="S1", start=20)
    }


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
        (changed(now="07:00"), "now of the day"),
        (changed(now="soon"), "now of the day"),
        (changed(people=[IN, IN]), "in twice at once"),
        (with_bath(steamed=True, minutes=STEAM), "how long steam takes"),
        (with_bath(going={"pot": "P9", "fill_start_min": 0}), "P9"),
        (with_bath(going={"pot": "P1"}), "fill_start_min of going of bath B0"),
        (with_bath(going={"pot": "P1", "fill_start_min": 5}), "after now"),
        (with_bath(going=BACKWARDS), "before what comes before it"),
        (
            with_bath(minutes_by_place=[{"pot": "P1", "source": "S1"}]),
            "heat of minutes",
        ),
        (
            with_bath(minutes_by_place=[{"source": "S9", "heat": 1, "ramp": 1}]),
            "S9",
        ),
        (with_bath(touches=[{"stage": "hold", "at_min": 39, "minutes": 3}]), "touch"),
    ],
)
def test_what_cannot_be_is_refused(text: str, said: str) -> None:
    """One sentence, naming the field."""
    with pytest.raises(StudioError, match=said):
        read_day(text)
