"""A burner hangs on a circuit, and a steamer has room for so much yarn."""

import pytest
from django.test import Client

from shadewright.records.models import Circuit, HeatSource

pytestmark = pytest.mark.usefixtures("ines")
RING = {"name": "Ring", "kind": "coil", "power_kw": "2"}


def text(client: Client, address: str) -> str:
    return client.get(address).content.decode().replace("\u00a0", " ")


def test_a_burner_says_its_circuit_and_an_edit_names_both(client: Client) -> None:
    first, second = (
        Circuit.objects.create(name=name, limit_kw=3.6) for name in ("Wall", "Cooker")
    )
    ring = {**RING, "circuit": str(first.pk)}
    place = client.post("/burners/new/", ring).headers["Location"]
    assert "Wall" in text(client, place)
    moved = {**ring, "circuit": str(second.pk)}
    page = client.post(f"{place}edit/", moved, follow=True).content.decode()
    assert 'Circuit: <span class="undone">Wall</span> → Cooker' in page
    assert "Cooker" in text(client, "/burners/")


@pytest.mark.parametrize(("kind", "room_g"), [("steamer", 800.0), ("coil", None)])
def test_only_a_steamer_has_room_for_yarn(
    client: Client, kind: str, room_g: float | None
) -> None:
    sent = {**RING, "kind": kind, "room_g": "800"}
    client.post("/burners/new/", sent)
    assert HeatSource.objects.get().room_g == room_g
