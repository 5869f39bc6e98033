"""What a dye's page says of how long its stocks keep."""

from datetime import UTC, datetime, time, timedelta

import pytest
from django.test import Client

from shadewright.workflows.bottles import Look, enter_bottle, look_at
from shadewright.workflows.filling import Particulars
from shadewright.workflows.making import (
    make_up,
    start_making,
    weigh_powder,
)
from shadewright.workflows.stamps import stamp_now, today
from tests.web.pages_read import read
from tests.workflows.bench import founded, new_dye, now

pytestmark = pytest.mark.django_db


def watched(dye_id: int, *, clear: int, settled: int | None = None) -> None:
    """Enter a bottle of a hundred days, seen clear and then perhaps settled."""
    made_on = today() - timedelta(days=100)
    bottle = enter_bottle(
        dye_id=dye_id,
        strength_percent=1.0,
        volume_ml=300.0,
        stamp=now(),
        about=Particulars(made_on=made_on),
    )
    looks = [(clear, Look.CLEAR), *([(settled, Look.SETTLED)] if settled else [])]
    for days, look in looks:
        at = datetime.combine(made_on + timedelta(days=days), time(12), tzinfo=UTC)
        look_at(code=bottle.code, look=look, stamp=stamp_now(by=None, at=at))


def test_without_looks_it_says_what_stands(client: Client) -> None:
    founded()
    page = read(client.get(f"/dyes/{new_dye()}/"))
    assert "No bottle has been watched yet: common practice stands." in page.text
    assert "Look at a bottle from day 91 on" in page.text
    assert "life-curve" not in page.source


def test_with_enough_looks_it_draws_them(client: Client) -> None:
    founded()
    dye = new_dye()
    for settled in (40, 70, None, None, None):
        watched(dye, clear=30 if settled else 80, settled=settled)
    page = read(client.get(f"/dyes/{dye}/"))
    assert "2 of 5 bottles settled: nine in ten are clear up to day 30" in page.text
    assert "That rests on your own looks." in page.text
    assert 'class="life-curve"' in page.source


def test_a_new_bottle_s_discard_day_is_suggested_from_them(client: Client) -> None:
    founded()
    dye = new_dye()
    for settled in (40, 40, 40, 40, None):
        watched(dye, clear=30 if settled else 80, settled=settled)
    begun = start_making(
        dye_id=dye, jar_id=None, volume_ml=500, strength_percent=1.0, stamp=now()
    )
    weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
    make_up(making_id=begun.id, final_ml=500.0)
    page = read(client.get(f"/stocks/making/{begun.id}/"))
    assert page.value("discard_by") == f"{today() + timedelta(days=30):%Y-%m-%d}"
