"""A studio with a recipe and a yarn that can be ordered.

Models are imported inside: this file is read before Django starts.
"""

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from shadewright.workflows.people import Person
    from tests.workflows.pots import Ready


@pytest.fixture
def pot(ines: "Person") -> "Ready":
    """Low Tide on Fell DK in skeins of 100 g, and no bath of it that counts."""
    from shadewright.records.models import Base
    from shadewright.records.models.baths import BathAct
    from tests.workflows.pots import ready, tapped

    del ines
    found = ready()
    tapped(found.number, BathAct.GIVEN_UP, "")
    Base.objects.filter(pk=found.base).update(skein_g=100.0)
    return found
