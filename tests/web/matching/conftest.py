"""A studio with a palette for the tests of finding a recipe."""

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.workflows.shades.studios import Fitted


@pytest.fixture
def studio(ines: object, monkeypatch: pytest.MonkeyPatch) -> "Fitted":
    """Six dyes on Fell DK; a search is always waited for, and none is remembered."""
    from shadewright.web.matching import searches
    from tests.workflows.shades.studios import fitted

    del ines
    monkeypatch.setattr(searches, "FIRST_WAIT_S", 60.0)
    monkeypatch.setattr(searches, "SEARCHES", searches.Searches())
    return fitted()
