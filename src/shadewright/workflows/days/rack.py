"""The rack: what hangs there, since when, and when it should be dry.

A skein hangs from the line that says so to the line that says that it is dry. When
that will be is a guess: the room's own hours after it was hung.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import ceil

from shadewright.records import stage_reads
from shadewright.records.models import BathLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.days.room import room_now
from shadewright.workflows.stamps import Stamp, this_moment

_SKEIN_G = 100.0  # where nobody counted: the usual skein (common practice)
RACK, SKEINS = "rack", "skeins"
"""The step of such a line, and its unit where it says how many were hung."""


@dataclass(frozen=True, kw_only=True)
class Hung:
    """A bath's yarn on the rack; ``is_counted`` says that its skeins are no guess.

    It is called by its whole number, as its tag says: many days hang side by side.
    """

    number: str
    called: str
    base_name: str
    skeins: int
    is_counted: bool
    hung_at: datetime
    dry_at: datetime

    def is_due(self, at: datetime) -> bool:
        """Whether it should be dry at a time."""
        return self.dry_at <= at


@dataclass(frozen=True, kw_only=True)
class Rack:
    """What hangs now, the first that is dry first, and the places that there are."""

    slots: int
    dry_hours: float
    hung: tuple[Hung, ...]

    @property
    def skeins(self) -> int:
        """How many skeins hang there."""
        return sum(each.skeins for each in self.hung)


def rack_now() -> Rack:
    """Return what hangs on the rack as far as the ledgers say."""
    room = room_now()
    found = hung_at(this_moment())
    return Rack(slots=room.rack_slots, dry_hours=room.dry_hours, hung=found)


def rack_used(at: datetime) -> int:
    """Return how many skeins will still be drying at a time.

    Those that should be dry by then count no more, since they can be taken down.
    """
    return sum(each.skeins for each in hung_at(at) if not each.is_due(at))


def hung_at(at: datetime) -> tuple[Hung, ...]:
    """Return what was hung by then and of which nobody had said that it is dry."""
    hours = timedelta(hours=room_now().dry_hours)
    last: dict[int, BathLine] = {}
    for line in stage_reads.hung_lines(until=at):
        last[line.bath_id] = line
    hung = (line for line in last.values() if line.act == BathAct.HUNG)
    return tuple(sorted((_hung(x, hours) for x in hung), key=lambda x: x.dry_at))


def wet_now() -> frozenset[str]:
    """Return the baths whose yarn hangs and should not be dry yet."""
    now = this_moment()
    return frozenset(each.number for each in hung_at(now) if not each.is_due(now))


def take_off_rack(number: str, *, stamp: Stamp) -> None:
    """Write that a bath's yarn is dry and off the rack."""
    keep_tap(Tap(bath=number, act=BathAct.DRY, step=RACK), stamp=stamp)


def rack_words(hung: Sequence[Hung]) -> str:
    """Return how many skeins of how many baths hang, in words."""
    skeins = sum(each.skeins for each in hung)
    counted = "" if all(each.is_counted for each in hung) else "about "
    return f"{counted}{skeins} skein{'' if skeins == 1 else 's'}"


def skeins_of(*, fibre_g: float, skeins: int | None) -> int:
    """Return the skeins of a bath, guessed from its weight where nobody counted."""
    return skeins or max(1, ceil(fibre_g / _SKEIN_G))


def _hung(line: BathLine, hours: timedelta) -> Hung:
    bath = line.bath
    said = round(line.value) if line.unit == SKEINS and line.value else None
    return Hung(
        number=bath.number,
        called=f"{bath.number} {bath.version.recipe.name}",
        base_name=bath.base.name,
        skeins=said or skeins_of(fibre_g=bath.fibre_g, skeins=bath.skeins),
        is_counted=bool(said or bath.skeins),
        hung_at=line.at,
        dry_at=line.at + hours,
    )
