"""Answers whose dyes stand in no bottle."""

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
    query = urlencode({"colour": "#5c7048", "base": str(studio.base.pk)})
    shown = read(client.get(f"/shades/find/?{query}"))
    for dye in studio.dyes:
        assert shown.text.count(f"Make a stock of {dye}") <= 1
    assert shown.text.count("Make a stock of") > 3
    assert "Own swatch, " in shown.source.replace("\u00a0", " ")
