"""What is next at any pot, as a page says it and its script takes it."""

from collections.abc import Iterable
from datetime import datetime

from django.utils import timezone

from shadewright.web.bench.clock_words import left_words, millis
from shadewright.web.bench.pages import NextBar
from shadewright.workflows.days.next_things import NextKind, NextThing

CLOCK_KINDS = {NextKind.RINGS, NextKind.RUNS}


def next_wire(things: Iterable[NextThing]) -> list[dict[str, object]]:
    """Return the things as the script takes them, in order."""
    return [
        {
            "bath": thing.number,
            "lead": lead(thing),
            "words": thing_words(thing),
            "at": None if thing.at is None else millis(thing.at),
            "kind": thing.kind,
        }
        for thing in things
    ]


def next_bar(things: Iterable[NextThing], number: str) -> NextBar | None:
    """Return the bar that leads from one bath to the first thing of the others."""
    first = next((thing for thing in things if thing.number != number), None)
    if first is None:
        return None
    return NextBar(
        number=first.number,
        lead=lead(first),
        words=thing_words(first),
        clock=clock_text(first, timezone.now()),
        is_now=first.kind is NextKind.RINGS,
    )


def thing_words(thing: NextThing) -> str:
    """Return which bath, and what it asks for."""
    return f"{thing.called}: {thing.words}"


def lead(thing: NextThing) -> str:
    """Return when, in a word; what has a time of day says it."""
    if thing.kind is NextKind.RINGS:
        return "Now"
    if thing.kind is NextKind.HANDS or thing.at is None:
        return "Next"
    if thing.kind is NextKind.RUNS:
        return "Then"
    time = f"{timezone.localtime(thing.at):%H:%M}"
    return f"Late, from {time}" if thing.is_late else f"At {time}"


def clock_text(thing: NextThing, now: datetime) -> str:
    """Return the time left of what runs or rings."""
    if thing.kind not in CLOCK_KINDS or thing.at is None:
        return ""
    return left_words(thing.at, now)
