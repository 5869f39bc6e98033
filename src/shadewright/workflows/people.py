"""Who works here."""

from dataclasses import dataclass

from django.db import transaction

from shadewright.errors import ConflictError, MissingError, NotFoundError
from shadewright.records import reads
from shadewright.records.lengths import refuse_text_that_does_not_fit
from shadewright.records.models import Person as PersonRow
from shadewright.workflows.stamps import this_moment


@dataclass(frozen=True, kw_only=True)
class Person:
    """Somebody who works in the studio."""

    id: int
    name: str


def people() -> tuple[Person, ...]:
    """Return everybody who works here now, by name."""
    return tuple(_shape(row) for row in reads.people_rows())


def person(person_id: int) -> Person | None:
    """Return one person, or None if nobody has that number."""
    try:
        return _shape(reads.person_row(person_id))
    except NotFoundError:
        return None


@transaction.atomic
def add_person(name: str) -> Person:
    """Add somebody who works here, under a name of their own."""
    wanted = " ".join(name.split())
    if not wanted:
        raise MissingError(
            name="The name", advice="Write a first name.", argument="name"
        )
    refuse_text_that_does_not_fit(instance=PersonRow(name=wanted))
    twin = PersonRow.objects.filter(name__iexact=wanted).first()
    if twin is not None:
        raise ConflictError(
            why=f"{twin.name} works here already.",
            advice="Add a letter to tell them apart.",
            argument="name",
        )
    return _shape(PersonRow.objects.create(name=wanted, created_at=this_moment()))


def _shape(row: PersonRow) -> Person:
    return Person(id=row.pk, name=row.name)
