"""How long a bottle keeps, in words."""

from datetime import date, timedelta

import pytest
from django.test import Client

from shadewright.web.shelf.keeping_words import days_of, time_left
from shadewright.workflows.bottles import enter_bottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.stamps import today
from tests.web.pages_read import read
from tests.workflows.bench import founded, new_dye, now

pytestmark = pytest.mark.django_db


def made(days_ago: int | None, discard_by: date | None = None) -> ShelfBottle:
    made_on = None if days_ago is None else today() - timedelta(days=days_ago)
    return enter_bottle(
        dye_id=new_dye(),
        strength_percent=1.0,
        volume_ml=300.0,
        stamp=now(),
        about=Particulars(made_on=made_on, discard_by=discard_by),
    )


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("days_ago", "words"),
    [
        (None, "time left not known"),
        (180, "2 days left"),
        (182, "last day"),
        (183, "past its time by 1 day"),
    ],
)
def test_time_left_of_six_months(days_ago: int | None, words: str) -> None:
    assert time_left(made(days_ago)) == words  # 182 days by common practice


def test_the_days_say_where_they_come_from() -> None:
    assert days_of(made(10)).endswith(", by common practice")


def test_a_day_on_the_bottle_holds_and_no_day_is_said_so() -> None:
    assert days_of(made(10, today())).endswith(", as written on it")


def test_a_bottle_of_unknown_age_is_looked_at() -> None:
    assert days_of(made(None)).endswith("look before every draw")


def test_the_shelf_says_it_beside_the_picture(client: Client) -> None:
    founded()
    made(180)
    page = read(client.get("/shelf/?sort=time"))
    assert page.text.count("2 days left") == 2
    assert 'class="time-left"' in page.source
