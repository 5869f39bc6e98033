"""Planning a day from its page: the plan, wishes, what is out, who is in, patience."""

import re
from datetime import date, datetime, time, timedelta
from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from shadewright.records.models import (
    Bath,
    DaySchedule,
    DayWish,
    DyeDay,
    DyeRoom,
    Studio,
)
from shadewright.records.models.baths import BathAct
from shadewright.web.dye_days import plan_views, wish_views
from shadewright.workflows.stamps import as_of, today
from tests.web.dye_days.quickly import plan_quickly
from tests.web.pages_read import Answer, read
from tests.workflows.days.rooms import Dyehouse, dyehouse
from tests.workflows.pots import tapped


@pytest.fixture
def house(db: None, monkeypatch: pytest.MonkeyPatch) -> Dyehouse:
    """A dyehouse where no plan is looked for longer than a moment."""
    del db
    plan_quickly(monkeypatch, plan_views, wish_views)
    return dyehouse()


def tomorrow() -> date:
    return today() + timedelta(days=1)


def page(client: Client, name: str = "day", *more: object) -> Answer:
    return read(client.get(reverse(name, args=[tomorrow(), *more])))


def sent(client: Client, name: str, *more: object, **said: str) -> Answer:
    address = reverse(name, args=[tomorrow(), *more])
    return read(client.post(address, {"deed": str(uuid4()), **said}, follow=True))


def planned(client: Client) -> Answer:
    return sent(client, "day-plan", act="plan")


def test_a_day_is_planned_and_shown_as_lanes_and_in_words(
    client: Client, house: Dyehouse
) -> None:
    number = house.bath(tomorrow())
    assert "Plan the day" in page(client).text
    shown = planned(client)
    assert "1 bath planned" in shown.text
    assert "No plan of this day can end earlier" in shown.text
    assert f'data-bath="{number}"' in shown.source
    assert shown.source.count("<desc>") == 2
    assert "Fill the pot" in shown.text
    assert Bath.objects.get(number=number).pot is not None


def test_a_plan_sent_twice_is_made_once(client: Client, house: Dyehouse) -> None:
    house.bath(tomorrow())
    deed = str(uuid4())
    for _n in range(2):
        sent(client, "day-plan", act="plan", deed=deed, held="0")
    assert DaySchedule.objects.count() == 1


def test_a_bath_that_came_later_is_named(client: Client, house: Dyehouse) -> None:
    house.bath(tomorrow())
    planned(client)
    late = house.bath(tomorrow())
    shown = page(client)
    assert "Not in the plan yet" in shown.text
    assert late.rpartition("-")[2] in shown.text


def test_what_does_not_fit_has_its_ways_on(client: Client, house: Dyehouse) -> None:
    number = house.bath(tomorrow(), fibre_g=800.0)
    shown = planned(client)
    assert "No pot holds" in shown.text
    assert reverse("day-bath", args=[tomorrow(), number]) in shown.links
    assert f"/baths/new/?again={number}" in shown.links


def test_a_wish_is_kept_and_the_plan_respects_it(
    client: Client, house: Dyehouse
) -> None:
    number = house.bath(tomorrow())
    planned(client)
    assert "Now planned from 08:00" in page(client, "day-bath", number).text
    plate = house.sources[1]
    shown = sent(
        client, "day-bath", number, source=str(plate.pk), starts_at="10:30", night="no"
    )
    assert "from 10:30" in shown.text
    assert f"on {plate.name}" in shown.text
    assert "was pinned" in shown.text
    plan = DaySchedule.objects.first()
    assert plan is not None
    (bath,) = plan.plan["baths"]
    assert (bath["source"], bath["stages"][0]["start_min"]) == (plate.name, 150)


def test_a_dragged_bar_pins_its_bath(client: Client, house: Dyehouse) -> None:
    number = house.bath(tomorrow(), due_at=time(17))
    planned(client)
    sent(client, "day-bath", number, act="drag", source="Plate B", starts_at="09:15")
    wish = DayWish.objects.get()
    assert (str(wish.source), wish.starts_at, wish.due_at) == (
        "Plate B",
        time(9, 15),
        time(17),
    )


@pytest.mark.parametrize(
    ("said", "field", "fault"),
    [
        ({"starts_at": "06:00"}, "starts_at", "within the day, 08:00 to 18:00"),
        ({"night": "yes", "due_at": "16:00"}, "due_at", "cools overnight"),
        ({"is_steamed": "on", "pot": "first"}, "pot", "takes no pot"),
        ({"is_steamed": "on", "source": "first"}, "source", "is no steamer"),
    ],
)
def test_a_wish_that_cannot_be_is_refused_by_its_field(
    client: Client, house: Dyehouse, said: dict[str, str], field: str, fault: str
) -> None:
    number = house.bath(tomorrow())
    firsts = {"pot": house.pots[0].pk, "source": house.sources[0].pk}
    typed = {k: str(firsts[k]) if v == "first" else v for k, v in said.items()}
    refused = sent(client, "day-bath", number, **typed)
    assert refused.status == 422
    assert fault in refused.fault(field)
    assert not DayWish.objects.exists()


def test_a_bath_of_another_day_has_no_wishes_here(
    client: Client, house: Dyehouse
) -> None:
    number = house.bath(tomorrow() + timedelta(days=1))
    assert page(client, "day-bath", number).status == 404


