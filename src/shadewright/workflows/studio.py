"""The studio itself: founding it, and what is true of it all over."""

from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction
from django.dispatch import Signal

from shadewright.core.baths.heating import air_pressure_kpa
from shadewright.core.quantities import require_between
from shadewright.errors import ConflictError, MissingError
from shadewright.records import reads
from shadewright.records.models import Studio as StudioRow
from shadewright.workflows.people import add_person
from shadewright.workflows.stamps import this_moment

_MOST_PER_HOUR = 10_000.0

own_studio_wanted = Signal()
"""Sent when somebody in the demo asks for a studio of their own."""


@dataclass(frozen=True, kw_only=True)
class StudioFacts:
    """What is true of the studio all over."""

    name: str
    is_demo: bool
    water: str
    dead_volume_ml: float
    rate_per_hour: Decimal | None = None
    altitude_m: float = 0.0


def studio() -> StudioFacts | None:
    """Return the studio, or None before it is founded."""
    row = reads.studio_row()
    if row is None:
        return None
    return StudioFacts(
        name=row.name,
        is_demo=row.is_demo,
        water=row.water,
        dead_volume_ml=row.dead_volume_ml,
        rate_per_hour=row.rate_per_hour,
        altitude_m=row.altitude_m,
    )


@transaction.atomic
def found_studio(
    *, name: str, person: str, water: str = "", is_demo: bool = False
) -> StudioFacts:
    """Found the studio with its first person."""
    if reads.studio_row() is not None:
        raise ConflictError(why="This studio has been founded already.")
    wanted = " ".join(name.split())
    if not wanted:
        raise MissingError(
            name="The studio’s name", advice="Any name will do.", argument="name"
        )
    StudioRow.objects.create(
        name=wanted, is_demo=is_demo, water=water.strip(), created_at=this_moment()
    )
    add_person(person)
    return StudioFacts(
        name=wanted, is_demo=is_demo, water=water.strip(), dead_volume_ml=10.0
    )


def set_rate(rate_per_hour: Decimal | None) -> None:
    """Set what an hour of work costs, or that no work is reckoned in a lot's cost."""
    if rate_per_hour is not None:
        require_between(
            float(rate_per_hour),
            least=0.0,
            most=_MOST_PER_HOUR,
            unit="an hour",
            name="The rate",
            argument="rate_per_hour",
        )
    StudioRow.objects.update(rate_per_hour=rate_per_hour)


def set_altitude(altitude_m: float) -> None:
    """Set how high the studio stands; refused where no studio can."""
    air_pressure_kpa(altitude_m=altitude_m)
    StudioRow.objects.update(altitude_m=altitude_m)


def open_own_studio() -> str:
    """Ask for a studio of one's own; its address, or nothing where nobody serves it."""
    answers = own_studio_wanted.send(sender=StudioFacts)
    return next((str(address) for _, address in answers if address), "")
