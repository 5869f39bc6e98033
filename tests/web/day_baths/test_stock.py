"""The page of a day's stock: what is short, the way to make it, and the way back."""

from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.records.models import Bath, BathDose
from shadewright.workflows.bottles import enter_bottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.stamps import stamp_now, today
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import read
from tests.web.stocks.made import made_to_the_end

DAY = f"/days/{today():%Y-%m-%d}"
STOCK = f"{DAY}/stock/"


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


def three_baths(things: Dyeing) -> None:
    """Plan three baths of 300 g: 180 ml of Slate each, of a bottle of 500 ml."""
    version = things.recipe()
    for _ in range(3):
        things.bath(version, fibre_g=300.0)


def test_a_day_without_a_bath_leads_on(client: Client, things: Dyeing) -> None:
    del things
    page = read(client.get(STOCK))
    assert "No bath of this day wants dye" in page.text
    assert f"{DAY}/add/" in page.links


@pytest.mark.by_hand
def test_what_is_short_is_made_filled_in(client: Client, things: Dyeing) -> None:
    # 540 ml are wanted of 490: 0.5 g are short, 0.54 g are to spare; 114 ml with the
    # last drops.
    three_baths(things)
    page = read(client.get(STOCK))
    for words in (
        "The bottles do not hold enough Slate for every bath of the day.",
        "Enough for 2 of 3 baths: B3 Low Tide is the first to lack, 0.5 g in all.",
        "for 2 of 3",
        f"{things.gorse_bottle} 270 ml of 490 ml, 1 %",
    ):
        assert words in page.text
    asked = f"?dye={things.slate}&strength_percent=1&volume_ml=250"
    assert f"{reverse('plan-stock')}{asked}" in page.links


def test_a_bottle_made_leads_back_and_is_taken(client: Client, things: Dyeing) -> None:
    three_baths(things)
    code = enter_bottle(
        dye_id=things.slate,
        strength_percent=1.0,
        volume_ml=250.0,
        stamp=stamp_now(by=None),
        about=Particulars(),
    ).code
    page = read(client.get(STOCK))
    assert f"1 dose planned without a bottle can now be drawn from {code}" in page.text
    sent = {"deed": uuid4()}
    for _ in range(2):
        assert client.post(STOCK, sent)["Location"] == STOCK
    assert not BathDose.objects.filter(bottle=None).exists()
    assert "There is enough" in read(client.get(STOCK)).text


def test_the_end_of_a_making_leads_to_the_days_that_wait(
    client: Client, things: Dyeing
) -> None:
    three_baths(things)
    page = made_to_the_end(client, things.slate)
    assert STOCK in page.links
    assert "1 dose waits for it" in page.text


def test_a_given_up_bath_wants_nothing(client: Client, things: Dyeing) -> None:
    number = things.bath(things.recipe())
    assert Bath.objects.filter(number=number).exists()
    page = read(client.get(STOCK))
    assert "1 bath that still wants dye" in page.text
    assert "with some to spare" in page.text
