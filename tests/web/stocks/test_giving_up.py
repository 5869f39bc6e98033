"""Giving a stock up: asked once, the powder back in its jar or gone."""

import pytest
from django.test import Client

from shadewright.workflows.jars import jar
from shadewright.workflows.makings import Making, making
from tests.web.benches import small_bench
from tests.web.pages_read import read
from tests.web.sample import HOSTILE
from tests.web.stocks.stepping import at, slate_begun, weighed

pytestmark = pytest.mark.django_db


@pytest.fixture
def begun() -> Making:
    return slate_begun(small_bench())


def test_giving_up_asks_once_and_puts_the_powder_back(
    client: Client, begun: Making
) -> None:
    weighed(client, begun)
    asks = read(client.get(f"{at(begun)}give-up/"))
    assert "5.2 g of powder were weighed out" in asks.text
    assert "Only dry, clean powder goes back" in asks.text
    assert at(begun) in asks.links
    assert not making(begun.id).is_abandoned
    done = client.post(f"{at(begun)}give-up/", {"powder": "back"}, follow=True)
    assert "5.2 g of powder: back in jar J-1" in read(done).text
    assert jar(begun.stock.jar_id or 0).left_g == 100.0
    assert "Nobody goes on with this stock" in read(client.get(at(begun))).text


def test_giving_up_may_leave_the_powder_gone_and_is_done_once(
    client: Client, begun: Making
) -> None:
    weighed(client, begun)
    for _ in range(2):
        client.post(f"{at(begun)}give-up/", {"powder": "away"})
    assert making(begun.id).is_abandoned
    assert jar(begun.stock.jar_id or 0).left_g == pytest.approx(94.8)


def test_before_the_weighing_there_is_nothing_to_put_back(
    client: Client, begun: Making
) -> None:
    asks = read(client.get(f"{at(begun)}give-up/"))
    assert "Nothing is weighed yet" in asks.text
    assert "back in jar" not in asks.text
    assert read(client.post(f"{at(begun)}give-up/", {"powder": HOSTILE})).status == 422
    client.post(f"{at(begun)}give-up/", {"powder": "away"})
    assert making(begun.id).is_abandoned
