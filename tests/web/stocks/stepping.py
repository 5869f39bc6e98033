"""A stock in the making, sent step by step through its page."""

from uuid import uuid4

from django.test import Client

from shadewright.workflows.making import start_making
from shadewright.workflows.makings import Making
from shadewright.workflows.stamps import stamp_now
from tests.web.benches import Bench
from tests.web.pages_read import Answer, read


def slate_begun(bench: Bench) -> Making:
    """Begin 500 ml of Slate at 1 %."""
    return start_making(
        dye_id=bench.dye,
        jar_id=bench.jar,
        volume_ml=500.0,
        strength_percent=1.0,
        stamp=stamp_now(by=None),
    )


def at(begun: Making) -> str:
    return f"/stocks/making/{begun.id}/"


def send(client: Client, begun: Making, step: str, **typed: str) -> Answer:
    form = {"step": step, "deed": str(uuid4()), "go": "next", **typed}
    return read(client.post(at(begun), form, follow=True))


def weighed(client: Client, begun: Making, powder: str = "5.2") -> Answer:
    send(client, begun, "lay_out")
    return send(client, begun, "weigh", powder_g=powder)


def made_up(client: Client, begun: Making) -> Answer:
    weighed(client, begun)
    for step in ("paste", "dissolve", "look", "cool"):
        send(client, begun, step)
    return send(client, begun, "make_up", final_ml="520", is_cold="on", water="rain")
