"""A form that was opened because something was missing leads back to where it was."""

import pytest
from django.test import Client

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("ines")]
POT = {"name": "Blue pot", "material": "enamel", "volume_l": "12"}
BACK = "/days/2026-11-27/add/?line=1"
WAY = "/pots/new/?next=/days/2026-11-27/add/%3Fline%3D1"


def test_what_was_missing_leads_back_to_where_it_was(client: Client) -> None:
    assert f'href="{BACK}"' in client.get(WAY).content.decode()  # Leave it
    assert client.post(WAY, POT).headers["Location"] == BACK


def test_no_stranger_is_led_to(client: Client) -> None:
    away = client.post("/pots/new/?next=https://elsewhere.example/", POT)
    assert away.headers["Location"].startswith("/pots/")
