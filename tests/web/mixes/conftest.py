"""A studio with a palette on two yarns."""

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.workflows.shades.two_yarns import TwoYarns


@pytest.fixture
def yarns(ines: object) -> "TwoYarns":
    """Six dyes on wool, three of them on silk, none on nylon."""
    from tests.workflows.shades.two_yarns import two_yarns

    del ines
    return two_yarns()
