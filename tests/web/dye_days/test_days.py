"""The list of dye days, and a day with its baths and what it lacks."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from shadewright.records.models import Bath, HeatSource, Pot
from shadewright.records.models.baths import BathAct
from shadewright.web.ways import way_round
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.stamps import as_of, stamp_now, today
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read
from tests.workflows.days.rooms import dyehouse
from tests.workflows.pots import tapped


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


@pytest.fixture
def number(things: Dyeing) -> str:
    return things.bath(things.recipe())


def page(client: Client, address: str) -> Answer:
    return read(client.get(address))


def of_today() -> str:
    return reverse("day", args=[today()])


def test_days_stand_in_order_with_what_is_planned(
    client: Client, things: Dyeing, number: str
) -> None:
    moss = things.bath(things.recipe("Moss"))
    Bath.objects.filter(number=moss).update(dyed_on=today() - timedelta(days=1))
    shown = page(client, reverse("days"))
    assert shown.text.index("Today,") < shown.text.index("Yesterday,")
    assert "1 bath" in shown.text
    assert of_today() in shown.links
    assert number


def test_a_date_opens_its_day_and_what_is_none_is_said(
    client: Client, ines: object
) -> None:
    del ines
    found = client.get(reverse("days"), {"day": "2026-11-30"})
    assert found.headers["Location"] == "/days/2026-11-30/"
    refused = read(client.get(reverse("days"), {"day": "next week"}))
    assert refused.status == 422
    assert "a date such as" in refused.text
    assert client.get("/days/2026-02-30/").status_code == 404


def test_a_day_shows_its_baths_but_not_those_given_up(
    client: Client, things: Dyeing, number: str
) -> None:
    gone = things.bath(things.recipe("Moss"))
    give_up(number=gone, why="", stamp=stamp_now(by=None))
    shown = page(client, of_today())
    assert number in shown.text
    assert gone not in shown.text
    assert "1 bath, 100 g." in shown.text.replace("\u00a0", " ")


def test_a_day_says_what_is_missing_and_the_way_on(
    client: Client, ines: object
) -> None:
    del ines
    shown = page(client, of_today())
    assert "No pot is written down" in shown.text
    assert "No burner is written down" in shown.text
    ways = (way_round(x, back=of_today()) for x in ("add-pot", "add-burner"))
    assert set(ways) <= set(shown.links)
    Pot.objects.create(name="Blue pot", volume_l=12.0)
    HeatSource.objects.create(name="Ring", kind="induction", power_kw=1.8)
    assert "is written down" not in page(client, of_today()).text


def test_a_day_that_was_is_only_looked_at(client: Client, ines: object) -> None:
    del ines
    shown = page(client, reverse("day", args=[today() - timedelta(days=9)]))
    assert "the day is over" in shown.text
    assert "No pot is written down" not in shown.text


def test_hands_are_not_wanted_next_for_a_bath_that_is_over(
    client: Client, db: None
) -> None:
    del db
    morning = timezone.localtime().replace(hour=6, minute=0)
    with as_of(morning):
        house = dyehouse()
        over, waits = house.bath(today()), house.bath(today())
        make_plan(day=today(), stamp=stamp_now(by=None), seconds=0.02)
        wanted = f'<th scope="row">{over[-2:]}<'
        assert wanted in page(client, of_today()).source
        tapped(over, BathAct.FINISHED, "finish")
        shown = page(client, of_today()).source
    assert wanted not in shown
    assert f'<th scope="row">{waits[-2:]}<' in shown


def test_what_yesterday_left_is_not_mistaken_for_a_bath_of_today(
    client: Client, db: None
) -> None:
    """Both are B1 of one recipe, and today's may be on the heat."""
    del db
    morning = timezone.localtime().replace(hour=6, minute=0)
    with as_of(morning):
        house = dyehouse()
        left, waits = house.bath(today() - timedelta(days=1)), house.bath(today())
        Bath.objects.filter(number=left).update(
            pot=house.pots[0], source=house.sources[0]
        )
        tapped(left, BathAct.STARTED, "fill")
        tapped(left, BathAct.HEAT_OFF, "off")
        make_plan(day=today(), stamp=stamp_now(by=None), seconds=0.02)
        source = page(client, of_today()).source
        rinse, fill = (f'<th scope="row">{each}<' for each in (left, "B1"))
        assert (left[-2:], waits[-2:]) == ("B1", "B1")
        assert rinse in source
        assert fill in source
        assert source.index(rinse) < source.index("Rinse and hang 1 skein")
        tapped(left, BathAct.FINISHED, "finish")
        later = page(client, of_today()).source
    assert rinse not in later
    assert fill in later
