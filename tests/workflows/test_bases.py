"""A bare yarn is found by its name, or added by name and fibres."""

import pytest

from shadewright.errors import MissingError
from shadewright.workflows.bases import add_base, bases, named_base
from shadewright.workflows.stamps import stamp_now

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def test_a_yarn_is_found_whatever_its_capitals() -> None:
    added = add_base("  Hollow  4-ply ", "100 % wool", stamp_now(by=None))
    assert added.name == "Hollow 4-ply"
    assert named_base("hollow 4-PLY") == added
    assert bases() == (added,)


@pytest.mark.parametrize(
    ("name", "fibres", "argument"), [(" ", "wool", "base"), ("Hollow", " ", "fibres")]
)
def test_a_new_yarn_needs_its_name_and_its_fibres(
    name: str, fibres: str, argument: str
) -> None:
    with pytest.raises(MissingError) as refused:
        add_base(name, fibres, stamp_now(by=None))
    assert refused.value.argument == argument
    assert bases() == ()
