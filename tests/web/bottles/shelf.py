"""A bottle on the shelf, and how its acts are sent."""

from dataclasses import dataclass, field
from uuid import uuid4

from django.test import Client

from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from tests.web.pages_read import Answer, read
from tests.workflows.bench import entered, founded, made, new_dye, new_jar


@dataclass
class Bench:
    """A browser before a shelf with a jar, a made bottle and a stronger one."""

    client: Client
    jar_id: int
    code: str
    stronger: str
    other_dye: str
    deeds: list[str] = field(default_factory=list)

    @property
    def bottle(self) -> ShelfBottle:
        """The bottle that is acted on."""
        return shelf_bottle(self.code)

    def see(self, act: str = "") -> Answer:
        """Open the bottle, or one of its acts."""
        return read(self.client.get(f"/bottles/{self.code}/{act}"))

    def send(self, act: str, *, deed: str = "", **typed: object) -> Answer:
        """Send an act and go on to the page that follows."""
        self.deeds.append(deed or str(uuid4()))
        sent = {"deed": self.deeds[-1], **typed}
        address = f"/bottles/{self.code}/{act}/"
        return read(self.client.post(address, sent, follow=True))


def bench(client: Client) -> Bench:
    """Lay the shelf out: 500 ml at 1 %, and 300 ml at 4 %."""
    founded()
    dye_id = new_dye("Slate")
    jar_id = new_jar(dye_id)
    return Bench(
        client=client,
        jar_id=jar_id,
        code=made(dye_id, jar_id).code,
        stronger=entered(dye_id, volume_ml=300.0, strength_percent=4.0).code,
        other_dye=entered(new_dye("Gorse")).code,
    )
