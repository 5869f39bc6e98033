"""What the tests of the verbs share."""

from pathlib import Path

import pytest
from pytest_django.fixtures import Settings


@pytest.fixture
def folder(settings: Settings, tmp_path: Path) -> Path:
    """A folder of its own for the studio's files and backups."""
    settings.MEDIA_ROOT = tmp_path / "files"
    settings.BACKUP_FOLDER = tmp_path / "backups"
    return tmp_path
