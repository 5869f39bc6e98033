"""The page of what to mix and what to pour away."""

from datetime import timedelta

import pytest
from django.test import Client

from shadewright.records.models import Dye, StockBottle
from shadewright.workflows.stamps import today
from tests.web.pages_read import Answer, read
from tests.workflows.bench import founded, made, new_dye
from tests.workflows.pots import ready

pytestmark = pytest.mark.django_db


def see(client: Client) -> Answer:
    return read(client.get("/shelf/turnover/"))


def test_an_empty_shelf_asks_for_nothing(client: Client) -> None:
    founded()
    assert "Nothing to mix and nothing to pour away." in see(client).text


def test_it_leads_to_the_stock_that_is_short(client: Client) -> None:
    founded()
    pot = ready(bottle_ml=100.0)
    pot.another()
    page = see(client)
    assert "1 dye to mix, no bottles to test or let go." in page.text
    assert any(link.startswith("/stocks/new/?dye=") for link in page.links)


def test_it_says_what_goes_with_its_cautions(client: Client) -> None:
    founded()
    plain, metal = made(new_dye()), made(new_dye("Coal"))
    Dye.objects.filter(name="Coal").update(is_metal_complex=True)
    StockBottle.objects.update(made_on=today() - timedelta(days=200))
    page = see(client)
    for code in (plain.code, metal.code):
        assert f"/bottles/{code}/pour/" in page.links
        assert f"/bottles/{code}/strength-test/" in page.links
    assert "What it cost is not known: jar not known of bottle" in page.text
    assert f"collect it and hand it in: {metal.code}" in page.text
    assert "Never to a storm drain or a septic tank" in page.text
    assert "safety data sheet" in page.text
