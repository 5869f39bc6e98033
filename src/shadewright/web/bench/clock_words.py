"""Clocks as a page and its script read them: absolute times, and what now is."""

import json
from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from uuid import uuid4

from django.conf import settings
from django.utils import timezone

from shadewright.web.bench.pages import Alarms, Ringing, TapKey
from shadewright.workflows.bath_pages import BathAct, BathNow, Clock
from shadewright.workflows.bath_shapes import HEARD
from shadewright.workflows.days.room_clocks import room_clocks

Wire = list[dict[str, object]]
_MS = timedelta(milliseconds=1)


def millis(at: datetime) -> int:
    """Return a time as milliseconds since 1970."""
    return round(at.timestamp() * 1000)


def now_ms() -> int:
    """Return the time that this computer's clock shows."""
    return millis(timezone.now())


def wire(clocks: Iterable[Clock]) -> Wire:
    """Return clocks as the script takes them."""
    return [
        {
            "bath": clock.bath,
            "key": clock.key,
            "words": clock.words,
            "at": millis(clock.rings_at),
            "heard": clock.is_heard,
            "every": 0 if clock.every is None else clock.every / _MS,
        }
        for clock in clocks
    ]


def every_clock(baths: Sequence[BathNow]) -> tuple[Clock, ...]:
    """Return the clocks of every pot and those of the room, the soonest first."""
    found = [clock for bath in baths for clock in bath.clocks]
    return tuple(sorted([*found, *room_clocks(baths)], key=lambda one: one.rings_at))


def alarms(baths: Sequence[BathNow]) -> Alarms:
    """Return the part of a page that rings."""
    clocks = every_clock(baths)
    now = timezone.now()
    return Alarms(
        kind=kind(),
        now_ms=millis(now),
        clocks=json.dumps(wire(clocks)),
        ringing=tuple(_ringing(x) for x in clocks if _rings(x, now)),
    )


def kind() -> str:
    """Return what the taps of this studio are kept under: a demo's stay apart."""
    return "demo" if settings.IS_DEMO else "studio"


def left_words(at: datetime, now: datetime) -> str:
    """Return the time left as a clock shows it, with a plus once it has rung.

    >>> start = datetime(2026, 11, 25, 9, 0)
    >>> left_words(start + timedelta(seconds=1210), start)
    '20:10'
    """
    left_s = round((at - now) / timedelta(seconds=1))
    sign = "+" if left_s < 0 else ""
    minutes, seconds = divmod(abs(left_s), 60)
    return f"{sign}{minutes}:{seconds:02d}"


def _rings(clock: Clock, now: datetime) -> bool:
    return clock.rings_at <= now and not clock.is_heard


def _ringing(clock: Clock) -> Ringing:
    heard = TapKey(
        words="Heard" if clock.every is None else "I looked",
        icon="tick",
        act=BathAct.NOTE,
        step=clock.key + HEARD,
        key=uuid4(),
        said="Alarm heard",
    )
    return Ringing(words=clock.words, heard=heard, number=clock.bath)
