"""A day as it stands now: its hours, who is in, what is out, its baths, its plan."""

from dataclasses import dataclass
from datetime import date, time
from typing import TypeVar

from shadewright.records import day_reads
from shadewright.records.models import Bath, DayOutage, DyeDay
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_pages import status_of
from shadewright.workflows.bath_shapes import BathStatus, called
from shadewright.workflows.days.room import Room, room_now
from shadewright.workflows.days.schedules import Schedule, schedule_of
from shadewright.workflows.people import people
from shadewright.workflows.stamps import today

_T = TypeVar("_T")


@dataclass(frozen=True, kw_only=True)
class PersonIn:
    """Somebody, and from when to when they are in."""

    name: str
    starts_at: time
    ends_at: time


@dataclass(frozen=True, kw_only=True)
class OutNow:
    """A pot or a source that is out, from a time on or all day."""

    id: int
    name: str
    is_pot: bool
    starts_at: time | None
    why: str


@dataclass(frozen=True, kw_only=True)
class WishNow:
    """What is wished of a bath within its day; empty where the plan may choose."""

    pot_id: int | None = None
    source_id: int | None = None
    pot_name: str = ""
    source_name: str = ""
    starts_at: time | None = None
    due_at: time | None = None
    is_overnight: bool | None = None
    cools_on_source: bool | None = None
    is_steamed: bool = False
    family: str = ""
    batch: str = ""


@dataclass(frozen=True, kw_only=True)
class DayBath:
    """A bath of a day in one line."""

    number: str
    called: str
    base_name: str
    fibre_g: float
    liquor_l: float
    skeins: int | None
    pot_name: str
    source_name: str
    is_swatch: bool
    status: BathStatus
    wish: WishNow

    @property
    def is_open(self) -> bool:
        """Whether something of it is still to be done."""
        return self.status not in {BathStatus.FINISHED, BathStatus.GIVEN_UP}


@dataclass(frozen=True, kw_only=True)
class DayNow:
    """A day; what was not said of it is as the room usually has it."""

    day: date
    opens_at: time
    closes_at: time
    sinks: int
    rack_slots: int
    rack_used: int | None
    room: Room
    people: tuple[PersonIn, ...]
    are_people_said: bool
    outages: tuple[OutNow, ...]
    baths: tuple[DayBath, ...]
    schedule: Schedule | None
    has_pots: bool
    has_sources: bool

    @property
    def is_past(self) -> bool:
        """Whether it is over, so that it can only be looked at."""
        return self.day < today()

    @property
    def open_baths(self) -> tuple[DayBath, ...]:
        """The baths that still ask for something."""
        return tuple(each for each in self.baths if each.is_open)


def day_now(day: date) -> DayNow:
    """Return a day as it stands now; none needs to have been described."""
    row, room = day_reads.day_row(day), room_now()
    opens_at = _said(row, "opens_at", room.opens_at)
    closes_at = _said(row, "closes_at", room.closes_at)
    presences = [] if row is None else list(row.presences.all())
    return DayNow(
        day=day,
        opens_at=opens_at,
        closes_at=closes_at,
        sinks=_said(row, "sinks", room.sinks),
        rack_slots=_said(row, "rack_slots", room.rack_slots),
        rack_used=None if row is None else row.rack_used,
        room=room,
        people=tuple(
            PersonIn(name=each.name, starts_at=each.starts_at, ends_at=each.ends_at)
            for each in presences
        )
        or tuple(
            PersonIn(name=each.name, starts_at=opens_at, ends_at=closes_at)
            for each in people()
        ),
        are_people_said=bool(presences),
        outages=() if row is None else tuple(map(_out, row.outages.all())),
        baths=baths_on(day),
        schedule=schedule_of(day),
        has_pots=day_reads.pot_rows().exists(),
        has_sources=day_reads.source_rows().exists(),
    )


def baths_on(day: date) -> tuple[DayBath, ...]:
    """Return the baths of a day, but for those that were given up."""
    shaped = map(_bath, day_reads.baths_of_day(day))
    return tuple(each for each in shaped if each.status is not BathStatus.GIVEN_UP)


def status_of_row(row: Bath) -> BathStatus:
    """Return where a bath is by its ledger."""
    return status_of(BathAct(line.act) for line in standing_lines(row.lines.all()))


def wish_of(row: Bath) -> WishNow:
    """Return what is wished of a bath within its day."""
    wish = getattr(row, "day_wish", None)
    if wish is None:
        return WishNow()
    pot, source = _in_use(wish.pot), _in_use(wish.source)
    return WishNow(
        pot_id=None if pot is None else pot.pk,
        source_id=None if source is None else source.pk,
        pot_name="" if pot is None else pot.name,
        source_name="" if source is None else source.name,
        starts_at=wish.starts_at,
        due_at=wish.due_at,
        is_overnight=wish.is_overnight,
        cools_on_source=wish.cools_on_source,
        is_steamed=wish.is_steamed,
        family=wish.family,
        batch="" if wish.batch is None else str(wish.batch),
    )


def _in_use(row: _T | None) -> _T | None:
    """Return a pot or a source, unless it was retired since it was wished for."""
    return None if getattr(row, "is_retired", False) else row


def _bath(row: Bath) -> DayBath:
    return DayBath(
        number=row.number,
        called=called(row.number, row.version.recipe.name),
        base_name=row.base.name,
        fibre_g=row.fibre_g,
        liquor_l=row.liquor_ml / 1000.0,
        skeins=row.skeins,
        pot_name="" if row.pot is None else row.pot.name,
        source_name="" if row.source is None else row.source.name,
        is_swatch=row.is_swatch,
        status=status_of_row(row),
        wish=wish_of(row),
    )


def _out(row: DayOutage) -> OutNow:
    thing = row.pot or row.source
    return OutNow(
        id=row.pk,
        name="" if thing is None else thing.name,
        is_pot=row.pot is not None,
        starts_at=row.starts_at,
        why=row.why,
    )


def _said(row: DyeDay | None, name: str, usual: _T) -> _T:
    said: _T | None = None if row is None else getattr(row, name)
    return usual if said is None else said
