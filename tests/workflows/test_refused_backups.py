"""Backups that cannot be put back: one sentence, and nothing has changed."""

import io
import json
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.errors import (
    ConflictError,
    NewerStudioError,
    StudioError,
    UnreadableError,
)
from shadewright.exchange.studio_file import StudioCopy, studio_copy, studio_file
from shadewright.workflows.opening import backup, restore
from tests.workflows.backups import (
    NEWEST,
    altered,
    contents,
    that_does_not_add_up,
    with_rows,
)
from tests.workflows.bench import entered, founded, made, new_dye, new_jar

pytestmark = [
    pytest.mark.django_db(transaction=True),
    pytest.mark.usefixtures("folder"),
]


def packed(**parts: bytes | str) -> bytes:
    """Return a zip file with these parts; a double underscore is a slash."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as box:
        for name, content in parts.items():
            box.writestr(name.replace("__", "/").replace("_json", ".json"), content)
    return target.getvalue()


def about(**changes: object) -> str:
    kept = {
        "format": "shadewright-studio",
        "version": 1,
        "schema": NEWEST,
        "program": "1",
        "made_at": "",
        "rows": {},
    }
    return json.dumps(kept | changes)


def repacked(change: Callable[[zipfile.ZipFile], None]) -> bytes:
    target = io.BytesIO(backup())
    with zipfile.ZipFile(target, "a") as box:
        change(box)
    return target.getvalue()


def without_a_table() -> bytes:
    target = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(backup())) as old,
        zipfile.ZipFile(target, "w") as new,
    ):
        for name in old.namelist():
            if name != "tables/dye.jsonl":
                new.writestr(name, old.read(name))
    return target.getvalue()


def locked_with_a_password() -> bytes:
    """Set the flag of encryption in each head of the zip."""
    content = bytearray(backup())
    for mark, place in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        start = content.find(mark)
        while start >= 0:
            content[start + place] |= 1
            start = content.find(mark, start + 4)
    return bytes(content)


DAMAGED: dict[str, Callable[[], bytes]] = {
    "empty": lambda: b"",
    "a text": lambda: b"My studio, 3 bottles",
    "cut off": lambda: backup()[:-200],
    "its first half": lambda: backup()[: len(backup()) // 2],
    "another zip": lambda: packed(letter="Dear all"),
    "another format": lambda: packed(about_json=about(format="other")),
    "a newer format": lambda: packed(about_json=about(version=2)),
    "a list about it": lambda: packed(about_json="[]"),
    "endless brackets": lambda: packed(about_json="[" * 100_000),
    "an endless version": lambda: packed(about_json=about(version=1e999)),
    "no text": lambda: packed(about_json=b"\xff\xfe"),
    "rows that are none": lambda: packed(
        about_json=about(), tables__studio="5\n[]\nnull"
    ),
    "a password": locked_with_a_password,
    "a table short": without_a_table,
    "a table too many": lambda: altered(
        tables={**studio_copy(backup()).tables, "horse": [{"id": 1}]}
    ),
    "a column too many": lambda: with_rows("dye", colour="blue"),
    "a bottle of no dye": lambda: with_rows("stockbottle", dye_id=999),
    "a bottle twice": lambda: with_rows("stockbottle", code="T7K"),
    "a number in words": lambda: with_rows("bottleline", volume_ml="much"),
    "a day that never was": lambda: with_rows("powderjar", opened_on="2026-02-30"),
    "an act unheard of": lambda: with_rows("bottleline", act="drunk"),
    "a ledger that does not add up": that_does_not_add_up,
    "a file in the place of a folder": lambda: altered(
        files={"data-sheets": b"", "data-sheets/sloe.pdf": b""}
    ),
    "a file without end": lambda: altered(files={"x" * 300: b""}),
}
TRAVELLING = (
    "../outside",
    "/outside",
    "data-sheets/../../outside",
    "..\\outside",
    "C:outside",
    "data-sheets/..",
)


@pytest.fixture
def everything_as_it_was(folder: Path) -> Callable[[], object]:
    founded()
    dye_id = new_dye()
    made(dye_id, new_jar(dye_id))
    entered(dye_id)

    def found() -> object:
        inside = {
            path.relative_to(folder): path.is_file() and path.read_bytes()
            for path in folder.rglob("*")
            if "backups" not in path.parts
        }
        return (contents(backup()), inside)

    return found


@pytest.mark.one_store
@pytest.mark.parametrize("fault", DAMAGED)
def test_a_damaged_or_foreign_file_changes_nothing(
    everything_as_it_was: Callable[[], object], fault: str
) -> None:
    content = DAMAGED[fault]()
    before = everything_as_it_was()
    with pytest.raises(UnreadableError) as refused:
        restore(content)
    assert everything_as_it_was() == before
    assert refused.value.sentence.startswith("The backup file cannot be read. ")
    assert refused.value.sentence.endswith("Nothing was changed.")


@pytest.mark.one_store
@pytest.mark.parametrize("name", TRAVELLING)
def test_a_file_that_would_leave_the_folder_changes_nothing(
    everything_as_it_was: Callable[[], object], folder: Path, name: str
) -> None:
    content = repacked(lambda box: box.writestr(f"files/{name}", b"outside"))
    before = everything_as_it_was()
    with pytest.raises(UnreadableError, match="outside the studio’s folder"):
        restore(content)
    assert everything_as_it_was() == before
    assert not (folder.parent / "outside").exists()


def test_a_backup_of_a_later_program_changes_nothing(
    everything_as_it_was: Callable[[], object],
) -> None:
    content = altered(schema="0099_nicknames")
    before = everything_as_it_was()
    with pytest.raises(NewerStudioError, match="Update the program"):
        restore(content)
    assert everything_as_it_was() == before


def test_the_demo_and_a_studio_are_never_mixed(
    everything_as_it_was: Callable[[], object],
) -> None:
    content = with_rows("studio", is_demo=True)
    before = everything_as_it_was()
    with pytest.raises(ConflictError, match="never mixed"):
        restore(content)
    assert everything_as_it_was() == before


GOOD = studio_file(
    StudioCopy(
        schema="0001",
        program="1",
        made_at="",
        tables={"dye": [{"id": number, "name": "Slate"} for number in range(99)]},
        files={"data-sheets/sloe.pdf": bytes(range(256)) * 9},
    )
)


def test_a_file_whose_name_was_damaged_is_missed() -> None:
    """A name in the zip’s own list ends at a null sign."""
    bad = bytearray(GOOD)
    bad[bytes(GOOD).rindex(b"files/")] = 0
    with pytest.raises(UnreadableError, match="Some of its files are missing"):
        contents(bytes(bad))


@given(data=st.data())
def test_law_a_file_with_wrong_bytes_is_refused_or_reads_the_same(
    data: st.DataObject,
) -> None:
    """Where the damage lies in a gap of the zip, nothing is lost by it."""
    bad = bytearray(GOOD)
    for place in data.draw(st.lists(st.integers(0, len(GOOD) - 1), max_size=4)):
        bad[place] = data.draw(st.integers(0, 255))
    try:
        found = contents(bytes(bad))
    except StudioError as refused:
        found = (refused.sentence,)
    assert found == contents(GOOD) or "Nothing was changed." in str(found)
