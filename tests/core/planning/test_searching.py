"""Every plan keeps every rule, small days are planned as well as can be."""

import json
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shadewright.core.planning import plan_of, searched
from shadewright.exchange.day_file import plan_answer, read_before, read_day
from tests.core.planning.begun_days import begun_day
from tests.core.planning.cp_sat import least_end
from tests.core.planning.made_days import Doc, made_day, with_steam
from tests.core.planning.plan_checker import faults_of


def seeded(seed: int) -> Random:
    """Return a generator that draws the same each time."""
    return Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]


def planned(day: Doc, *, spots: int) -> Doc:
    """Return the answer for a day, as JSON gives it."""
    text = json.dumps(day)
    wanted, before = read_day(text), read_before(text)
    *_, tried = searched(wanted, spots=spots, draws=seeded(1), before=before)
    answer: Doc = json.loads(
        json.dumps(plan_answer(plan_of(tried, wanted), is_stopped=False))
    )
    return answer


@settings(max_examples=40)
@given(seed=st.integers(min_value=0, max_value=10**6))
def test_every_plan_keeps_the_rules(seed: int) -> None:
    """The checker knows the file alone; what is left out says why."""
    day = made_day(seed)
    answer = planned(day, spots=1500)
    assert faults_of(day, answer) == []
    assert all(each["why"] for each in answer["left_out"])


@settings(max_examples=20)
@given(seed=st.integers(min_value=0, max_value=10**6))
def test_steam_and_learned_minutes_keep_the_rules(seed: int) -> None:
    """Steamed baths on steamers alone, each pot on each source in its own time."""
    day = with_steam(made_day(seed), seed)
    assert faults_of(day, planned(day, spots=1000)) == []


@settings(max_examples=40)
@given(seed=st.integers(min_value=0, max_value=10**6))
def test_a_day_that_has_begun_keeps_the_rules(seed: int) -> None:
    """Late pots, sources out, people gone; what cannot be is said, and only that."""
    day = with_steam(made_day(seed), seed) if seed % 3 == 0 else made_day(seed)
    begun = begun_day(day, planned(day, spots=300), seed)
    assert faults_of(begun, planned(begun, spots=800)) == []


@pytest.mark.parametrize("seed", range(16))
def test_small_days_are_proved(seed: int) -> None:
    """Up to four baths: as early as a constraint solver proves, or not at all."""
    day = made_day(seed, most_baths=4) | {"rack_slots": 100}
    answer = planned(day, spots=40_000)
    ours = None if answer["left_out"] else answer["end_min"]
    assert ours == least_end(day)


@pytest.mark.parametrize("seed", range(20))
def test_small_days_that_have_begun_are_proved(seed: int) -> None:
    """The same, planned anew without the plan before; a conflict is no plan."""
    day = made_day(seed, most_baths=4) | {"rack_slots": 100}
    begun = begun_day(day, planned(day, spots=300), seed)
    answer = planned(begun | {"before": []}, spots=20_000)
    is_amiss = answer["left_out"] or answer["conflicts"]
    assert (None if is_amiss else answer["end_min"]) == least_end(begun)


def test_the_same_day_gives_the_same_plan() -> None:
    """The budget is counted, and the draws have a seed."""
    day = made_day(5)
    assert planned(day, spots=4000) == planned(day, spots=4000)


def test_more_patience_is_never_worse() -> None:
    """A day of nine baths; the end falls or stays."""
    day = made_day(21) | {"rack_slots": 100}
    wanted = read_day(json.dumps(day))
    costs = [tried.best.cost for tried in searched(wanted, spots=8000, draws=seeded(2))]
    assert costs == sorted(costs, reverse=True)
    assert costs[-1] < costs[0]


def due_day(*dues: str | None) -> Doc:
    """Return a day of one pot in which one bath fits and no second."""
    bath = {
        "family": "blue",
        "depth_percent": 1.0,
        "fibre_g": 400,
        "skeins": 4,
        "liquor_ratio": 20,
        "minutes": {
            "fill": 5,
            "heat": 25,
            "dose": 5,
            "ramp": 40,
            "hold": 40,
            "check": 2,
            "cool": 90,
            "rinse": 10,
        },
    }
    baths = [
        bath | {"name": f"B{n}"} | ({"due": due} if due else {})
        for n, due in enumerate(dues)
    ]
    return {
        "start": "08:00",
        "end": "12:00",
        "people": [{"name": "first", "from": "08:00", "to": "12:00"}],
        "pots": [{"name": "P1", "volume_l": 10, "mass_kg": 1, "material": "enamel"}],
        "circuits": [],
        "sources": [{"name": "S1", "power_kw": 1.8, "kind": "coil"}],
        "rack_slots": 40,
        "washout_min": 10,
        "baths": baths,
    }


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("dues", "kept"),
    [
        ((None, "12:00"), "B1"),
        (("12:00", "11:45"), "B1"),
        (("11:50", "12:00", None), "B0"),
    ],
)
def test_what_is_due_first_is_kept(dues: tuple[str | None, ...], kept: str) -> None:
    """Without a due time goes first, then the latest due."""
    answer = planned(due_day(*dues), spots=2000)
    assert [bath["name"] for bath in answer["baths"]] == [kept]
    assert answer["end_min"] == 217


def test_an_overnight_bath_wants_no_rack() -> None:
    """Though the rack holds more than it should."""
    day = due_day(None) | {"rack_used": 41}
    day["baths"][0] |= {"overnight": True}
    assert planned(day, spots=200)["feasible"]


def test_a_day_that_holds_nothing_comes_to_an_end() -> None:
    """No spot is looked at where no skein can be hung up."""
    day = due_day(None, None) | {"rack_used": 40}
    assert len(planned(day, spots=2000)["left_out"]) == 2


def test_a_pinned_bath_is_never_left_out() -> None:
    """Though the other one is due."""
    day = due_day("12:00", None)
    day["baths"][1]["pinned"] = {"pot": "P1", "start_min": 0}
    answer = planned(day, spots=2000)
    assert [each["name"] for each in answer["left_out"]] == ["B0"]
