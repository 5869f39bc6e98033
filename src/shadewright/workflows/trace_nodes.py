"""A trace as a tree: what each thing is called, and what hangs below it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from itertools import chain

from django.utils import timezone

from shadewright.paper.words import day_words


class Kind(StrEnum):
    """What stands at a place of the tree."""

    LOT = "lot"
    BATH = "bath"
    BOTTLE = "bottle"
    JAR = "jar"
    BASE = "base"
    MILL_LOT = "mill lot"
    DOSE = "dose"
    SKEINS = "skeins"
    BUYER = "buyer"
    LOT_BEFORE = "was lot"
    LOT_AFTER = "became"


@dataclass(frozen=True, kw_only=True)
class Node:
    """One thing: its name, a few words more, and what it came from or went into.

    ``key`` is what its page is found by. ``is_missing`` marks a link that nobody
    wrote down; the name then says so.
    """

    kind: Kind
    name: str
    more: str = ""
    key: str = ""
    is_missing: bool = False
    below: tuple["Node", ...] = ()

    def every(self) -> Iterator["Node"]:
        """Return it and all below it, one after the other."""
        return chain([self], *(node.every() for node in self.below))


def missing(kind: Kind, name: str, more: str = "") -> Node:
    """Return a link that nobody wrote down."""
    return Node(kind=kind, name=name, more=more, is_missing=True)


def joined(*parts: str) -> str:
    """Return the words that there are, with commas between."""
    return ", ".join(part for part in parts if part)


def day(value: date | datetime) -> str:
    """Return a day in words, by the studio's own clock."""
    if isinstance(value, datetime):
        return day_words(timezone.localdate(value))
    return day_words(value)
