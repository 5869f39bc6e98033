"""What the hands are wanted for next, and what rings for the whole room."""

from collections.abc import Iterator
from datetime import datetime, time, timedelta
from uuid import uuid4

import pytest
from django.utils import timezone

from shadewright.records.models import Bath, DayLine, DayPresence, DaySchedule, DyeDay
from shadewright.records.models.baths import BathAct
from shadewright.records.models.days import DayAct
from shadewright.workflows.bath_pages import open_baths
from shadewright.workflows.bath_shapes import Clock
from shadewright.workflows.days.all_off import all_off_asked
from shadewright.workflows.days.next_things import NextKind, NextThing, next_things
from shadewright.workflows.days.room import Room, keep_room
from shadewright.workflows.days.room_clocks import CLOSING, WATCH, room_clocks
from shadewright.workflows.stamps import as_of, this_moment, today
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped

pytestmark = [
    pytest.mark.store,
    pytest.mark.django_db,
    pytest.mark.usefixtures("noon"),
]


def at(clock: str) -> datetime:
    day = datetime(2026, 11, 26)  # ruff: ignore[call-datetime-without-tzinfo]
    return timezone.make_aware(datetime.combine(day, time.fromisoformat(clock)))


@pytest.fixture
def noon() -> Iterator[None]:
    with as_of(at("12:00")):
        yield


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def planned(*baths: tuple[str, int], washed: str = "") -> None:
    """Keep a plan from 08:00 on, in which baths begin after so many minutes."""
    row = DyeDay.objects.create(day=today())
    stages = ("fill", 0), ("rinse", 240)
    plan = {
        "baths": [
            {
                "name": number,
                "pot": "P1",
                "source": "S1",
                "stages": [
                    {
                        "stage": stage,
                        "start_min": start + after,
                        "end_min": start + after + 5,
                        "person": "Ines",
                    }
                    for stage, after in stages
                ],
                "touches": [],
            }
            for number, start in baths
        ],
        "washouts": [
            {
                "pot": "P1",
                "before": washed,
                "start_min": 0,
                "end_min": 10,
                "person": "Ines",
            }
        ],
        "left_out": [],
        "end_min": 300,
        "bound_min": 300,
        "proved": True,
        "hands_min": 20,
        "peak_kw_by_circuit": {},
    }
    asked = {"start": "08:00", "end": "18:00"}
    DaySchedule.objects.create(
        dye_day=row, deed=uuid4(), asked=asked, plan=plan, method="by hand"
    )


def things() -> tuple[NextThing, ...]:
    return next_things(this_moment())


def rings(key: str) -> Clock | None:
    return next((x for x in room_clocks(open_baths()) if x.key == key), None)


def test_what_rings_comes_first_then_hands_then_the_soonest(pot: Ready) -> None:
    hands, runs, ringing = (pot.another() for _ in range(3))
    tapped(hands, BathAct.STARTED, "fill", at=at("11:50"))
    tapped(runs, BathAct.HEAT_ON, "heat", at=at("11:55"))
    tapped(runs, BathAct.STARTED, "fill", at=at("11:40"))
    for key in ("fill", "dose-1", "dose-2", "yarn", "add-1"):
        tapped(runs, BathAct.MISSED, key, at=at("11:50"))
    tapped(ringing, BathAct.HEAT_ON, "heat", at=at("11:44"))
    found = things()
    assert [x.number for x in found] == [ringing, hands, runs, pot.number]
    kinds = [NextKind.RINGS, NextKind.HANDS, NextKind.RUNS, NextKind.BEGINS]
    assert [x.kind for x in found] == kinds
    assert [x.words for x in found[:3]] == [
        "Look at 15 minutes",
        "Slate",
        "Look at 15 minutes",
    ]
    assert [x.at for x in found] == [at("11:59"), at("11:50"), at("12:10"), None]
    assert [x.is_late for x in found] == [True, False, False, False]


def test_an_alarm_that_was_heard_waits_for_hands(pot: Ready) -> None:
    for key in ("fill", "dose-1", "dose-2", "yarn", "add-1"):
        tapped(pot.number, BathAct.MISSED, key, at=at("11:30"))
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=at("11:40"))
    tapped(pot.number, BathAct.NOTE, "look/heard", at=at("11:56"))
    (found,) = things()
    assert (found.kind, found.words) == (NextKind.HANDS, "Look at 15 minutes")


def test_a_plan_says_when_to_begin_what_is_late_and_what_to_wash(pot: Ready) -> None:
    soon, late, free = (pot.another() for _ in range(3))
    tapped(pot.number, BathAct.HEAT_OFF, "off", at=at("11:30"))
    planned((pot.number, 60), (soon, 300), (late, 200), washed=soon)
    found = {x.number: x for x in things()}
    assert list(found) == [late, pot.number, soon, free]
    assert found[late].is_late
    assert (found[soon].at, found[soon].pot) == (at("13:00"), "P1")
    assert found[soon].words == "Wash out the pot, then fill it"
    cooling = found[pot.number]
    assert (cooling.kind, cooling.at) == (NextKind.COOLS, at("13:00"))
    assert found[free].at is None


