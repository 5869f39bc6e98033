"""A kept photo is read back; one whose file is gone is said."""

from pathlib import Path
from uuid import uuid4

import pytest
from django.core.files.base import ContentFile
from pytest_django.fixtures import Settings

from shadewright.errors import NotFoundError
from shadewright.records.models import FastnessTest, Lot
from shadewright.workflows.judging.fastness import cloth_photo
from shadewright.workflows.kept_photos import kept_photo_bytes
from tests.workflows.dyed import finished
from tests.workflows.pots import ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def row(settings: Settings, tmp_path: Path) -> FastnessTest:
    settings.MEDIA_ROOT = tmp_path
    lot = Lot.objects.get(number=finished(ready().number, is_sure=True))
    row = FastnessTest(lot=lot, deed=uuid4(), kind="bleed")
    row.photo.save("cloths.jpg", ContentFile(b"drawn"), save=False)
    row.save()
    return row


def test_it_comes_back_as_it_was_kept(row: FastnessTest) -> None:
    assert kept_photo_bytes(row.photo, key="1") == b"drawn"


def test_none_was_kept(row: FastnessTest) -> None:
    row.photo = None
    with pytest.raises(NotFoundError):
        kept_photo_bytes(row.photo, key="1")


def test_its_file_is_gone(row: FastnessTest) -> None:
    Path(row.photo.path).unlink()
    with pytest.raises(NotFoundError, match="Its file is gone"):
        cloth_photo(row.lot.number, row.pk)
