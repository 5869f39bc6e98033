"""A card on the screen: what a person leaves in it, types and sends."""

import re
from dataclasses import dataclass
from html import unescape

from django.http.response import HttpResponseBase
from django.test import Client

from tests.web.pages_read import Answer, read


@dataclass(frozen=True)
class Sheet:
    """The page with its form as it is shown."""

    client: Client
    number: str
    page: Answer

    @property
    def address(self) -> str:
        """Where it is and where it is sent."""
        return f"/baths/{self.number}/card/"

    @property
    def shown(self) -> dict[str, str]:
        """What the browser would send if nobody touched anything."""
        sent = {}
        for tag in re.findall(r"<input[^>]*>", self.page.source):
            said = dict(re.findall(r'(\w+)="([^"]*)"', tag))
            is_off = said.get("type") == "checkbox" and " checked" not in tag
            if "name" in said and not is_off and said["name"] != "person":
                sent[said["name"]] = unescape(
                    said.get("value", "on" if "checkbox" in tag else "")
                )
        return sent

    def send(self, go: str = "write", **typed: str) -> HttpResponseBase:
        """Send it with some fields changed; an empty text takes a tick away.

        ``dose_1_amount`` stands for ``dose-1-amount``.
        """
        named = {name.replace("_", "-"): value for name, value in typed.items()}
        sent = self.shown | named | {"go": go}
        off = {n for n, value in named.items() if n.endswith("-planned") and not value}
        return self.client.post(
            self.address, {n: value for n, value in sent.items() if n not in off}
        )


def opened(client: Client, number: str) -> Sheet:
    """Open a bath's card to type it in."""
    return Sheet(client, number, read(client.get(f"/baths/{number}/card/")))
