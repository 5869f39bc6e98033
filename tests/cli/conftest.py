"""What every test of the command line types on."""

import pytest

from tests.cli.typed import Terminal


@pytest.fixture
def typed(capsys: pytest.CaptureFixture[str]) -> Terminal:
    """Return a terminal: ``typed("stock make ...")``."""
    return Terminal(capsys)
