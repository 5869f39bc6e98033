"""A studio of one's own for the tests of the rooms.

Models are imported inside: this file is read before Django starts.
"""

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from shadewright.records.models import Dye
    from shadewright.workflows.people import Person


@pytest.fixture
def ines(db: None) -> "Person":
    """The one person of a studio of its own."""
    from shadewright.workflows.people import people
    from shadewright.workflows.studio import found_studio

    del db
    found_studio(name="Long Reach", person="Ines", water="Tap")
    return people()[0]


@pytest.fixture
def gorse(ines: "Person") -> "Dye":
    """A dye of that studio."""
    from shadewright.records.models import Dye

    del ines
    return Dye.objects.create(name="Gorse", chart_hex="#e0b02c")
