"""The studio and the people in it."""

from datetime import UTC, datetime
from decimal import Decimal

import pytest
from django.utils import timezone

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records.models import Person, Studio
from shadewright.workflows.people import add_person, people, person
from shadewright.workflows.stamps import as_of, stamp_now, today
from shadewright.workflows.studio import found_studio, set_rate, studio

pytestmark = pytest.mark.django_db


def test_a_studio_is_founded_once_with_its_first_person() -> None:
    assert studio() is None
    facts = found_studio(name=" Low  Tide ", person="Ines", water=" Tap ")
    assert studio() == facts
    assert (facts.name, facts.water, facts.dead_volume_ml) == ("Low Tide", "Tap", 10.0)
    with pytest.raises(ConflictError, match="founded already"):
        found_studio(name="Another", person="Tam")
    assert [one.name for one in people()] == ["Ines"]


@pytest.mark.parametrize(("name", "first"), [(" ", "Ines"), ("Low Tide", " ")])
def test_a_studio_without_a_name_or_a_person_is_not_founded(
    name: str, first: str
) -> None:
    with pytest.raises(MissingError) as refused:
        found_studio(name=name, person=first)
    assert refused.value.argument == "name"
    assert studio() is None


def test_two_people_have_two_names() -> None:
    ines = add_person(" Ines ")
    with pytest.raises(ConflictError, match="Ines works here already"):
        add_person("INES")
    assert person(ines.id) == ines
    assert person(ines.id + 1) is None


def test_a_story_is_told_on_its_own_day() -> None:
    then = datetime(2026, 2, 28, 12, 0, tzinfo=UTC)
    with as_of(then):
        found_studio(name="Low Tide", person="Ines")
        assert today() == timezone.localdate(then)
        assert stamp_now(by=None).at == then
    assert (Studio.objects.get().created_at, Person.objects.get().created_at) == (
        then,
        then,
    )
    assert today() == timezone.localdate()


def test_an_hour_has_a_rate_or_none() -> None:
    found_studio(name="Low Tide", person="Ines")
    set_rate(Decimal("18.50"))
    assert Studio.objects.get().rate_per_hour == Decimal("18.50")
    with pytest.raises(OutOfRangeError) as refused:
        set_rate(Decimal(-1))
    assert refused.value.argument == "rate_per_hour"
    set_rate(None)
    assert Studio.objects.get().rate_per_hour is None
