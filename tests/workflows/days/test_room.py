"""The dye room is as it was described, or as most are."""

from datetime import time

import pytest

from shadewright.records.models import DyeRoom, Studio
from shadewright.workflows.days.room import Room, room_now

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def test_a_room_that_nobody_described_has_the_usual_values() -> None:
    assert room_now() == Room()


def test_a_room_is_as_it_was_described() -> None:
    studio = Studio.objects.create(name="Fell Lane")
    DyeRoom.objects.create(studio=studio, opens_at=time(7, 30), rack_slots=200)
    room = room_now()
    assert (room.opens_at, room.rack_slots, room.sinks) == (time(7, 30), 200, 1)
    assert room.is_described
