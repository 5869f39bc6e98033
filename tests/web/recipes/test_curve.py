"""The heat of a recipe: a programme to begin from, stops on the way, the picture."""

from uuid import uuid4

import pytest
from django.test import Client

from shadewright.core.baths import Leg
from shadewright.core.baths.heating import PROGRAMMES
from shadewright.records.models import RecipeVersion
from shadewright.workflows.recipes import recipes
from shadewright.workflows.studio import set_altitude
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read

NEW = "/recipes/new/"
STOP = {"stop_to_1": "70", "stop_rise_1": "1", "stop_hold_1": "15"}


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


def send(client: Client, things: Dyeing, address: str = NEW, **typed: object) -> Answer:
    plain = {
        "deed": uuid4(),
        "rows": 4,
        "name": "Low Tide",
        "dye_1": things.slate,
        "depth_1": "0.6",
        "liquor_ratio": "30",
        "start_c": "40",
        "rise_c_per_min": "0.8",
        "top_c": "98",
        "hold_min": "45",
    }
    said = {name: str(value) for name, value in (plain | typed).items()}
    return read(client.post(address, said, follow=True))


@pytest.mark.parametrize("key", PROGRAMMES)
def test_a_programme_fills_the_fields_and_can_be_kept(
    client: Client, things: Dyeing, key: str
) -> None:
    filled = send(client, things, act="programme", programme=key, notes="Slow")
    curve = PROGRAMMES[key].curve
    assert float(filled.value("start_c")) == curve.start_c
    assert float(filled.value("top_c")) == curve.top_c
    assert PROGRAMMES[key].source in filled.text
    assert "Slow" in filled.text
    names = ("start_c", "rise_c_per_min", "top_c", "hold_min")
    rows = [f"stop_{part}_{n}" for part in ("to", "rise", "hold") for n in (1, 2, 3)]
    again = {name: filled.value(name) for name in (*names, *rows)}
    done = send(client, things, **again)
    assert "is written down" in done.text
    text = recipes()[0].newest.text
    assert (*text.stops, curve.legs[-1]) == curve.legs


def test_a_programme_must_be_chosen_first(client: Client, things: Dyeing) -> None:
    page = send(client, things, act="programme")
    assert "Choose a programme first" in page.text
    assert page.value("start_c") == "40"


@pytest.mark.by_hand
def test_a_curve_is_kept_whole_and_drawn(client: Client, things: Dyeing) -> None:
    """40 to 70 at 1: 30 min; 15 held; 28 at 0.8: 35 min: 80 to the top, 125 in all."""
    done = send(client, things, **STOP)
    assert "80 min to the top, 125 min from heat on to heat off." in done.text
    assert 'class="heat-curve"' in done.source
    assert "from 40 °C; to 70 °C, by 1 °C a minute, hold 15 min; to 98 °C" in done.text
    row = RecipeVersion.objects.get()
    assert row.curve == [
        {"to_c": 70.0, "rise_c_per_min": 1.0, "hold_min": 15.0},
        {"to_c": 98.0, "rise_c_per_min": 0.8, "hold_min": 45.0},
    ]
    assert (row.start_c, row.top_c) == (40.0, 98.0)
    assert recipes()[0].newest.text.stops == (
        Leg(to_c=70.0, rise_c_per_min=1.0, hold_min=15.0),
    )


def test_a_wait_at_the_start_needs_no_rise(client: Client, things: Dyeing) -> None:
    done = send(client, things, stop_to_1="40", stop_hold_1="10")
    assert "from 40 °C; held 10 min at 40 °C; to 98 °C, by 0.8 °C" in done.text
    assert "82.5 min to the top" in done.text


def test_the_next_version_begins_with_the_stops(client: Client, things: Dyeing) -> None:
    send(client, things, **STOP)
    address = f"/recipes/{recipes()[0].id}/versions/new/"
    asked = read(client.get(address))
    assert asked.value("stop_to_1") == "70"
    assert 'class="heat-curve"' in asked.source
    done = send(client, things, address)
    assert "Stops on the way: left out" in done.text
    assert RecipeVersion.objects.order_by("-number")[0].curve == []


def test_without_a_stop_the_four_fields_are_the_whole(
    client: Client, things: Dyeing
) -> None:
    done = send(client, things)
    assert "72.5 min to the top" in done.text
    assert RecipeVersion.objects.get().curve == []


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"stop_rise_1": "1"}, "stop_to_1", "Say how warm the bath is at this stop."),
        ({"stop_to_1": "70"}, "stop_rise_1", "Say how fast it rises to this stop."),
        ({**STOP, "stop_to_1": "hot"}, "stop_to_1", "is written as a temperature"),
        ({**STOP, "stop_rise_1": "0"}, "stop_rise_1", "must be from 0.05"),
        ({**STOP, "stop_hold_1": "-1"}, "stop_hold_1", "must be from 0"),
        ({**STOP, "start_c": ""}, "start_c", "start, rise and top are needed too"),
        ({**STOP, "top_c": ""}, "top_c", "start, rise and top are needed too"),
    ],
)
def test_a_fault_stands_by_its_field(
    client: Client, things: Dyeing, typed: dict[str, str], field: str, sentence: str
) -> None:
    page = send(client, things, **typed)
    assert page.status == 422
    assert sentence in page.fault(field).replace("\u00a0", " ")


def test_a_stop_that_cools_is_told(client: Client, things: Dyeing) -> None:
    page = send(client, things, **{**STOP, "stop_to_1": "99"})
    assert page.status == 422
    assert "Each temperature of the curve must be at least the one before" in page.text


def test_a_top_above_the_boil_is_cautioned(client: Client, things: Dyeing) -> None:
    set_altitude(1600.0)
    done = send(client, things)
    assert "At 1600 m water boils at 94.6 °C: 98 °C cannot be reached." in done.text
