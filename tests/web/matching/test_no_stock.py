"""Answers whose dyes stand in no bottle."""

import re
from urllib.parse import urlencode

import pytest
from django.test import Client

from shadewright.workflows.bottles import pour_away
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import read
from tests.workflows.shades.studios import Fitted

pytestmark = pytest.mark.django_db


def test_a_dye_without_stock_is_said_once(client: Client, studio: Fitted) -> None:
    """Each answer draws it dry; the first says why. Its square is its own swatch."""
    for code in (studio.pot.slate, studio.pot.gorse):
        pour_away(code=code, stamp=stamp_now(by=None))
    query = urlencode({"colour": "52, -10, 20", "base": str(studio.base.pk)})
    shown = read(client.get(f"/shades/find/?{query}"))
    lacking = re.findall(r"(\w+) \([\d.]+ g of dye\)", shown.text)
    assert len(lacking) > 3
    assert sorted(lacking) == sorted(set(lacking))
    assert "1 thing to mind Bottles, other lights, cost, and why" in shown.text
    assert "Own swatch, " in shown.source.replace("\u00a0", " ")
