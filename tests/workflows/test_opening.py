"""Opening a studio, backing it up and putting a backup back."""

import os
import subprocess
import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from django.conf import settings as studio_settings
from django.db import connection
from django.db.migrations.recorder import MigrationRecorder
from pytest_django.fixtures import Settings
from time_machine import TimeMachineFixture

from shadewright.errors import ConflictError, NewerStudioError, UnreadableError
from shadewright.exchange.studio_file import studio_copy
from shadewright.records import copying
from shadewright.records.models import Person
from shadewright.workflows.bottles import draw
from shadewright.workflows.opening import (
    backup,
    is_open,
    open_studio,
    restore,
    write_backup,
)
from shadewright.workflows.people import add_person, people
from shadewright.workflows.shelf import shelf
from tests.run import ROOT
from tests.workflows.backups import NEWEST, contents, that_does_not_add_up
from tests.workflows.bench import entered, new_dye, now
from tests.workflows.history import live_through_it

pytestmark = [
    pytest.mark.django_db(transaction=True),
    pytest.mark.usefixtures("folder"),
]

LATER = "tests.workflows.later_migrations"


@pytest.fixture
def later_program(settings: Settings) -> Iterator[None]:
    """The program knows one migration more, until the test is over."""
    settings.MIGRATION_MODULES = {"records": LATER}
    yield
    copying.put_back({}, at=copying.schema().applied[-1])
    copying.migrate(NEWEST)


def keep_a_file(name: str, content: bytes) -> Path:
    path = Path(studio_settings.MEDIA_ROOT) / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
    return path


def test_a_studio_comes_back_equal_in_every_record_and_file() -> None:
    live_through_it()
    sheet = keep_a_file("data-sheets/Sloe ½.pdf", bytes(range(256)))
    before = backup()
    draw(code=shelf()[0].code, volume_ml=1.0, stamp=now())
    add_person("Ola")
    sheet.write_bytes(b"changed")
    newer = keep_a_file("data-sheets/newer.pdf", b"new")
    assert contents(backup()) != contents(before)
    kept = restore(before)
    assert contents(backup()) == contents(before)
    assert not newer.exists()
    assert kept is not None
    assert studio_copy(kept.read_bytes()).files["data-sheets/newer.pdf"] == b"new"


def test_what_is_restored_can_be_gone_on_with() -> None:
    """New rows get numbers of their own, in the order of the old ones."""
    live_through_it()
    newest = max(Person.objects.values_list("pk", flat=True))
    content = backup()
    add_person("Uma")
    restore(content)
    assert add_person("Ola").id > newest
    entered(new_dye("Gorse"))


def test_every_table_is_in_the_backup() -> None:
    live_through_it()
    tables = studio_copy(backup()).tables
    with connection.cursor() as cursor:
        names = connection.introspection.table_names(cursor)
    ours = {name.removeprefix("records_") for name in names if "records_" in name}
    assert set(tables) == ours
    assert all(tables[name] for name in ("dye", "bottleline", "jarline", "studio"))


def elsewhere(job: str, *files: Path, folder: Path) -> None:
    """Do it with another process, on an SQLite of its own."""
    mine = {
        "SHADEWRIGHT_DATA": str(folder),
        "SHADEWRIGHT_DATABASE": "",
        "SHADEWRIGHT_DEMO": "0",
        "DJANGO_SETTINGS_MODULE": "shadewright.settings",
    }
    program = [sys.executable, "-m", "tests.workflows.history", job, *map(str, files)]
    subprocess.run(program, env=os.environ | mine, cwd=ROOT, check=True)


def test_a_studio_moves_from_one_database_to_another_and_back(folder: Path) -> None:
    made, back = folder / "made.zip", folder / "back.zip"
    elsewhere("make", made, folder=folder / "one")
    restore(made.read_bytes())
    here = folder / "here.zip"
    write_backup(here)
    elsewhere("through", here, back, folder=folder / "two")
    assert contents(made.read_bytes()) == contents(here.read_bytes())
    assert contents(made.read_bytes()) == contents(back.read_bytes())


def fingerprint() -> object:
    """Return the database file, or what stands in the tables of a server."""
    if connection.vendor == "postgresql":
        return (list(Person.objects.values_list()), copying.schema())
    path = Path(str(connection.settings_dict["NAME"]))
    return [
        one.exists() and one.read_bytes()
        for one in (path, path.with_name(f"{path.name}-wal"))
    ]


def test_two_backups_of_one_second_are_two_files(
    folder: Path, time_machine: TimeMachineFixture
) -> None:
    content = backup()
    time_machine.move_to(datetime(2026, 11, 25, 9, tzinfo=UTC), tick=False)
    kept = [restore(content) for _ in range(3)]
    assert len(set(kept)) == 3
    assert sorted((folder / "backups").iterdir()) == sorted(filter(None, kept))


def test_nothing_half_written_is_left_of_a_backup(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = folder / "kept.zip"
    write_backup(path)
    whole = path.read_bytes()

    def full_disk(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full_disk)
    with pytest.raises(ConflictError, match="cannot be written: No space left"):
        write_backup(path)
    assert path.read_bytes() == whole


def test_a_studio_that_is_up_to_date_is_opened_without_a_backup(folder: Path) -> None:
    assert is_open()
    assert open_studio() == ()
    assert not (folder / "backups").exists()


def test_a_newer_studio_is_refused_and_untouched(folder: Path) -> None:
    add_person("Ines")
    content = backup()
    recorder = MigrationRecorder(connection)
    recorder.record_applied("records", "0098_a_later_idea")
    try:
        before = fingerprint()
        assert not is_open()
        with pytest.raises(NewerStudioError) as refused:
            open_studio()
        with pytest.raises(NewerStudioError):
            restore(content)
        assert fingerprint() == before
    finally:
        recorder.record_unapplied("records", "0098_a_later_idea")
    assert "kept by a newer Shadewright" in refused.value.sentence
    assert "0098_a_later_idea" in refused.value.sentence
    assert "Update the program" in refused.value.sentence
    assert not (folder / "backups").exists()


@pytest.mark.usefixtures("later_program")
def test_before_the_tables_change_a_backup_is_written(folder: Path) -> None:
    add_person("Ines")
    old = backup()
    assert not is_open()
    done = open_studio()
    (kept,) = (folder / "backups").iterdir()
    assert str(kept) in done[0]
    assert kept.name.startswith("before-0099_nicknames-")
    assert contents(kept.read_bytes()) == contents(old)
    assert is_open()
    assert [one.name for one in people()] == ["Ines"]
    (row,) = studio_copy(backup()).tables["person"]
    assert row["nickname"] is None


@pytest.mark.usefixtures("later_program")
def test_an_older_backup_is_put_back_and_brought_up_to_date() -> None:
    live_through_it()
    old = studio_copy(backup())
    content = backup()
    open_studio()
    add_person("Ola")
    restore(content)
    assert is_open()
    new = studio_copy(backup())
    people_before = [{**row, "nickname": None} for row in old.tables["person"]]
    assert new.tables == {**old.tables, "person": people_before}


@pytest.mark.usefixtures("later_program")
def test_an_older_backup_that_does_not_fit_leaves_all_as_it_was() -> None:
    broken = that_does_not_add_up()
    open_studio()
    add_person("Ola")
    before = contents(backup())
    with pytest.raises(UnreadableError, match="do not fit together"):
        restore(broken)
    assert contents(backup()) == before
    assert is_open()
