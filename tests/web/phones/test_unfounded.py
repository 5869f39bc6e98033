"""Before a studio is founded a phone meets the door, and nothing turns in a ring."""

import pytest
from django.test import Client

pytestmark = pytest.mark.django_db


def test_a_phone_meets_the_door_of_a_studio_not_yet_founded() -> None:
    answer = Client(REMOTE_ADDR="192.168.1.20").get("/", follow=True)
    assert answer.redirect_chain == [("/pair/", 302)]
    assert answer.status_code == 200
