"""The store tests run on the databases that we promise, and on a real file."""

import pytest
from django.conf import settings
from django.db import connection


def _ask(question: str) -> str:
    with connection.cursor() as cursor:
        cursor.execute(question)
        return str(cursor.fetchone()[0])


@pytest.mark.django_db
def test_store_is_a_syncing_sqlite_file_or_a_new_enough_postgresql() -> None:
    if connection.vendor == "postgresql":
        assert int(_ask("SHOW server_version_num")) >= 150000
        return
    names = ("journal_mode", "synchronous", "foreign_keys")
    assert [_ask(f"PRAGMA {name}") for name in names] == ["wal", "2", "1"]
    assert str(settings.DATA_FOLDER) in str(connection.settings_dict["NAME"])
