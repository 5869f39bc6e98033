"""A stock made through all its steps, to the last page."""

from uuid import uuid4

from django.test import Client
from django.urls import reverse

from shadewright.workflows.jars import receive_jar
from shadewright.workflows.making import start_making
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import Answer, read

_STEPS: tuple[tuple[str, dict[str, str]], ...] = (
    ("weigh", {"powder_g": "2.5"}),
    ("paste", {}),
    ("dissolve", {}),
    ("cool", {}),
    ("make_up", {"final_ml": "250", "is_cold": "on"}),
    ("label", {}),
)


def made_to_the_end(client: Client, dye_id: int) -> Answer:
    """Make 250 ml of 1 % out of a new jar, and return the page at the end."""
    stamp = stamp_now(by=None)
    jar = receive_jar(dye_id=dye_id, powder_g=100.0, stamp=stamp)
    making = start_making(
        dye_id=dye_id,
        jar_id=jar.id,
        strength_percent=1.0,
        volume_ml=250.0,
        stamp=stamp_now(by=None),
    )
    address = reverse("making", args=[making.id])
    for step, more in _STEPS:
        client.post(address, {"deed": str(uuid4()), "step": step, **more})
    return read(client.get(address))
