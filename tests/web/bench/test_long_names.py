"""A name of sixty signs: no key of a step may stand under the keys at the foot."""

import pytest
from playwright.sync_api import Page
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Recipe
from shadewright.records.models.baths import BathAct
from tests.browser import axe
from tests.workflows.bench import founded
from tests.workflows.pots import ready, tapped

LONG = "Low Tide over the Estuary Flats in November with a grey sky"
pytestmark = pytest.mark.django_db(transaction=True)


def test_the_way_to_check_a_bottle_stays_within_reach(
    live_server: LiveServer, phone: Page
) -> None:
    founded()
    pot = ready()
    pot.another()  # so that the bar above the keys names another pot
    Recipe.objects.update(name=LONG)
    tapped(pot.number, BathAct.STARTED, "fill")
    phone.goto(f"{live_server.url}/bench/{pot.number}/?view=main")
    check = phone.locator(".check:visible").bounding_box()
    done = phone.locator(".bench-keys:visible .first").bounding_box()
    assert check is not None
    assert done is not None
    assert check["y"] + check["height"] <= done["y"]
    assert axe(phone) == []
