"""The pages of phones: the list at the desk, and the door."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.pages import Page
from shadewright.web.parts import Caution
from shadewright.web.phones.forms import DoorForm
from shadewright.workflows.devices import Device

PLAIN_HTTP = Caution(
    title="Plain http: at home only",
    text="What passes between phone and studio is not encrypted. Whoever is on the "
    "same network can read it, so use it only in a network of your own.",
)
PHONES_SLEEP = Caution(
    title="A phone rings only while its page is awake",
    text="When its screen is dark or another app is in front, it is silent. The "
    "computer that serves the studio rings every alarm: leave a page open there.",
)
LOCKED = Caution(
    title="Pairing is locked",
    text="Twenty wrong codes came within an hour: somebody on your network may be "
    "guessing. Look who is on it; then open pairing again. Phones that are "
    "paired go on as before.",
    kind="problem",
)


@dataclass(frozen=True, kw_only=True)
class Invitation:
    """A code on show: what to type (in two groups), where, and until when."""

    code: str
    until: str
    address: str
    other_addresses: tuple[str, ...]
    scanned: str


@dataclass(frozen=True, kw_only=True)
class PhonesPage(Page):
    """Which phones are let in, and the way to let one in or put one out."""

    template: ClassVar[str] = "phones/phones.html"

    devices: tuple[Device, ...]
    invitation: Invitation | None
    address: str
    is_locked: bool
    locked: Caution = LOCKED
    plain_http: Caution = PLAIN_HTTP


@dataclass(frozen=True, kw_only=True)
class DoorPage(Page):
    """Where a phone that is not paired arrives."""

    template: ClassVar[str] = "phones/door.html"
    is_guided: ClassVar[bool] = True

    form: DoorForm
    notes: tuple[Caution, ...] = (PLAIN_HTTP, PHONES_SLEEP)
