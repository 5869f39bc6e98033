"""The studio and the people in it."""

import pytest

from shadewright.errors import ConflictError, MissingError
from shadewright.workflows.people import add_person, people, person
from shadewright.workflows.studio import found_studio, studio

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
    with pytest.raises(ConflictError, match="There is a INES already"):
        add_person("INES")
    assert person(ines.id) == ines
    assert person(ines.id + 1) is None
