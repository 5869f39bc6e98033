"""A pot that was dyed, and one that was not begun.

Models are imported inside: this file is read before Django starts.
"""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from pytest_django.fixtures import Settings

if TYPE_CHECKING:
    from shadewright.workflows.people import Person
    from tests.workflows.pots import Ready


@pytest.fixture
def pot(ines: "Person", settings: Settings, tmp_path: Path) -> "Ready":
    """A bath that was dyed as planned, up to heat off."""
    from tests.workflows.dyed import dyed
    from tests.workflows.pots import ready

    del ines
    settings.MEDIA_ROOT = tmp_path / "files"
    found = ready(bottle_ml=1000.0)
    dyed(found)
    return found


@pytest.fixture
def lot(pot: "Ready") -> str:
    """The number of a lot that was written."""
    from tests.workflows.dyed import finished

    return finished(pot.number, skeins=1, grams=98.5, place="Shelf C2")