def test_a_bath_that_was_rinsed_wants_hands_until_it_hangs(pot: Ready) -> None:
    seen = []
    for act, step in (("heat off", "off"), ("rinsed", "rinse"), ("hung", "rack")):
        tapped(pot.number, BathAct(act), step)
        seen += [(x.kind, x.words) for x in things()]
    rinse = "Rinse, hang, write the lot"
    assert [words for _kind, words in seen[1:]] == [rinse, "Write the lot"]
    kinds = [NextKind.COOLS, NextKind.HANDS, NextKind.DRIES]
    assert [kind for kind, _words in seen] == kinds


def test_a_bath_of_tomorrow_asks_for_nothing(pot: Ready) -> None:
    Bath.objects.update(dyed_on=today() + timedelta(days=1))
    del pot
    assert things() == ()


def test_nobody_has_looked_rings_until_somebody_taps_anywhere(pot: Ready) -> None:
    other = pot.another()
    tapped(other, BathAct.STARTED, "fill", at=at("11:35"))
    assert rings(WATCH) is None
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=at("11:38"))
    found = rings(WATCH)
    assert found is not None
    assert (found.rings_at, found.bath) == (at("11:58"), pot.number)
    assert found.words.startswith("Nobody has looked for 20")
    assert found.words.endswith("On the heat: B1 Low Tide")
    tapped(other, BathAct.NOTE, "dose-1", at=at("11:50"))
    found = rings(WATCH)
    assert found is not None
    assert found.rings_at == at("12:10")
    tapped(pot.number, BathAct.HEAT_OFF, "off")
    assert rings(WATCH) is None


def described(*, closes_at: str = "18:00") -> None:
    keep_room(Room(closes_at=time.fromisoformat(closes_at)))


def test_the_close_rings_for_what_is_still_hot_and_is_heard_once(pot: Ready) -> None:
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=at("11:00"))
    assert rings(CLOSING) is None  # nobody said any hours
    described(closes_at="11:45")
    found = rings(CLOSING)
    assert found is not None
    assert (found.rings_at, found.bath) == (at("11:45"), pot.number)
    assert found.words.startswith("The room closes. Still on the heat: B1 Low Tide.")
    tapped(pot.number, BathAct.NOTE, "closing/heard", at=at("11:40"))
    assert rings(CLOSING) is not None  # heard before it rang: that was another day's
    tapped(pot.number, BathAct.NOTE, "closing/heard", at=at("11:50"))
    assert rings(CLOSING) is None
    assert rings(WATCH) is not None


def test_nothing_hot_rings_at_no_close(pot: Ready) -> None:
    described(closes_at="11:45")
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=at("10:00"))
    tapped(pot.number, BathAct.HEAT_OFF, "off", at=at("11:00"))
    assert rings(CLOSING) is None


def test_the_close_is_when_the_last_person_leaves(pot: Ready) -> None:
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=at("11:00"))
    day = DyeDay.objects.create(day=today())
    for name, leaves in (("Ines", "16:00"), ("Tam", "13:30")):
        DayPresence.objects.create(
            dye_day=day,
            name=name,
            starts_at=time(9),
            ends_at=time.fromisoformat(leaves),
        )
    found = rings(CLOSING)
    assert found is not None
    assert found.rings_at == at("16:00")


def test_a_close_that_nobody_heard_still_rings_after_midnight(pot: Ready) -> None:
    described()
    before = at("17:30") - timedelta(days=1)
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=before)
    found = rings(CLOSING)
    assert found is not None
    assert found.rings_at == at("18:00") - timedelta(days=1)
    tapped(pot.number, BathAct.NOTE, "closing/heard", at=at("07:00"))
    found = rings(CLOSING)
    assert found is not None
    assert found.rings_at == at("18:00")  # and again this evening


def all_off() -> tuple[bool, tuple[str, ...]] | None:
    asked = all_off_asked(this_moment(), open_baths())
    return None if asked is None else (asked.is_closing, asked.hot)


def test_all_off_is_asked_when_the_last_heat_is_off_or_the_room_closes(
    pot: Ready,
) -> None:
    assert all_off() is None
    other = pot.another()
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=at("10:00"))
    tapped(pot.number, BathAct.HEAT_OFF, "off", at=at("11:00"))
    assert all_off() is None  # another bath still waits
    Bath.objects.filter(number=other).update(dyed_on=today() + timedelta(days=1))
    assert all_off() == (False, ())
    day = DyeDay.objects.create(day=today())
    line = DayLine.objects.create(
        dye_day=day, act=DayAct.ALL_OFF, deed=uuid4(), at=this_moment()
    )
    assert all_off() is None
    DayLine.objects.create(
        dye_day=day, act=DayAct.UNDO, deed=uuid4(), at=this_moment(), undoes=line
    )
    assert all_off() == (False, ())
    with as_of(at("18:01")):
        tapped(pot.number, BathAct.HEAT_ON, "heat")
        Bath.objects.filter(number=other).update(dyed_on=today())
        tapped(other, BathAct.HEAT_ON, "heat")
        assert all_off() == (True, ("B2 Low Tide",))