def test_what_is_out_is_planned_around_and_comes_back(
    client: Client, house: Dyehouse
) -> None:
    house.bath(tomorrow())
    planned(client)
    first = DaySchedule.objects.get().plan["baths"][0]["source"]
    burner = next(each for each in house.sources if each.name == first)
    shown = sent(
        client, "day-replan", act="out", thing=f"source-{burner.pk}", out_why="fuse"
    )
    assert f"What changed: {burner.name} is out" in shown.text
    plan = DaySchedule.objects.first()
    assert plan is not None
    assert plan.plan["baths"][0]["source"] != first
    assert f"{burner.name} is out all day: fuse" in page(client, "day-replan").text
    outage = re.search(r'name="id" value="(\d+)"', page(client, "day-replan").source)
    assert outage is not None
    sent(client, "day-replan", act="back", id=outage[1])
    assert "Nothing is out" in page(client, "day-replan").text


def test_what_is_not_out_cannot_come_back(client: Client, house: Dyehouse) -> None:
    del house
    for number in ("7", "x", ""):
        assert sent(client, "day-replan", act="back", id=number).status == 404


def test_a_bar_dropped_beside_the_day_is_refused(
    client: Client, house: Dyehouse
) -> None:
    number = house.bath(tomorrow())
    refused = sent(client, "day-bath", number, act="drag", source="Plate A")
    assert "dropped beside the day" in refused.text
    unknown = sent(
        client, "day-bath", number, act="drag", source="Plate Z", starts_at="09:00"
    )
    assert unknown.status == 404
    zoned = {"act": "drag", "source": "Plate A", "starts_at": "09:00+02:00"}
    assert sent(client, "day-bath", number, **zoned).status == 200


def test_today_is_replanned_from_what_is_on_the_heat(
    client: Client, house: Dyehouse
) -> None:
    DyeRoom.objects.create(
        studio=Studio.objects.get(),
        opens_at=time(0, 1),
        closes_at=time(23, 59),
        cools_overnight=False,
    )
    going, waits = house.bath(today()), house.bath(today())
    noon = timezone.make_aware(datetime.combine(today(), time(12)))
    address = reverse("day-plan", args=[today()])
    with as_of(noon - timedelta(hours=3)):
        client.post(address, {"deed": str(uuid4()), "act": "plan"})
        tapped(going, BathAct.STARTED, "fill")
        tapped(going, BathAct.HEAT_ON, "heat")
    with as_of(noon):
        replan = reverse("day-replan", args=[today()])
        assert "going" in read(client.get(replan)).text
        shown = read(
            client.post(replan, {"deed": str(uuid4()), "act": "plan"}, follow=True)
        )
    assert "now 12:00" in shown.source
    plan = DaySchedule.objects.first()
    assert plan is not None
    starts = {x["name"]: x["stages"][0]["start_min"] for x in plan.plan["baths"]}
    assert starts[going] == 539
    assert starts[waits] >= 719


def test_hours_and_people_are_kept_by_line(client: Client, house: Dyehouse) -> None:
    house.bath(tomorrow())
    lines = "Ines 09:00 to 12:00\nInes 14.00-17.30\nA “helper” & co 10:00 to 11:00"
    hours = {"opens_at": "07:30", "closes_at": "19:00"}
    shown = sent(client, "day-hours", people=lines, **hours)
    assert "A “helper” & co 10:00 to 11:00" in shown.text
    assert "07:30 to 19:00" in shown.text
    assert DyeDay.objects.get().presences.count() == 3
    assert "Ines 14:00 to 17:30" in page(client, "day-hours").text


@pytest.mark.parametrize(
    ("lines", "fault"),
    [
        ("Ines all day", "has no name with two times"),
        ("Ines 25:00 to 26:00", "has no name with two times"),
        ("Ines 12:00 to 09:00", "leaves at 09:00, before they come"),
        ("Ines 08:00 to 12:00\nines 11:00 to 13:00", "is in twice at once"),
    ],
)
def test_people_that_cannot_be_are_refused(
    client: Client, house: Dyehouse, lines: str, fault: str
) -> None:
    del house
    hours = {"opens_at": "08:00", "closes_at": "18:00"}
    refused = sent(client, "day-hours", people=lines, **hours)
    assert refused.status == 422
    assert fault in refused.fault("people")


def test_a_day_cannot_close_before_it_opens(client: Client, house: Dyehouse) -> None:
    del house
    refused = sent(client, "day-hours", opens_at="12:00", closes_at="09:00")
    assert "after the opening at 12:00" in refused.fault("closes_at")


def test_the_room_is_described(client: Client, house: Dyehouse) -> None:
    del house
    address = reverse("day-room")
    names = ("sinks", "rack_slots", "washout_min", "dry_hours", "pack_days")
    shown = read(client.get(address))
    typed = {name: shown.value(name) for name in names}
    typed |= {"opens_at": "09:00", "closes_at": "17:00", "rack_slots": "24"}
    typed |= {"seconds_percent": "5", "spare_percent": "10", "look_every_min": "20"}
    assert client.post(address, typed).status_code == 302
    assert not DyeRoom.objects.get().cools_overnight
    assert "Rack 24 places" in page(client).text
