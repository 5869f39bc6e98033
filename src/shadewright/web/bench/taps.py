"""Read the taps that a phone sends: whatever can be understood is kept."""

import json
from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID

from django.http import HttpRequest
from django.utils import timezone

from shadewright.errors import StudioError, UnreadableError
from shadewright.web.frame import person_id
from shadewright.web.guests import paired_device
from shadewright.workflows.bath_pages import BathAct
from shadewright.workflows.bench import Tap, keep_tap, take_back
from shadewright.workflows.stamps import Stamp, stamp_now

DESK = "desk"
MOST_AT_ONCE = 200
_OLDEST = timedelta(days=30)
_ACTS = {act.value: act for act in BathAct if act is not BathAct.UNDO}


@dataclass(frozen=True, kw_only=True)
class Refused:
    """A tap that could not be written, and why."""

    key: str
    why: str


def device_name(request: HttpRequest) -> str:
    """Return the paired phone that asks, or the desk."""
    device = paired_device(request)
    return DESK if device is None else device.name


def asks_for_json(request: HttpRequest) -> bool:
    """Say whether the page's script asks, and not the browser for a page."""
    return "application/json" in request.headers.get("Accept", "")


def read_batch(body: bytes) -> list[dict[str, object]]:
    """Return the taps in a request's body, or refuse the whole of it."""
    try:
        taps = json.loads(body)["taps"]
    except (ValueError, KeyError, TypeError, RecursionError):
        taps = None
    if not isinstance(taps, list) or len(taps) > MOST_AT_ONCE:
        raise UnreadableError(
            name="What the phone sent",
            why="It is not a list of taps.",
            advice="Load the page anew; the taps on the phone are safe.",
        )
    return [tap if isinstance(tap, dict) else {} for tap in taps]


def keep(request: HttpRequest, said: dict[str, object]) -> Refused | None:
    """Write one tap down; return why not, if it cannot be."""
    key = text(said.get("key"))
    try:
        deed = UUID(key)
    except ValueError:
        return Refused(key=key, why="The tap came without a key.")
    stamp = stamp_now(
        by=person_id(request), deed=deed, at=tapped_at(said.get("age_ms"))
    )
    try:
        _write(said, stamp, device_name(request))
    except StudioError as error:
        return Refused(key=key, why=error.sentence)
    return None


def read_tap(said: dict[str, object], device: str) -> Tap:
    """Return a tap as it was meant; an act that nobody knows becomes a note."""
    act, note = text(said.get("act")), text(said.get("note"))
    known = _ACTS.get(act, BathAct.NOTE)
    return Tap(
        bath=text(said.get("bath")),
        act=known,
        step=text(said.get("step")),
        value=number(said.get("value")),
        unit=text(said.get("unit")),
        bottle=text(said.get("bottle")).upper(),
        note=note if known == act else f"{act}: {note}",
        device=device,
        is_emptied=said.get("emptied") in {True, "yes"},
    )


def tapped_at(age_ms: object) -> datetime:
    """Return when it was tapped, from its age by the phone's own clock."""
    age = number(age_ms) or 0.0
    now = timezone.now()
    if not 0 < age < _OLDEST / timedelta(milliseconds=1):
        return now
    return now - timedelta(milliseconds=age)


def text(value: object) -> str:
    """Return a text that every database can keep."""
    if not isinstance(value, str):
        return ""
    plain = value[:400].replace("\x00", "").strip()
    return plain.encode("utf-8", "ignore").decode("utf-8")


def number(value: object) -> float | None:
    """Return a number, typed with a comma or a point; None where there is none."""
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        return None
    try:
        return float(value.replace(",", ".") if isinstance(value, str) else value)
    except OverflowError:
        return float("inf")
    except ValueError:
        return None


def _write(said: dict[str, object], stamp: Stamp, device: str) -> None:
    undoes = said.get("undoes")
    if undoes is None:
        keep_tap(read_tap(said, device), stamp=stamp)
        return
    try:
        deed = UUID(text(undoes))
    except ValueError:
        raise UnreadableError(
            name="The undo", why="It does not say what it takes back."
        ) from None
    take_back(deed=deed, stamp=stamp)
