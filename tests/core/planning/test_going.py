"""A day that has begun: what is settled, what is left, what cannot go on."""

import pytest

from tests.core.planning.made_days import Doc
from tests.core.planning.plan_checker import faults_of
from tests.core.planning.plan_reading import stages_of
from tests.core.planning.test_searching import due_day, planned


def begun(now: str, *goings: Doc | None, **fields: object) -> Doc:
    """Return a day of one pot and one source, whose baths are as far as is said."""
    day = due_day(*(None for _going in goings)) | {"now": now, "end": "18:00"}
    day["people"] = [{"name": "first", "from": "08:00", "to": "18:00"}]
    for bath, going in zip(day["baths"], goings, strict=True):
        if going:
            bath["going"] = {"pot": "P1", "source": "S1"} | going
    return day | fields


FILLED = {"fill_start_min": 0}
ON_HEAT = FILLED | {"heat_start_min": 5}
COOLING = ON_HEAT | {"checked_min": 117}
RINSED = COOLING | {"rinse_start_min": 210}


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("now", "going", "starts", "hands"),
    # fill 5, heat 25, dose 5, ramp 40, hold 40, check 2, cool 90, rinse 10
    [
        ("08:02", FILLED, {"heat": 5, "rinse": 207}, 3 + 5 + 2 + 10),
        ("08:20", FILLED, {"heat": 20, "rinse": 222}, 5 + 2 + 10),
        ("08:32", ON_HEAT, {"heat": 5, "rinse": 207}, 3 + 2 + 10),
        ("10:00", COOLING, {"heat": 5, "rinse": 207}, 10),
        ("11:40", COOLING, {"rinse": 220}, 10),
        ("11:34", RINSED, {"rinse": 210}, 6),
        ("12:00", RINSED, {"rinse": 210}, 0),
    ],
)
def test_what_is_over_is_settled_and_wants_no_hands(
    now: str, going: Doc, starts: Doc, hands: float
) -> None:
    """Each stage with a pencil, from what is past to what is still to come."""
    day = begun(now, going)
    answer = planned(day, spots=200)
    assert faults_of(day, answer) == []
    (bath,) = answer["baths"]
    assert {key: stages_of(bath)[key]["start_min"] for key in starts} == starts
    assert answer["hands_min"] == hands
    assert answer["proved"]


@pytest.mark.by_hand
def test_the_next_bath_waits_for_the_pot() -> None:
    """Rinsed at 207, the pot of one family is filled again at once."""
    day = begun("08:32", ON_HEAT, None)
    answer = planned(day, spots=200)
    assert faults_of(day, answer) == []
    assert stages_of(answer["baths"][1])["fill"]["start_min"] >= 207


def test_a_filled_pot_is_kept_for_its_bath() -> None:
    """Though the other bath were in time and the filled one is not."""
    day = begun("08:20", FILLED, None)
    day["baths"][1]["due"] = "12:00"
    answer = planned(day, spots=500)
    assert faults_of(day, answer) == []
    assert [each["name"] for each in answer["left_out"]] == ["B1"]


def test_a_pot_of_yesterday_is_rinsed_first() -> None:
    """It was checked before the day began."""
    day = begun("08:00", {"fill_start_min": -900, "checked_min": -780}, None)
    day["baths"][0]["minutes"]["cool"] = 0
    answer = planned(day, spots=200)
    assert faults_of(day, answer) == []
    starts = [stages_of(bath) for bath in answer["baths"]]
    assert starts[0]["rinse"]["start_min"] == 0
    assert starts[1]["fill"]["start_min"] >= 10


COIL = {"name": "S1", "power_kw": 1.8, "kind": "coil"}


@pytest.mark.parametrize(
    ("going", "fields", "said"),
    [
        (ON_HEAT, {"sources": [COIL | {"out_from": "08:30"}]}, "S1 is out from 08:30"),
        (
            ON_HEAT,
            {"people": [{"name": "first", "from": "08:00", "to": "09:00"}]},
            "nobody is in at 09:00",
        ),
        (
            ON_HEAT,
            {
                "sources": [COIL | {"circuit": "A"}],
                "circuits": [{"name": "A", "limit_kw": 1.5}],
            },
            "Circuit A carries 1.8 kW at 08:32 and holds 1.5 kW",
        ),
        (ON_HEAT, {"end": "11:00"}, "It cannot be rinsed any more"),
        (RINSED | {"rinse_start_min": 30}, {"rack_slots": 3}, "The rack has no room"),
    ],
)
def test_what_cannot_go_on_is_said(going: Doc, fields: Doc, said: str) -> None:
    """And left as it stands."""
    going = {key: at for key, at in going.items() if at <= 32 or key == "pot"}
    day = begun("08:32", going, **fields)
    answer = planned(day, spots=200)
    assert faults_of(day, answer) == []
    assert said in " ".join(each["why"] for each in answer["conflicts"])
    assert not answer["feasible"]
    assert not answer["proved"]


def test_two_late_pots_want_one_pair_of_hands() -> None:
    """Both are checked at one minute; the second with nobody, which is said."""
    day = begun("08:32", ON_HEAT, ON_HEAT | {"pot": "P2", "source": "S2"})
    day["pots"] += [day["pots"][0] | {"name": "P2"}]
    day["sources"] += [COIL | {"name": "S2"}]
    answer = planned(day, spots=200)
    assert faults_of(day, answer) == []
    whys = [each["why"] for each in answer["conflicts"]]
    assert whys == [
        "Nobody is free at 08:32 to dose it.",
        "Nobody is free at 09:55 to check it.",
    ]


def test_two_baths_written_into_one_pot_are_both_named() -> None:
    """Yesterday's was rinsed and nobody ticked it; today's was filled there."""
    day = begun("08:32", ON_HEAT, ON_HEAT | {"source": "S2"})
    day["sources"] += [COIL | {"name": "S2"}]
    answer = planned(day, spots=200)
    assert faults_of(day, answer) == []
    names = {x["name"] for x in answer["conflicts"] if "out of it" in x["why"]}
    assert names == {bath["name"] for bath in day["baths"]}


def test_a_late_pot_moves_little() -> None:
    """Planned anew with the plan before, fewer baths move than from nothing."""
    day = begun("08:32", ON_HEAT, None, None)
    day["pots"] += [day["pots"][0] | {"name": f"P{n}"} for n in (2, 3)]
    day["sources"] += [COIL | {"name": f"S{n}"} for n in (2, 3)]
    plan = planned(day, spots=2000)
    before = [
        {
            "name": bath["name"],
            "pot": bath["pot"],
            "source": bath["source"],
            "start_min": stages_of(bath)["fill"]["start_min"],
        }
        for bath in plan["baths"]
    ]
    assert planned(day | {"before": before}, spots=2000)["changes"] == []
    swapped = {"P2": "P3", "P3": "P2", "P1": "P1"}
    moved = [each | {"pot": swapped[each["pot"]]} for each in before]
    again = planned(day | {"before": moved}, spots=2000)
    assert again["changes"] == []
    assert again["end_min"] == plan["end_min"]
