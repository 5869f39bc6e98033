"""What hands are wanted for next, on the page of today."""

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import as_of, stamp_now, today
from tests.web.pages_read import read
from tests.workflows.days.rooms import dyehouse
from tests.workflows.pots import tapped


def wanted(client: Client) -> str:
    """Return the table of what hands are wanted for, in words."""
    text = read(client.get(reverse("day", args=[today()]))).text
    return text.partition("Hands wanted next")[2].partition("The day Open")[0]


@pytest.mark.django_db
def test_what_was_ticked_early_is_not_wanted_and_what_is_late_is(
    client: Client,
) -> None:
    six = timezone.localtime().replace(hour=6, minute=0)
    with as_of(six):
        house = dyehouse()
        number = house.bath(today())
        make_plan(day=today(), stamp=stamp_now(by=None), seconds=0.02)
        assert "Fill the pot" in wanted(client)
        tapped(number, BathAct.STARTED, "fill")
        assert "Fill the pot" in wanted(client)  # the doses are not in yet
        tapped(number, BathAct.HEAT_ON, "heat")
        assert "Fill the pot" not in wanted(client)
        assert "Look at 15 minutes" in wanted(client)
    with as_of(six.replace(hour=20)):  # nobody ticked it: it is late, not over
        assert "Look at 15 minutes" in wanted(client)
        tapped(number, BathAct.AT_TOP, "top")
        assert "Look at 15 minutes" not in wanted(client)
        assert "Look at the bath, heat off" in wanted(client)
