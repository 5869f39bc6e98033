"""A yarn, and a palette that is fitted at once."""

from typing import TYPE_CHECKING

import pytest
from django.conf import settings

if TYPE_CHECKING:
    from shadewright.records.models import Base
    from shadewright.workflows.people import Person


@pytest.fixture
def base(ines: "Person") -> "Base":
    """Return a bare yarn of a studio of its own."""
    from shadewright.records.models import Base

    del ines
    return Base.objects.create(name="Hollow 4-ply", fibres="wool")


@pytest.fixture
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Fit the palette as soon as it is wished for."""
    monkeypatch.setattr(settings, "REFITS", "at once")
