"""What the page of a day says of baths that cannot go on, or went elsewhere."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.records.models import Bath, DaySchedule
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import stamp_now, today
from tests.web.pages_read import Answer, read
from tests.workflows.days.rooms import Dyehouse, dyehouse


@pytest.fixture
def house(db: None) -> Dyehouse:
    del db
    return dyehouse()


def shown(client: Client, house: Dyehouse, **said: list[dict[str, str]]) -> Answer:
    """Plan tomorrow and show it, with something more that its plan says."""
    day = today() + timedelta(days=1)
    house.bath(day)
    make_plan(day=day, stamp=stamp_now(by=None), seconds=0.02)
    kept = DaySchedule.objects.get()
    kept.plan |= said
    kept.save()
    return read(client.get(reverse("day", args=[day])))


def test_a_bath_that_cannot_go_on_is_named_once_with_a_way_on(
    client: Client, house: Dyehouse
) -> None:
    number = f"{today() + timedelta(days=1):%y%m%d}-B1"
    reasons = ("Plate A is taken by another.", "The fuse bears less.")
    page = shown(client, house, conflicts=[{"name": number, "why": x} for x in reasons])
    assert " ".join(reasons) in page.text
    assert page.text.count("Say where it really stands") == 1


def test_a_bath_that_left_the_day_is_not_left_out_of_it(
    client: Client, house: Dyehouse
) -> None:
    gone = Bath.objects.get(number="260105-B1").number
    page = shown(client, house, left_out=[{"name": gone, "why": "No pot is free."}])
    assert "No pot is free" not in page.text


def test_the_table_of_hands_has_the_short_name_first(
    client: Client, house: Dyehouse
) -> None:
    page = shown(client, house)
    assert '<th scope="row">B1<span class="desk"> ' in page.source
